// Gear as a person meets it: a wheel from its blank to Divide, bad input at every
// field, keys alone, and what was typed still there after the page opens again.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { FILE, withBrowser } from './rig.mjs';

const DESK = { width: 1280, height: 800 };

/** The page with the Gear room open. */
async function gear(browser, size = DESK) {
  const page = await browser.open(FILE, size);
  await page.locator('[data-do=room][data-value=gear]').click();
  await page.locator('#ge-teeth').waitFor();
  return page;
}

const step = (page, name) => page.locator(`#ge-tab-${name}`).click();
const press = (page, name, value) => page.locator(`[data-do=${name}][data-value="${value}"]`).click();
const said = (page, text) => page.locator('#ge-panel').getByText(text).locator('visible=true').first().waitFor();

/** Types into a field and waits for the sentence that is tied to it. */
async function wrong(page, field, text, sentence) {
  await page.locator(`#${field}`).fill(text);
  await page.locator(`#${field}-error`, { hasText: sentence }).waitFor();
  const tied = await page.evaluate((id) => {
    const field = document.getElementById(id);
    return [field.ariaInvalid, field.getAttribute('aria-describedby')];
  }, field);
  assert.deepEqual(tied, ['true', `${field}-error`]);
}

test('a wheel goes from its blank to Divide', () => withBrowser(async (browser) => {
  const page = await gear(browser);
  await press(page, 'ge-wheel', '127 0.5');
  await page.locator('#answer', { hasText: '127 teeth, module 0.5 (50.8 DP), 20°' }).waitFor();
  for (const text of ['64.500', '63.500 mm', 'The table clears by 67.750 mm.']) await said(page, text);
  await page.locator('#ge-found').fill('64.46');
  await said(page, 'Cut it 1.105 mm deep (0.0435 in)');
  await step(page, 'cutter');
  for (const text of ['No. 7', 'No. 2 of a DP set', 'Cuts 55 to 134 teeth.']) await said(page, text);
  await step(page, 'check');
  for (const text of ['Over 15 teeth', '22.292']) await said(page, text);
  await step(page, 'depth');
  for (const text of ['1.105', 'Fingers out, guard on.', 'Cutter clear of the work before the handle moves.']) await said(page, text);
  await press(page, 'ge-tried', 'span');
  await page.locator('#ge-reading').fill('22.33');
  await said(page, 'mm deeper');
  await press(page, 'divide-n', '127');
  await page.locator('#parts').waitFor();
  assert.equal(await page.locator('#parts').inputValue(), '127');
  assert.deepEqual([...page.seen.errors, ...page.seen.violations, ...page.strangers()], []);
}));

test('what cannot be read is told at its field; the last good answer stays', () => withBrowser(async (browser) => {
  const page = await gear(browser);
  await page.locator('#ge-teeth').fill('38');
  await wrong(page, 'ge-teeth', '3', 'Teeth must be from 4 to 5,000.');
  await page.locator('#answer', { hasText: 'Last good answer: 38 teeth' }).waitFor();
  await page.locator('#ge-teeth').fill('38');
  await press(page, 'ge-by', 'dp');
  await wrong(page, 'ge-dp', '0', 'Diametral pitch can’t be 0.');
  await page.locator('#answer', { hasText: 'Last good answer: 38 teeth' }).waitFor();
  await press(page, 'ge-by', 'module');
  await wrong(page, 'ge-module', '0', 'Module can’t be 0.');
  await page.locator('#ge-module').fill('1');
  await press(page, 'ge-pressure', 'own');
  await wrong(page, 'ge-angle', '40', 'Pressure angle must be between 10 and 35 degrees.');
  await press(page, 'ge-pressure', '20');
  await wrong(page, 'ge-found', '30', 'The blank must be from');
  await page.locator('#ge-found').fill('');
  await wrong(page, 'ge-collar', '60', 'The collar must be smaller than the cutter.');
  await wrong(page, 'ge-centre', '0', 'Centre height can’t be 0.');

  await step(page, 'check');
  await wrong(page, 'ge-pin', '1', 'That pin falls into the gap.');
  await wrong(page, 'ge-pin', '5', 'That pin rides on the tips.');
  await said(page, 'Over two 1.7 mm pins');
  await wrong(page, 'ge-over', '30', 'Teeth in the span must be from');
  await step(page, 'cutter');
  await page.locator('#ge-teeth').fill('8');
  await page.locator('.caut', { hasText: 'No cutter of the set cuts fewer than 12 teeth.' }).waitFor();
  assert.deepEqual(page.seen.errors, []);
}));

test('arrow keys go from step to step, and Tab leads past the others', () => withBrowser(async (browser) => {
  const page = await gear(browser);
  await page.locator('#ge-tab-blank').focus();
  for (const [key, name] of [['ArrowRight', 'cutter'], ['ArrowRight', 'depth'], ['End', 'check'], ['ArrowRight', 'blank'], ['ArrowLeft', 'check'], ['Home', 'blank']]) {
    await page.keyboard.press(key);
    await page.locator(`#ge-tab-${name}[aria-selected=true]`).waitFor();
    assert.equal(await page.evaluate(() => document.activeElement.id), `ge-tab-${name}`);
  }
  await page.keyboard.press('Tab');
  assert.equal(await page.evaluate(() => document.activeElement.closest('[role=tabpanel]') !== null), true);
}));

test('what was typed stands there when the page opens again', () => withBrowser(async (browser) => {
  const page = await gear(browser);
  await page.locator('#ge-teeth').fill('223');
  await page.locator('#ge-module').fill('0.5');
  await step(page, 'check');
  await page.locator('#ge-pin').fill('0.9');
  await page.locator('#answer', { hasText: '223 teeth' }).waitFor();
  await page.reload();
  await page.locator('#ge-pin[value="0.9"]').waitFor();
  await page.locator('#answer', { hasText: '223 teeth, module 0.5' }).waitFor();
}));
