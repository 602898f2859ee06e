// The whole road: typed, worked out by the core, shown; from disk and from the site.
import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { FILE, SITE, openSite, withBrowser } from './rig.mjs';

/** Types `parts` and waits until the answer shows `wanted`; a first start is told which plates there are. */
async function ask(page, parts, wanted) {
  const plates = page.getByRole('button', { name: 'Plates 15 to 49' });
  await page.locator('#answer').waitFor();
  if (await plates.count()) await plates.click();
  await page.locator('#parts').fill(parts);
  await page.locator('#answer', { hasText: wanted }).waitFor();
}

test('from disk: an answer, no request, no violation', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await ask(page, '127', 'to set 127');
  assert.deepEqual(page.strangers(), []);
  assert.deepEqual(page.seen.violations, []);
  assert.deepEqual(page.seen.errors, []);
}));

test('from disk: the policy stops a request, and the watch sees it', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await ask(page, '64', 'to set 64');
  const refused = await page.evaluate(() => fetch('http://127.0.0.1:9/').then(() => false, () => true));
  assert.ok(refused);
  await page.locator('#answer').click(); // a round trip: what the page reported before it has arrived
  assert.deepEqual(page.seen.violations, ['connect-src http://127.0.0.1:9/']);
}));

test('a field keeps focus, caret and text while the screen changes around it', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await page.locator('#parts').fill('');
  await page.keyboard.type('128');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.type('0');
  const found = await page.evaluate(() => {
    const field = document.querySelector('#parts');
    return [field.value, field.selectionStart, document.activeElement === field];
  });
  assert.deepEqual(found, ['1208', 3, true]);
}));

/** In the page: the engine starts once `letGo` is called, as on a slow device. */
function heldBack() {
  const { instantiate } = WebAssembly;
  const go = new Promise((resolve) => { window.letGo = resolve; });
  WebAssembly.instantiate = async (...given) => {
    await go;
    return instantiate(...given);
  };
}

test('a number typed before the engine is ready is kept and answered', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { before: heldBack });
  assert.equal(await page.locator('#ready').innerText(), 'Getting ready…');
  const rooms = await page.locator('.nav button').allInnerTexts();
  assert.ok(rooms.includes('Divide') && rooms.includes('Shop'));
  await page.locator('#parts').fill('');
  await page.keyboard.type('124');
  await page.keyboard.press('ArrowLeft');
  await page.evaluate(() => window.letGo());
  await page.getByRole('button', { name: 'Plates 15 to 49' }).waitFor();
  assert.deepEqual(await page.locator('.nav button').allInnerTexts(), rooms);
  await page.keyboard.press('Backspace');
  await page.keyboard.type('0');
  assert.equal(await page.locator('#parts').inputValue(), '104');
  await page.getByRole('button', { name: 'Plates 15 to 49' }).click();
  await page.locator('#answer', { hasText: 'to set 104' }).waitFor();
  await page.getByRole('button', { name: 'List', exact: true }).click();
  await page.locator('#list').waitFor();
  await page.locator('[data-do=room][data-value=shop]').click();
  await page.locator('#shop-title').waitFor();

  // Whatever was left open: what is typed now is what is wanted.
  const again = await browser.open(FILE, { before: heldBack });
  await again.locator('#parts').fill('63');
  await again.evaluate(() => window.letGo());
  await again.locator('#answer', { hasText: 'to set 63' }).waitFor();
  assert.equal(await again.locator('#parts').inputValue(), '63');

  // A press before that counts as well.
  const third = await browser.open(FILE, { before: heldBack });
  await third.locator('[data-do=room][data-value=shop]').click();
  await third.evaluate(() => window.letGo());
  await third.locator('#shop-title').waitFor();
  assert.deepEqual([page, again, third].flatMap(({ seen }) => [...seen.errors, ...seen.violations]), []);
}));

/** In the page: the next call of the engine's entry reaches the real wasm with a length no memory has. */
function trapOnce() {
  const { instantiate, Instance } = WebAssembly;
  const wrap = (instance) => {
    const exports = { ...instance.exports };
    exports.turn = (...words) => {
      if (window.trapNext) {
        window.trapNext = false;
        words[2] = 0x7fffffff;
      }
      return instance.exports.turn(...words);
    };
    return { exports };
  };
  WebAssembly.Instance = function (...given) { return wrap(new Instance(...given)); };
  WebAssembly.instantiate = async (...given) => {
    const { module, instance } = await instantiate(...given);
    return { module, instance: wrap(instance) };
  };
}

