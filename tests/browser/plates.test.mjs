// The plate one lacks, the error budget, and sheets at full size, as a person meets
// them: from the row to the Run, from the page to the file and to paper.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { FILE, withBrowser } from './rig.mjs';
import { divided, making } from './screens.mjs';

/** A page on the plan of the plate for `parts`. */
async function plan(browser, parts, size) {
  const page = await browser.open(FILE, size);
  await page.locator('#answer').waitFor();
  await making(page, parts);
  return page;
}

/** The text of the file that pressing `button` hands over, and its name. */
async function file(page, button) {
  const [handed] = await Promise.all([page.waitForEvent('download'), page.locator(button).click()]);
  return [handed.suggestedFilename(), readFileSync(await handed.path(), 'utf8')];
}

test('131: make the plate, run its drilling, count the first hole', () => withBrowser(async (browser) => {
  const page = await plan(browser, '131');
  const panel = page.locator('#panel-make');
  for (const wanted of ['Drill 131, then', 'Clamp the blank flat', 'Drill 131 holes by Nearest hole', 'Check it by hand', 'What each plate brings']) {
    await panel.getByText(wanted).first().waitFor();
  }
  await page.locator('#pl-run-0').click();
  assert.equal(await page.locator('#run-title').inputValue(), 'Drill 131 holes');
  await page.locator('#run-start').click();
  await page.locator('#run-saved[data-state=saved]').waitFor();
  await page.getByText('At 1 of 131').first().waitFor();
  await page.keyboard.press('PageDown');
  await page.getByText('At 2 of 131').first().waitFor();
  assert.deepEqual(page.seen.errors, []);
}));

test('a ring that is too small is refused in words; a larger one is planned', () => withBrowser(async (browser) => {
  const page = await plan(browser, '131');
  await page.locator('#pl-fields summary').click();
  await page.locator('#pl-ring').fill('30');
  await page.locator('#pl-ring-error', { hasText: 'The holes would break into each other.' }).waitFor();
  assert.equal(await page.locator('#pl-ring').getAttribute('aria-invalid'), 'true');
  await page.locator('#panel-make', { hasText: 'Drill 131, then' }).waitFor();
  await page.locator('#pl-ring').fill('60');
  await page.locator('#panel-make', { hasText: 'Ring 120 mm (4.7244 in) across' }).waitFor();
  assert.equal(await page.locator('#pl-ring-error').count(), 0);
  await page.locator('#pl-multiple').fill('8');
  await page.locator('#pl-multiple-error', { hasText: 'from 2 to 1,000' }).waitFor();
  assert.equal(await page.evaluate(() => document.activeElement.id), 'pl-multiple');
}));

test('the budget of a way says what makes most of it, and follows what is typed', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { width: 1280, height: 800 });
  await page.locator('#answer').waitFor();
  await divided(page);
  await page.locator('#way-nearest').click();
  await page.locator('#pl-budget').click();
  const budget = page.locator('#budget');
  await budget.getByText('Rounding of the way makes most of it').waitFor();
  await budget.getByRole('img', { name: /Each of 127 positions/ }).waitFor();
  await page.locator('#way-differential').click();
  await budget.getByText('Blank off centre makes most of it').waitFor();
  await page.locator('#pl-causes summary').click();
  await page.locator('#pl-blank-out').fill('0');
  await budget.getByText('Worm wheel makes most of it').waitFor();
}));

test('a template is a file at full size, its bar measures 100 mm, and its holes lie on the ring', () => withBrowser(async (browser) => {
  const page = await plan(browser, '131', { width: 1280, height: 800 });
  await page.locator('#pl-fields summary').click();
  await page.locator('#pl-ring').fill('55');
  await page.locator('#pl-template').click();
  const [name, svg] = await file(page, '#pl-save-template');
  assert.equal(name, 'handturn-template.svg');
  // A drawing of its own: opened as an image in a page of the size it says.
  const alone = await browser.context.newPage();
  await alone.setViewportSize({ width: 1000, height: 1000 });
  await alone.setContent(`<body style="margin:0">${svg}</body>`);
  const found = await alone.evaluate(() => {
    const sheet = document.querySelector('svg');
    const mm = 96 / 25.4;
    const bars = [...document.querySelectorAll('.bar')].map((bar) => {
      const [x, y] = [bar.getPointAtLength(0), bar.getPointAtLength(1)];
      const drawn = bar.getBoundingClientRect();
      return { wide: drawn.width / mm, flat: x.y === y.y };
    });
    const crosses = document.querySelector('path').getAttribute('d').split('M').slice(1).map((part) => part.match(/[-.\d]+/g).map(Number));
    return { bars, crosses, width: sheet.getBoundingClientRect().width / mm };
  });
  assert.equal(found.width.toFixed(2), (111.6 + 8).toFixed(2));
  assert.equal(found.bars[0].wide.toFixed(2), '100.00');
  assert.equal(found.bars[1].wide.toFixed(2), '101.60');
  assert.equal(found.crosses.length, 2 * 132);
  const middle = found.width / 2;
  for (let k = 0; k < 131; k += 1) {
    const [x, y, across] = found.crosses[2 * k];
    const turn = 2 * Math.PI * k / 131;
    const [wantedX, wantedY] = [middle + 55 * Math.sin(turn), middle - 55 * Math.cos(turn)];
    assert.ok(Math.hypot(x + across / 2 - wantedX, y - wantedY) < 0.003, `hole ${k}`);
  }
}));

test('a sheet that stands open is all that is printed, at full size', () => withBrowser(async (browser) => {
  const page = await plan(browser, '131');
  await page.locator('#pl-template').click();
  await page.locator('.sheet').waitFor();
  await page.emulateMedia({ media: 'print' });
  const found = await page.evaluate(() => {
    const shown = (element) => element.getClientRects().length > 0;
    const texts = [...document.querySelectorAll('h1, h2, h3, p, button, nav, header')].filter(shown).length;
    const bar = document.querySelector('.sheet .bar').getBoundingClientRect();
    return { texts, bar: bar.width * 25.4 / 96 };
  });
  assert.deepEqual({ texts: found.texts, bar: found.bar.toFixed(2) }, { texts: 0, bar: '100.00' });
  await page.emulateMedia({ media: null });
  // The print dialog is asked for.
  await page.evaluate(() => { window.print = () => { window.asked = true; }; });
  await page.locator('[data-do=pl-print]').click();
  assert.equal(await page.evaluate(() => window.asked), true);
}));

test('whoever has no head gets a tape, and it is kept as a file', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await page.locator('#answer').waitFor();
  await page.locator('#pl-no-head').click();
  await page.locator('#pl-free-tape').click();
  await page.locator('#pl-drum').fill('200');
  await page.locator('#no-head').getByText('628.633 mm').waitFor();
  const [name, svg] = await file(page, '#pl-save-tape0');
  assert.equal(name, 'handturn-tape.svg');
  assert.ok(svg.includes('127 parts on a drum of 200 mm'));
  assert.equal(svg.match(/class="ticks"/g).length, 4);
  await page.locator('#pl-free-disks').click();
  await page.locator('#no-head').getByText('Disk in the middle').waitFor();
  assert.deepEqual(page.seen.violations, []);
}));
