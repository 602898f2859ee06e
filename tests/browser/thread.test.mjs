// Thread as a person meets it: a name, four steps, bad input at every field, keys
// alone, and the ticks of a thread that is being cut through a killed browser.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { FILE, dropProfile, newProfile, openBrowser, withBrowser } from './rig.mjs';
import { cutting } from './screens.mjs';

const DESK = { width: 1280, height: 800 };

/** The page with the Thread room open. */
async function thread(browser, size = DESK) {
  const page = await browser.open(FILE, size);
  await page.locator('[data-do=room][data-value=thread]').click();
  await page.locator('#th-name').waitFor();
  return page;
}

const step = (page, name) => page.locator(`#th-tab-${name}`).click();
const press = (page, name, value) => page.locator(`[data-do=${name}][data-value="${value}"]`).click();
const said = (page, text) => page.locator('#th-panel, .ask').getByText(text).locator('visible=true').first().waitFor();

/** Types into a field and waits for the sentence that is tied to it. */
async function wrong(page, field, text, sentence) {
  await page.locator(`#${field}`).fill(text);
  await page.locator(`#${field}-error`, { hasText: sentence }).waitFor();
  const tied = await page.evaluate((id) => {
    const { ariaInvalid } = document.getElementById(id);
    return [ariaInvalid, document.getElementById(id).getAttribute('aria-describedby')];
  }, field);
  assert.deepEqual(tied, ['true', `${field}-error`]);
}

test('a name goes through all four steps', () => withBrowser(async (browser) => {
  const page = await thread(browser);
  await page.locator('#th-name').fill('M6x0.75-6g');
  for (const text of ['5.978', '5.491', '5.188', '5.3 mm', '60°', '0.460']) await said(page, text);
  await step(page, 'cut');
  for (const text of ['Pass 1 of 8. Top slide to', '29½° from square across', 'Touch on at']) await said(page, text);
  await page.locator('#th-nuts summary').click();
  await said(page, 'Keep the half nuts shut.');
  await step(page, 'gear');
  for (const text of ['A gear of 127: 30 drives 127.', 'over 100 mm', 'Fingers out, guard on.']) await said(page, text);
  await step(page, 'measure');
  for (const text of ['Over three 0.45 mm wires', '6.192', '0.2438']) await said(page, text);
  await page.locator('#th-reading').fill('6.262');
  await said(page, '0.070 mm to go');
  await page.locator('#th-reading').fill('6.08');
  await said(page, '0.012 mm under. It will be loose.');
  assert.deepEqual([...page.seen.errors, ...page.seen.violations, ...page.strangers()], []);
}));

test('which is it, and choosing one takes its name', () => withBrowser(async (browser) => {
  const page = await thread(browser);
  await press(page, 'th-how', 'which');
  await page.locator('#th-over').fill('0.187 in');
  await page.locator('#th-counted').fill('32 tpi');
  const names = await page.locator('.candidates b').allTextContents();
  assert.deepEqual(names.slice(0, 4), ['3/16 BSF', '3/16 × 32 cycle', '10-32 UNF', '2 BA']);
  await page.locator('.candidates button', { hasText: '2 BA' }).click();
  assert.equal(await page.locator('#th-name').inputValue(), '2 BA');
  await page.locator('#answer', { hasText: '2 BA' }).waitFor();
}));

test('what cannot be read is told at its field; the last good answer stays', () => withBrowser(async (browser) => {
  const page = await thread(browser);
  await page.locator('#th-name').fill('2 BA');
  await wrong(page, 'th-name', '2 BX', 'No thread goes by this name.');
  await page.locator('#answer', { hasText: 'Last good answer: 2 BA' }).waitFor();
  await press(page, 'th-how', 'own');
  await wrong(page, 'th-pitch', '0', 'Pitch can’t be 0.');
  await page.locator('#th-pitch').fill('1');
  await wrong(page, 'th-major', '0', 'Outside must be from 0.2 to 2000 mm.');
  await page.locator('#th-major').fill('6');

  await press(page, 'th-side', 'nut');
  await step(page, 'cut');
  await wrong(page, 'th-work', '7', 'These diameters don’t go together.');
  await said(page, 'Pass 1 of');
  await page.locator('#th-work').fill('');
  await press(page, 'th-side', 'screw');
  await wrong(page, 'th-nose-mm', '0.4', 'The tool’s nose is too wide for the root: at most');
  await page.locator('#th-nose-mm').fill('');

  await step(page, 'gear');
  await page.locator('#th-pitch').fill('0.1');
  await page.locator('.caut', { hasText: 'The lead must be from' }).waitFor();
  await page.locator('#th-pitch').fill('1');

  await step(page, 'measure');
  await wrong(page, 'th-wire', '0.3', 'That wire sinks below the crests.');
  await wrong(page, 'th-wire', '1.5', 'That wire rides on the crests.');
  await said(page, 'Over three');
  await wrong(page, 'th-reading', 'x', 'Length must be a number.');
  assert.deepEqual(page.seen.errors, []);
}));

