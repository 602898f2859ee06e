// Ratchets, splines, flats, clock wheels and cams as a person meets them in Gear.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { FILE, withBrowser } from './rig.mjs';

/** The page with this kind chosen in Gear. */
async function chosen(page, kind) {
  await page.locator('[data-do=room][data-value=gear]').click();
  const chip = page.locator(`[data-do=ge-kind][data-value=${kind}]`);
  if (!await chip.isVisible()) await page.locator('#ge-kinds summary').click();
  await chip.click();
  await page.locator(`[data-do=ge-kind][data-value=${kind}][aria-pressed=true]`).waitFor();
}

const step = (page, name) => page.locator(`#ge-tab-${name}`).click();
const press = (page, name, value) => page.locator(`[data-do=${name}][data-value="${value}"]`).click();
const heads = (page, text) => page.locator('#answer', { hasText: text }).waitFor();
const said = (page, text) => page.locator('#ge-panel').getByText(text).locator('visible=true').first().waitFor();

/** Types into a field and waits for the sentence that is tied to it. */
async function wrong(page, field, text, sentence) {
  await page.locator(`#${field}`).fill(text);
  await page.locator(`#${field}-error`, { hasText: sentence }).waitFor();
}

/** Points of the first heavy outline of the drawing, in its own units. */
const outline = (page) => page.evaluate(() => {
  const path = document.querySelector('#ge-panel svg path.m');
  const length = path.getTotalLength();
  return Array.from({ length: 400 }, (_, k) => path.getPointAtLength((length * k) / 400)).map(({ x, y }) => [x, y]);
});

test('each shape goes from its blank to Divide', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { width: 1280, height: 800 });
  const shapes = [
    ['ratchet', '48 teeth on 40 mm', '1.539', '48'],
    ['spline', '6 × 26 × 30, keys of 6 mm', '2.351', '6'],
    ['flats', 'Square, 5 mm', '0.750', '4'],
    ['clock', '64 and 8, module 0.8', 'Whole depth from the blank', '64'],
  ];
  for (const [kind, heading, depth, parts] of shapes) {
    await chosen(page, kind);
    await heads(page, heading);
    for (const name of ['cutter', 'check', 'depth']) {
      await step(page, name);
      await page.locator(`#ge-tab-${name}[aria-selected=true]`).waitFor();
      assert.equal(await page.locator('#ge-panel svg[role=img]').count(), 1, `${kind}, ${name}: a drawing`);
    }
    await said(page, depth);
    await said(page, 'Fingers out, guard on.');
    await press(page, 'divide-n', parts);
    await page.locator('#parts').waitFor();
    assert.equal(await page.locator('#parts').inputValue(), parts);
  }
  assert.deepEqual([...page.seen.errors, ...page.seen.violations, ...page.strangers()], []);
}));

test('drawings are to scale', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { width: 1280, height: 800 });
  await chosen(page, 'spline');
  // The shaft of 30 and 26 mm is drawn with a radius of 140: its floor lies at 140 × 26/30.
  const radii = (await outline(page)).map(([x, y]) => Math.hypot(x, y));
  assert.ok(Math.abs(Math.max(...radii) - 140) < 0.1, `${Math.max(...radii)}`);
  assert.ok(Math.abs(Math.min(...radii) - (140 * 26) / 30) < 0.1, `${Math.min(...radii)}`);
  await chosen(page, 'flats');
  // 5 across flats on 6.5 of stock: flats at 140 × 5/6.5, corners left at 140.
  const flat = (await outline(page)).map(([x, y]) => [Math.hypot(x, y), Math.max(Math.abs(x), Math.abs(y))]);
  assert.ok(Math.abs(Math.max(...flat.map(([, side]) => side)) - (140 * 5) / 6.5) < 0.1);
  assert.ok(Math.abs(Math.max(...flat.map(([r]) => r)) - 140) < 0.1);
  assert.deepEqual(page.seen.errors, []);
}));

test('what cannot be cut is told at its field; the last good answer stays', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await chosen(page, 'ratchet');
  await wrong(page, 'ge-rt-teeth', '3', 'Teeth must be from 4 to 5,000.');
  await heads(page, 'Last good answer: 48 teeth on 40 mm');
  await page.locator('#ge-rt-teeth').fill('24');
  await wrong(page, 'ge-rt-cutter', '15', 'The cutter’s angle must be larger than one part');
  await page.locator('#ge-rt-cutter').fill('60');
  await wrong(page, 'ge-rt-land', '9', 'The land takes up all of a part.');
  await chosen(page, 'spline');
  await wrong(page, 'ge-sp-cutter', '13', 'must be from 0.001 to 12.908 mm.');
  await page.locator('#ge-sp-cutter').fill('4');
  await wrong(page, 'ge-sp-key', '14', 'Keys this wide leave no space between them.');
  await chosen(page, 'flats');
  await wrong(page, 'ge-fl-stock', '5', 'The blank must be from 5.001');
  await chosen(page, 'clock');
  await wrong(page, 'ge-cw-leaves', '5', 'The number of leaves must be from 6 to 100.');
  await chosen(page, 'cam');
  await wrong(page, 'ge-cm-geared', '15', 'The lead must be from 16');
  assert.deepEqual([...page.seen.errors, ...page.seen.violations], []);
}));

test('a size of the list is taken; what was typed is there when the page opens again', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await chosen(page, 'spline');
  await page.locator('#ge-sp-listed summary').click();
  await press(page, 'ge-sp-take', '8 32 36 6');
  await heads(page, '8 × 32 × 36, keys of 6 mm');
  await press(page, 'ge-sp-what', 'keyways');
  await heads(page, '1 keyway in a shaft of 20 mm');
  await page.waitForTimeout(300);
  await page.reload();
  await page.locator('[data-do=room][data-value=gear]').click();
  await heads(page, '1 keyway in a shaft of 20 mm');
  assert.deepEqual([...page.seen.errors, ...page.seen.violations], []);
}));
