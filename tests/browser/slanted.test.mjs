// Slanted teeth, worms, bevels and racks as a person meets them in Gear.
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

async function step(page, name) {
  await page.locator(`#ge-tab-${name}`).click();
  await page.locator(`#ge-tab-${name}[aria-selected=true]`).waitFor();
}
const press = (page, name, value) => page.locator(`[data-do=${name}][data-value="${value}"]`).click();
const said = (page, text) => page.locator('#ge-panel').getByText(text).locator('visible=true').first().waitFor();
const quiet = (page) => assert.deepEqual([...page.seen.errors, ...page.seen.violations, ...page.strangers()], []);

/** Types into a field and waits for the sentence that is tied to it. */
async function wrong(page, field, text, sentence) {
  await page.locator(`#${field}`).fill(text);
  await page.locator(`#${field}-error`, { hasText: sentence }).waitFor();
}

test('a slanted wheel: blank, swing, gears of the table, Divide', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { width: 1280, height: 800 });
  await chosen(page, 'slanted');
  await said(page, '75.901');
  await step(page, 'cutter');
  await said(page, 'its right end away from you');
  await press(page, 'ge-hand', 'left');
  await said(page, 'its left end away from you');
  await step(page, 'depth');
  await said(page, 'The clamp stays off for the whole cut.');
  await page.locator('#ge-gears').fill('24x2 28 32 40 44 48 56 64 72 86 100');
  await said(page, 'Differential can’t be combined');
  // Every pair drives as drawn: the sentence and the picture hold the same gears.
  const name = await page.locator('#ge-panel svg[role=img]').first().getAttribute('aria-label');
  const teeth = await page.locator('#ge-panel .answer-big.gears').innerText();
  for (const gear of teeth.match(/\d+/g)) assert.ok(name.includes(gear), `${name}: ${gear}`);
  const next = page.locator('[data-do=ge-train]').first();
  const other = await next.locator('b').innerText();
  await next.click();
  await page.locator('#ge-panel figure svg[role=img]').and(page.locator(`[aria-label^="Change gears: ${other}"]`)).waitFor();
  await wrong(page, 'ge-helix', '90', 'Helix angle must be between 1 and 80 degrees.');
  await page.locator('#answer', { hasText: 'Last good answer: 64 teeth' }).waitFor();
  await press(page, 'divide-n', '64');
  assert.equal(await page.locator('#parts').inputValue(), '64');
  quiet(page);
}));

test('a worm goes to Thread with its lead', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { width: 390, height: 844 });
  await chosen(page, 'worm');
  await page.locator('#ge-starts').fill('2');
  await page.locator('#answer', { hasText: '2 starts into 64 teeth' }).waitFor();
  await step(page, 'depth');
  await said(page, 'Gash at');
  await step(page, 'cutter');
  await press(page, 'th-worm', 'module 1 2');
  await page.locator('#th-worm-starts').waitFor();
  assert.deepEqual([await page.locator('#th-module').inputValue(), await page.locator('#th-worm-starts').inputValue()], ['1', '2']);
  await page.getByText('6.2832 mm lead').first().waitFor();
  quiet(page);
}));

test('bevels tilt the head, each goes to Divide; a rack is read off the dial', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { width: 1280, height: 800 });
  await chosen(page, 'cone');
  await page.locator('#ge-teeth').fill('16');
  await page.locator('#ge-face').fill('5');
  await step(page, 'depth');
  await said(page, '26.565°');
  await said(page, 'Turn the work 5.625°');
  await wrong(page, 'ge-shafts', '180', 'must be between 20 and 160 degrees');
  await page.locator('#ge-shafts').fill('90');
  await press(page, 'divide-n', '32');
  assert.equal(await page.locator('#parts').inputValue(), '32');
  await chosen(page, 'bar');
  await step(page, 'depth');
  // Every reading of the Shop's screw, 5 mm in 100 marks, stands within half a mark of its gap.
  const rows = await page.locator('table.readings tbody tr').evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent)));
  assert.equal(rows.length, 20);
  for (const [gap, turns, mark] of rows) {
    const stands = (Number(turns) * 100 + Number(mark)) * 0.05;
    assert.ok(Math.abs(stands - Number(gap) * Math.PI) <= 0.025 + 1e-9, gap);
  }
  quiet(page);
}));
