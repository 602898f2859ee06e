// Every screen against the accessibility rules, by keyboard alone, on a small
// screen, with text twice as large, and with targets for a dirty thumb.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { FILE, withBrowser } from './rig.mjs';
import { SCREENS, divided, screen, stock } from './screens.mjs';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const SMALL = { width: 320, height: 568 }, PHONE = { width: 390, height: 844 };
const SIDEWAYS = { width: 844, height: 390 }, DESK = { width: 1280, height: 800 };

/** What the rules find wrong: the rule and where. The page has them already. */
async function violations(page) {
  const found = await page.evaluate(async () => {
    const { violations, passes } = await globalThis.axe.run(document);
    const rows = violations.flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${id}: ${target} ${failureSummary.replace(/\s+/g, ' ')}`));
    return { rows, passed: passes.map(({ id }) => id) };
  });
  // Contrast is among what was really looked at.
  assert.ok(found.passed.includes('color-contrast'), 'contrast was not looked at');
  return found.rows;
}

/** What stands out of the page sideways; scrolling boxes of their own may hold wider things. */
const sticksOut = (page) => page.evaluate(() => {
  const width = document.documentElement.clientWidth;
  const wide = [...document.body.querySelectorAll('*')].filter((element) => {
    if (element.closest('.scroll, .vh, svg')) return false;
    const box = element.getBoundingClientRect();
    return box.width > 0 && box.right > width + 1;
  });
  const names = wide.map((element) => `${element.tagName} ${element.id || element.className}`);
  return document.documentElement.scrollWidth > width ? [`the page is ${document.documentElement.scrollWidth} wide`, ...names] : names;
});

/** As a person sets it in the browser, so that what depends on the text's size follows. */
async function textTwiceAsLarge(page) {
  const session = await page.context().newCDPSession(page);
  await session.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 26 } });
  await page.waitForFunction(() => getComputedStyle(document.documentElement).fontSize === '32px');
}

/** Targets smaller than `least` either way; a tick counts with its label. */
const small = (page, least) => page.evaluate((least) => {
  const all = [...document.querySelectorAll('button, a[href], input, textarea, select, summary')];
  return all.filter((target) => target.checkVisibility({ visibilityProperty: true }) && !target.closest('.vh')).flatMap((target) => {
    const { width, height } = (target.closest('label') ?? target).getBoundingClientRect();
    const name = target.getAttribute('aria-label') ?? (target.textContent.trim() || target.id);
    return width + 0.01 < least || height + 0.01 < least ? [`${name}: ${width} x ${height}`] : [];
  });
}, least);

/** Buttons of Run that are smaller than a thumb wants (less where the screen is low), `next` tall the two below, `help` the three above. */
const forThumbs = (page, next, help) => page.evaluate(([next, help]) => {
  const rows = [['#run-next, #run-back', next], ['.help button', help]];
  return rows.flatMap(([selector, least]) => [...document.querySelectorAll(selector)].flatMap((target) => {
    const { height } = target.getBoundingClientRect();
    return height + 0.01 < least ? [`${target.textContent.trim()}: ${height} tall, not ${least}`] : [];
  }));
}, [next, help]);

/** In the page: every element that takes the focus, in the order of the document; of an open sheet its own alone, of tabs the one chosen. */
const focusable = () => [...(document.querySelector('dialog[open]') ?? document).querySelectorAll('button:not([disabled], [tabindex="-1"]), a[href], input, textarea, select, summary, [tabindex="0"]')]
  .filter((element) => element.checkVisibility({ visibilityProperty: true }));

/** Tabs through the whole page and once back; what is out of order, not seen to have the focus, or a trap. */
async function keyboard(page) {
  await page.evaluate(`window.focusable = ${focusable}`);
  const wanted = await page.evaluate(() => { window.focusable()[0].focus(); return window.focusable().length; });
  const wrong = [];
  for (let k = 0; k < wanted; k += 1) {
    const [place, shown, name] = await page.evaluate(() => {
      const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement);
      return [window.focusable().indexOf(document.activeElement), outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2, document.activeElement.textContent];
    });
    if (place !== k) wrong.push(`Tab ${k} comes to place ${place} (${name})`);
    // Where a script put the focus it need not be seen.
    if (k > 0 && !shown) wrong.push(`the focus is not seen at place ${k} (${name})`);
    await page.keyboard.press('Tab');
  }
  const out = await page.evaluate(() => document.activeElement === document.body || window.focusable().indexOf(document.activeElement) === 0);
  if (!out) wrong.push('Tab does not lead out at the end');
  await page.keyboard.press('Shift+Tab');
  const back = await page.evaluate(() => window.focusable().indexOf(document.activeElement));
  if (back !== wanted - 1) wrong.push(`Shift and Tab lead back to ${back}, not ${wanted - 1}`);
  return wrong;
}

for (const name of Object.keys(SCREENS)) {
  test(`${name}: no rule broken, in reach of thumb and keyboard, nothing sideways`, () => withBrowser(async (browser) => {
    const page = await screen(browser, name);
    const wrong = [];
    const note = (where, found) => wrong.push(...found.map((row) => `${where}: ${row}`));
    await page.evaluate(axe);
    await page.evaluate(() => {
      // What lies outside the screen is measured too.
      const laidOut = new CSSStyleSheet();
      laidOut.replaceSync('* { content-visibility: visible !important }');
      document.adoptedStyleSheets = [laidOut];
    });
    for (const colorScheme of ['light', 'dark']) {
      await page.emulateMedia({ colorScheme });
      for (const size of [PHONE, DESK]) {
        await page.setViewportSize(size);
        note(`${colorScheme}, ${size.width} wide`, await violations(page));
      }
    }
    for (const size of [SMALL, PHONE, SIDEWAYS, DESK]) {
      await page.setViewportSize(size);
      note(`${size.width} wide`, await small(page, 48));
      note(`${size.width} wide`, size.height < 600 ? await forThumbs(page, 76, 54) : await forThumbs(page, 104, 64));
      note(`${size.width} wide`, await sticksOut(page));
    }
    note('keyboard', await keyboard(page));
    await textTwiceAsLarge(page);
    for (const size of [DESK, { width: 640, height: 800 }, PHONE]) {
      await page.setViewportSize(size);
      note(`${size.width} wide, text at 200 %`, await sticksOut(page));
    }
    assert.deepEqual(wrong, []);
    assert.deepEqual([...page.seen.errors, ...page.seen.violations, ...page.strangers()], []);
  }));
}

test('a division is asked, opened and set up without a pointer', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, DESK);
  const reach = async (selector) => {
    for (let k = 0; k < 200; k += 1) {
      if (await page.evaluate((selector) => document.activeElement.matches(selector), selector)) return;
      await page.keyboard.press('Tab');
    }
    assert.fail(`Tab never came to ${selector}`);
  };
  await reach('[data-do=plates][data-value="15"]');
  await page.keyboard.press('Enter');
  await reach('#parts');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('63');
  await page.keyboard.press('ArrowUp');
  assert.equal(await page.locator('#parts').inputValue(), '64');
  await reach('[data-do=kind][data-value=angle]');
  await page.keyboard.press('Space');
  await page.locator('#angle').waitFor();
  await reach('[data-do=room][data-value=shop]');
  await page.keyboard.press('Enter');
  await reach('#head-clamp');
  await page.keyboard.press('Space');
  assert.equal(await page.locator('#head-clamp').isChecked(), false);
  await page.locator('.entry', { hasText: 'No clamp' }).waitFor();
  assert.deepEqual(page.seen.errors, []);
}));

test('only the answer speaks up by itself, and a wrong field is tied to its sentence', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, PHONE);
  await divided(page);
  const live = () => page.evaluate(() => [...document.querySelectorAll('#page [aria-live]')].map(({ id }) => id));
  assert.deepEqual(await live(), ['answer']);
  await page.locator('#parts').fill('0');
  const told = (field) => page.evaluate((field) => {
    const element = document.querySelector(field);
    return [element.getAttribute('aria-invalid'), document.getElementById(element.getAttribute('aria-describedby'))?.textContent ?? ''];
  }, field);
  assert.match((await told('#parts')).join(' '), /^true .*from 2 to 10,000/);
  await stock(page);
  await page.locator('#head-gears').fill('7');
  assert.match((await told('#head-gears')).join(' '), /^true .*from 8 to 250/);
}));

test('no source of the page names a way out to the network', () => {
  const root = fileURLToPath(new URL('../../web/', import.meta.url));
  const files = ['src', 'page'].flatMap((folder) =>
    readdirSync(root + folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile())
      .map((entry) => `${entry.parentPath ?? entry.path}/${entry.name}`));
  assert.ok(files.length > 20);
  const out = /RTCPeerConnection|webkitRTC|RTCDataChannel|WebTransport|WebSocket|EventSource|sendBeacon|XMLHttpRequest|importScripts|\bfetch\s*\(|window\.open|preconnect|dns-prefetch|https?:\/\/(?!www\.w3\.org\/2000\/svg)/g;
  // The site fetches its own files: its wasm, and what its service worker keeps.
  const own = { 'app.js': ["fetch("], 'service-worker.js': ["fetch("] };
  for (const file of files) {
    const name = file.split('/').at(-1);
    const found = [...readFileSync(file, 'utf8').matchAll(out)].map(([text]) => text);
    assert.deepEqual(found.filter((text) => !own[name]?.includes(text)), [], file);
  }
  const script = readFileSync(`${root}page/app.js`, 'utf8');
  assert.deepEqual([...script.matchAll(/fetch\(([^)]*)\)/g)].map(([, asked]) => asked), ["'handturn.wasm'"]);
});
