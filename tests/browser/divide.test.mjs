// Divide as a person meets it: first start, every kind of question, keys, small
// screens, large text, and what an accessibility checker finds.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';
import { FILE, withBrowser } from './rig.mjs';

const checker = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Opens the page and owns the plates of 15 to 49 holes and the usual gears. */
async function shop(browser, size) {
  const page = await browser.open(FILE, size);
  await page.getByRole('button', { name: 'Plates 15 to 49' }).click();
  await page.locator('[data-do=gears]').click();
  await page.locator('#panel-differential').waitFor();
  return page;
}

/** What a checker finds, each with where. */
async function faults(page) {
  // The policy stops injected scripts, not those of the inspector.
  const session = await page.context().newCDPSession(page);
  await session.send('Runtime.evaluate', { expression: checker });
  await session.detach();
  return page.evaluate(async () => {
    const { violations } = await window.axe.run(document);
    return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.target}`));
  });
}

const kind = (page, value) => page.locator(`[data-do=kind][data-value=${value}]`).click();

test('127: the differential with its figures, then the nearest hole with its errors', () => withBrowser(async (browser) => {
  const page = await shop(browser, { width: 1280, height: 800 });
  const panel = page.locator('.bd');
  for (const wanted of ['13 holes', '14 holes show, counting the one the pin is in (13 spaces)', 'back 21°']) {
    await panel.getByText(wanted).first().waitFor();
  }
  await page.getByRole('button', { name: /Nearest hole/ }).click();
  await panel.getByText('15 or 16 holes').first().waitFor();
  await panel.getByText('328″').first().waitFor();
  await page.locator('#at').focus();
  await page.keyboard.press('ArrowRight');
  await panel.getByText(/^Position 2: hole 15/).waitFor();
  assert.deepEqual(page.seen.errors, []);
}));

test('keys in the number field step by one, and focus stays', () => withBrowser(async (browser) => {
  const page = await shop(browser);
  await page.locator('#parts').focus();
  await page.keyboard.press('ArrowUp');
  await page.locator('#answer', { hasText: 'to set 128' }).waitFor();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await page.locator('#answer', { hasText: 'to set 126' }).waitFor();
  assert.equal(await page.evaluate(() => document.activeElement.id), 'parts');
}));

test('what cannot be read is told at the field; the last good answer stays', () => withBrowser(async (browser) => {
  const page = await shop(browser);
  await page.locator('#parts').fill('127.5');
  await page.getByText('Parts must be a whole number from 2 to 10,000.').waitFor();
  assert.equal(await page.locator('#parts').getAttribute('aria-describedby'), 'parts-error');
  assert.equal(await page.locator('#answer').textContent(), 'Last good answer: 127');
}));

for (const size of [{ width: 320, height: 568 }, { width: 1280, height: 800 }]) {
  test(`at ${size.width} px nothing scrolls sideways, with text twice as large too, and a checker finds nothing`, () => withBrowser(async (browser) => {
    const page = await shop(browser, size);
    for (const value of ['parts', 'angle', 'list', 'dial']) {
      await kind(page, value);
      assert.deepEqual(await faults(page), [], value);
      for (const text of ['100%', '200%']) {
        const wide = await page.evaluate((text) => {
          document.documentElement.style.fontSize = text;
          return document.documentElement.scrollWidth - innerWidth;
        }, text);
        assert.ok(wide <= 0, `${value} with text of ${text}: ${wide} px too wide`);
      }
      await page.evaluate(() => { document.documentElement.style.fontSize = ''; });
    }
  }));
}

test('what is owned opens the Shop at its field', () => withBrowser(async (browser) => {
  const page = await shop(browser);
  await page.getByRole('button', { name: /^Plates 18 circles/ }).click();
  await page.locator('#shop').waitFor();
  assert.equal(await page.evaluate(() => document.activeElement.id), 'head-plates');
}));
