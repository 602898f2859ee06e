// The dial beside its ways: where the saddle stops, how figures stand, vernier, size, a
// fine dial that goes into the Shop; keys, small screens. What a checker
// finds, and text twice as large, stand in the audit of every screen.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { FILE, withBrowser } from './rig.mjs';

async function ring(browser, size) {
  const page = await browser.open(FILE, size);
  await page.getByRole('button', { name: 'Plates 15 to 49' }).click();
  await page.locator('[data-do=kind][data-value=dial]').click();
  await page.locator('[data-do=di-marks][data-value="365"]').click();
  await page.locator('#answer', { hasText: '365 marks' }).waitFor();
  return page;
}

const part = (page, name) => page.locator(`[data-do=di-part][data-value=${name}]`).click();
const shown = (page, text) => page.locator('#dial').getByText(text).first().waitFor();

test('the ring of 365: a stop for each line, the face drawn as it is read', () => withBrowser(async (browser) => {
  const page = await ring(browser);
  await page.getByRole('button', { name: 'Lines, vernier, size' }).click();
  assert.equal(await page.evaluate(() => document.activeElement.id), 'dial-title');
  assert.deepEqual(await page.locator('#dial-stops td b').allTextContents(), ['1 turn + 20', '90', '60']);
  assert.equal(await page.locator('#dial svg.dr text').count(), 37);
  await page.locator('#di-diameter').fill('160');
  await shown(page, '160 mm across');
  // On a handwheel, seen from before it, numbers that climb anticlockwise run to the left.
  await page.locator('[data-do=di-on][data-value=handwheel]').click();
  await shown(page, 'back edge at the top');
  await shown(page, 'climb to the left');
  await page.locator('[data-do=di-stand][data-value=inverted]').click();
  await shown(page, 'Feet of the figures to the back edge');
  await page.locator('#di-lead').fill('1/8 in');
  await page.locator('#di-round').fill('125');
  await shown(page, 'shorter');
  await page.locator('#di-round').fill('1');
  await page.getByText('Marks of the dial must be from 2 to 10,000.').waitFor();
  assert.deepEqual(await page.locator('#dial-stops td b').allTextContents(), ['1 turn + 111', '1 turn + 52', '118']);
  assert.deepEqual(page.seen.errors, []);
}));

test('the line of the vernier that meets a mark is moved by keys', () => withBrowser(async (browser) => {
  const page = await ring(browser);
  await part(page, 'vernier');
  await shown(page, '10 over 9 marks');
  await page.locator('#di-meets').focus();
  await page.keyboard.press('ArrowRight');
  await shown(page, 'Line 4 meets: add 4/10 of a mark.');
  assert.equal(await page.evaluate(() => document.activeElement.id), 'di-meets');
  await page.locator('#marks').fill('360');
  await page.locator('#di-least').fill("5'");
  await page.locator('[data-do=di-over][data-value=two]').click();
  await shown(page, '12 over 23 marks');
  await page.locator('#di-least').fill("7'");
  await page.locator('#di-least-error').waitFor();
  await shown(page, '12 over 23 marks');
}));

test('a dial that suits a screw is taken; a fine dial goes into the Shop and is used', () => withBrowser(async (browser) => {
  const page = await ring(browser);
  await part(page, 'size');
  await page.locator('#di-screw').fill('1/8 in');
  await page.locator('[data-do=di-marks][data-value="125"]').click();
  await page.locator('#answer', { hasText: '125 marks' }).waitFor();
  assert.equal(await page.locator('#marks').inputValue(), '125');
  await part(page, 'fine');
  await page.locator('#dial-steps [data-do=di-take]').nth(1).click();
  await page.locator('#di-step').waitFor();
  assert.deepEqual([await page.locator('#di-fine-marks').inputValue(), await page.locator('#di-step').inputValue()], ['43', '2″']);
  await page.locator('#di-turns').fill('4');
  await shown(page, '48 holes');
  await page.locator('[data-do=di-shop]').click();
  await page.locator('[data-do=room][data-value=shop]').click();
  assert.equal(await page.locator('#head-fine-dial').isChecked(), true);
  assert.equal(await page.locator('#head-fine-marks').inputValue(), '43');
  await page.locator('[data-do=room][data-value=divide]').click();
  await page.locator('#marks').fill('127');
  await page.locator('#way-fine-dial').waitFor();
}));

for (const size of [{ width: 320, height: 568 }, { width: 1280, height: 800 }]) {
  test(`at ${size.width} px no part of the dial scrolls sideways`, () => withBrowser(async (browser) => {
    const page = await ring(browser, size);
    for (const name of ['lines', 'vernier', 'size', 'fine']) {
      await part(page, name);
      await page.locator(`#dial-${name}`).waitFor();
      const wide = await page.evaluate(() => {
        document.querySelector('#dial').style.contentVisibility = 'visible';
        return document.documentElement.scrollWidth - document.documentElement.clientWidth;
      });
      assert.ok(wide <= 0, `${name}: ${wide} px too wide`);
    }
  }));
}