test('a trap is told, spoils nothing, and the next answer is right', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { before: trapOnce });
  await ask(page, '127', 'to set 127');
  await page.evaluate(() => { window.trapNext = true; });
  await page.locator('#parts').fill('12');
  await page.locator('#fault').waitFor();
  assert.equal(page.seen.errors.length, 1);
  assert.match(page.seen.errors[0], /internal fault.*RuntimeError/);
  for (const [parts, wanted] of [['48', 'to set 48'], ['127', 'to set 127']]) await ask(page, parts, wanted);
  assert.equal(await page.locator('#fault').isHidden(), true);
}));

test('from the site: its own files only, and an answer with the network off', () => withBrowser(async (browser) => {
  const host = await openSite();
  const page = await browser.open(host.origin);
  await ask(page, '127', 'to set 127');
  await page.evaluate(() => navigator.serviceWorker.ready);
  assert.deepEqual(page.strangers().filter((asked) => !asked.startsWith(host.origin)), []);
  await host.close();
  const later = await browser.open(host.origin);
  await ask(later, '64', 'to set 64');
  assert.deepEqual([...page.seen.violations, ...later.seen.violations], []);
  assert.deepEqual([...page.seen.errors, ...later.seen.errors], []);
}));

test('the site can be installed', () => withBrowser(async (browser) => {
  const host = await openSite();
  const page = await browser.open(host.origin);
  await page.evaluate(() => navigator.serviceWorker.ready);
  const devtools = await browser.context.newCDPSession(page);
  const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
  assert.deepEqual(installabilityErrors, []);
  await host.close();
}));

/** A copy of the site on a host; `next()` puts another version in its place. */
async function changingSite() {
  const folder = mkdtempSync(join(tmpdir(), 'handturn-site-'));
  cpSync(SITE, folder, { recursive: true });
  const host = await openSite(folder);
  const change = (name, from, to) => {
    const text = readFileSync(join(folder, name), 'utf8');
    assert.match(text, from);
    writeFileSync(join(folder, name), text.replace(from, to));
  };
  return {
    origin: host.origin,
    next: () => {
      change('index.html', /<title>Handturn<\/title>/, '<title>Handturn next</title>');
      change('service-worker.js', /VERSION="\w+"/, 'VERSION="next"');
    },
    close: async () => {
      await host.close();
      rmSync(folder, { recursive: true });
    },
  };
}

test('a new version waits for a tap, through closing and opening too', () => withBrowser(async (browser) => {
  const host = await changingSite();
  const first = await browser.open(host.origin);
  await first.waitForFunction(() => navigator.serviceWorker.controller);
  host.next();
  const second = await browser.open(host.origin);
  assert.equal(await second.title(), 'Handturn');
  await second.locator('#newer').waitFor();
  await second.close();
  const third = await browser.open(host.origin);
  assert.equal(await third.title(), 'Handturn', 'opening the page again must not change the version');
  await third.locator('#newer button').click();
  await third.waitForFunction(() => document.title === 'Handturn next');
  await ask(third, '48', 'to set 48');
  assert.equal(await third.locator('#newer').count(), 0);
  assert.equal(await first.title(), 'Handturn', 'another page that is open stays as it is');
  await host.close();
}));

test('a new version is not offered while a Run is open', () => withBrowser(async (browser) => {
  const host = await changingSite();
  const first = await browser.open(host.origin);
  await first.waitForFunction(() => navigator.serviceWorker.controller);
  await ask(first, '64', 'to set 64');
  await first.locator('[data-do=run]').first().click();
  await first.locator('[data-do=run-start]').click();
  await first.locator('[data-do=run-leave]').click();
  await first.locator('#run-strip').waitFor();
  host.next();
  const second = await browser.open(host.origin);
  await second.locator('#run-strip').waitFor();
  // Asked until the worker has the newer version; the page hears the same answer.
  await second.evaluate(() => new Promise((newer) => {
    navigator.serviceWorker.addEventListener('message', ({ data }) => { if (data === 'newer') newer(); });
    setInterval(() => navigator.serviceWorker.controller.postMessage('any newer?'), 100);
  }));
  await second.locator('#run-strip').waitFor();
  assert.equal(await second.locator('#newer').count(), 0);
  await second.close();
  const third = await browser.open(host.origin);
  await third.locator('#run-strip').waitFor();
  assert.equal(await third.title(), 'Handturn');
  await host.close();
}));