test('a module worm has no exact train, and six gears are looked at without freezing', () => withBrowser(async (browser) => {
  const page = await thread(browser);
  await step(page, 'gear');
  await press(page, 'th-lead', 'module');
  await said(page, 'A worm’s lead has π in it, so no train is exact.');
  const four = await page.locator('.mark.ap').first().textContent();
  await press(page, 'th-six', 'on');
  await page.getByText(/Trains of two, four and six gears are all accounted for|too many trains of six/).waitFor();
  const six = await page.locator('.mark.ap').first().textContent();
  const ppm = (text) => Math.abs(Number(text.replace('−', '-').match(/[-+][\d.]+/)[0]));
  assert.ok(ppm(six) <= ppm(four), `${six} is no nearer than ${four}`);
}));

test('a 127 gear is handed over to Divide', () => withBrowser(async (browser) => {
  const page = await thread(browser);
  await step(page, 'gear');
  await press(page, 'divide-n', '127');
  await page.locator('#parts').waitFor();
  assert.equal(await page.locator('#parts').inputValue(), '127');
}));

test('arrow keys go from step to step, and Tab leads past the others', () => withBrowser(async (browser) => {
  const page = await thread(browser);
  await page.locator('#th-tab-size').focus();
  for (const [key, name] of [['ArrowRight', 'cut'], ['ArrowRight', 'gear'], ['End', 'measure'], ['ArrowRight', 'size'], ['ArrowLeft', 'measure'], ['Home', 'size']]) {
    await page.keyboard.press(key);
    await page.locator(`#th-tab-${name}[aria-selected=true]`).waitFor();
    assert.equal(await page.evaluate(() => document.activeElement.id), `th-tab-${name}`);
  }
  await page.keyboard.press('Tab');
  assert.equal(await page.evaluate(() => document.activeElement.closest('[role=tabpanel]') !== null), true);
}));

/** In the page: ticks on until `target` passes are shown as saved, reports that, and ticks once more. */
function tickOn(target) {
  const count = () => Number(document.getElementById('th-saved').dataset.count);
  let last = count();
  const watch = new MutationObserver(() => {
    const { state } = document.getElementById('th-saved').dataset;
    if (state !== 'saved' || count() === last) return;
    last = count();
    if (last === target) {
      watch.disconnect();
      console.log(`shown ${last}`);
    }
    setTimeout(() => document.getElementById('th-tick')?.click());
  });
  watch.observe(document.getElementById('page'), { subtree: true, childList: true, attributes: true, characterData: true });
  document.getElementById('th-tick').click();
}

test('killed while ticking, again and again: no tick that was shown is lost', async () => {
  const profile = newProfile();
  let browser = await openBrowser(profile);
  try {
    let page = await browser.open(FILE, DESK);
    await page.locator('[data-do=room][data-value=thread]').click();
    await step(page, 'cut');
    await page.locator('#th-first').fill('0.04');
    await page.locator('#th-least').fill('0.02');
    await page.locator('#th-begin').click();
    await page.locator('#th-saved[data-state=saved]').waitFor();
    let count = 0;
    for (const afterMs of [0, 3, 1, 5, 0, 2, 4, 1]) {
      const target = count + 1;
      const reached = page.waitForEvent('console', (message) => message.text() === `shown ${target}`);
      await page.evaluate(tickOn, target);
      await reached;
      if (afterMs) await new Promise((resolve) => { setTimeout(resolve, afterMs); });
      await browser.kill();
      browser = await openBrowser(profile);
      page = await browser.open(FILE, DESK);
      await page.locator('[data-do=room][data-value=thread]').click();
      await step(page, 'cut');
      await page.locator('#th-under-way [data-do=th-job-resume]').click();
      await page.locator('#th-saved[data-state=saved]').waitFor();
      count = Number(await page.locator('#th-saved').getAttribute('data-count'));
      assert.ok(count === target || count === target + 1, `${target} ticks were shown, ${count} came back`);
      assert.equal(await page.locator('.passes .cut').count(), count, 'each tick is a pass cut');
    }
  } finally {
    await browser.close();
    dropProfile(profile);
  }
});

test('another tab shows the passes and ticks only when it takes over', () => withBrowser(async (browser) => {
  const one = await thread(browser);
  await cutting(one, 'M6x0.75');
  const two = await thread(browser);
  await step(two, 'cut');
  await two.locator('#th-under-way [data-do=th-job-resume]').click();
  await two.locator('#th-take-over').waitFor();
  assert.equal(await two.locator('#th-tick').isDisabled(), true);
  await one.locator('#th-tick').click();
  await two.locator('#th-saved[data-count="2"]').waitFor();
  await two.locator('#th-take-over').click();
  await two.locator('#th-tick:enabled').click();
  await two.locator('#th-saved[data-state=saved][data-count="3"]').waitFor();
  await one.locator('#th-take-over').waitFor();
  await one.locator('#th-saved[data-count="3"]').waitFor();
  // What is asked for meanwhile changes nothing of what is under way.
  await two.locator('#th-name').fill('Tr16x4');
  await two.locator('#answer', { hasText: 'M6 × 0.75, 6g, screw' }).waitFor();
}));
