// Answer times of the page from disk, in headless Chromium: from the input event's own
// time stamp to a forced layout read after the new markup is in place, over 200 different
// questions, 200 wheels and every small sum; the next frame's time beside it. And from navigation to the first answer.
// Prints figures; nothing is asserted but that every question was answered.
import assert from 'node:assert/strict';
import { FILE, withBrowser } from './rig.mjs';

/** In the page: times every input event that the page has just dealt with. */
function watch() {
  window.times = [];
  window.addEventListener('input', (event) => {
    // The page's own listener stands on the document, so its markup is in place by now.
    const answer = document.querySelector('[id^="way-"], #ge-panel, .sum-ans');
    const height = answer.getBoundingClientRect().height;
    const laidOut = performance.now() - event.timeStamp;
    const one = { laidOut, height, text: document.getElementById('answer').textContent };
    requestAnimationFrame(() => {
      one.frame = performance.now() - event.timeStamp;
      window.times.push(one);
    });
  });
  const seen = new MutationObserver(() => {
    if (window.first === undefined && document.querySelector('[id^="way-"]')) {
      document.querySelector('[id^="way-"]').getBoundingClientRect();
      window.first = performance.now();
      seen.disconnect();
    }
  });
  seen.observe(document, { childList: true, subtree: true });
}

/** Numbers from a fixed seed. */
function dice(seed) {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

/** 200 different questions: parts small and large, angles to the second, lists of marks. */
function questions() {
  const roll = dice(127);
  const asked = new Set();
  const fill = (kind, count, text) => {
    const until = asked.size + count;
    while (asked.size < until) asked.add(`${kind} ${text()}`);
  };
  fill('parts', 110, () => 2 + roll(999));
  fill('parts', 40, () => 1001 + roll(9000));
  fill('angle', 30, () => `${roll(360)} ${roll(60)} ${roll(60)}`);
  fill('list', 20, () => Array.from({ length: 24 }, (_, k) => `${k * 15}°${roll(60)}′${roll(60)}″`).join('; '));
  return [...asked].map((one) => [one.slice(0, one.indexOf(' ')), one.slice(one.indexOf(' ') + 1)]);
}

const ms = (value) => `${value.toFixed(1)} ms`.padStart(10);
const part = (sorted, share) => sorted[Math.min(sorted.length - 1, Math.ceil(sorted.length * share) - 1)];
const row = (name, values) => {
  const sorted = [...values].sort((a, b) => a - b);
  console.log(`${name.padEnd(44)}${ms(part(sorted, 0.5))}${ms(part(sorted, 0.9))}${ms(part(sorted, 0.99))}${ms(sorted.at(-1))}`);
};

async function answerTimes(browser) {
  const page = await browser.open(FILE, { before: watch });
  await page.getByRole('button', { name: 'Plates 15 to 49' }).click();
  await page.getByRole('button', { name: 'usual twelve gears' }).click();
  const found = [];
  let open = 'parts';
  for (const [kind, text] of questions()) {
    if (kind !== open) await page.getByRole('button', { name: kind === 'angle' ? 'Angle' : 'List', exact: true }).click();
    open = kind;
    const before = await page.evaluate(() => window.times.length);
    await page.locator(`#${kind}`).fill(text);
    await page.waitForFunction((count) => window.times.length > count, before);
    const [one] = await page.evaluate(() => window.times.slice(-1));
    assert.match(one.text, /ways? to set/, `${kind} ${text}`);
    assert.ok(one.height > 0);
    found.push({ kind, ...one });
  }
  assert.equal(found.length, 200);
  assert.deepEqual(page.seen.errors, []);
  return { page, found };
}

/** Wheels of one kind of teeth, each step open for a quarter of them. */
async function wheels(browser) {
  const page = await browser.open(FILE, { before: watch });
  await page.getByRole('button', { name: 'Gear', exact: true }).click();
  const found = [];
  for (const step of ['Blank', 'Cutter', 'Depth', 'Check']) {
    await page.getByRole('tab', { name: step }).click();
    for (let k = 0; k < 50; k += 1) {
      const before = await page.evaluate(() => window.times.length);
      const teeth = String(13 + k * 7);
      await page.getByRole('textbox', { name: 'Number of teeth' }).fill(teeth);
      await page.waitForFunction((count) => window.times.length > count, before);
      const [one] = await page.evaluate(() => window.times.slice(-1));
      assert.ok(one.text.startsWith(`${teeth} teeth`), `${teeth}: ${one.text}`);
      assert.ok(one.height > 0);
      found.push(one);
    }
  }
  assert.deepEqual(page.seen.errors, []);
  // What is open is kept: the next opening begins with Divide again.
  await page.getByRole('button', { name: 'Divide', exact: true }).click();
  await page.waitForTimeout(200);
  await page.close();
  return found;
}

/** Every small sum, its first field typed into six times, each time with another last figure. */
async function sums(browser) {
  const page = await browser.open(FILE, { before: watch });
  await page.getByRole('button', { name: 'Bench', exact: true }).click();
  const keys = await page.locator('.bench-row').evaluateAll((rows) => rows.map((row) => row.dataset.value));
  const found = [];
  for (const key of keys) {
    const back = page.locator('.bench .back');
    if (await back.isVisible()) await back.click();
    await page.locator(`#be-row-${key}`).click();
    const field = page.locator('.sum-form input').first();
    if (await field.count() === 0) continue;
    const usual = await field.inputValue();
    for (let k = 1; k <= 6; k += 1) {
      const before = await page.evaluate(() => window.times.length);
      await field.fill((usual || '0').replace(/\d(?=\D*$)/, (last) => (Number(last) + k) % 10));
      await page.waitForFunction((count) => window.times.length > count, before);
      const [one] = await page.evaluate(() => window.times.slice(-1));
      assert.ok(one.height > 0, key);
      found.push({ key, ...one });
    }
  }
  assert.ok(found.length >= 180, `${found.length} sums timed`);
  assert.deepEqual(page.seen.errors, []);
  await page.getByRole('button', { name: 'Divide', exact: true }).click();
  await page.waitForTimeout(200);
  await page.close();
  return found;
}

console.log(`${''.padEnd(44)}${'half'.padStart(10)}${'90 %'.padStart(10)}${'99 %'.padStart(10)}${'worst'.padStart(10)}`);
await withBrowser(async (browser) => {
  const { page, found } = await answerTimes(browser);
  row('Answer laid out, 200 different questions', found.map((one) => one.laidOut));
  row('The next frame after it', found.map((one) => one.frame));
  for (const kind of ['parts', 'angle', 'list']) {
    row(`  ${kind}: laid out`, found.filter((one) => one.kind === kind).map((one) => one.laidOut));
  }
  await page.close();
  const teeth = await wheels(browser);
  row('Gear laid out, 200 wheels, 50 at each step', teeth.map((one) => one.laidOut));
  row('The next frame after it', teeth.map((one) => one.frame));
  const small = await sums(browser);
  row(`Bench laid out, ${small.length} entries into every sum`, small.map((one) => one.laidOut));
  row('The next frame after it', small.map((one) => one.frame));
  const [slow] = small.toSorted((a, b) => b.laidOut - a.laidOut);
  console.log(`  the slowest is ${slow.key}`);
  const first = [];
  for (let k = 0; k < 10; k += 1) {
    const again = await browser.open(FILE, { before: watch });
    await again.waitForFunction(() => window.first !== undefined);
    first.push(await again.evaluate(() => window.first));
    await again.close();
  }
  row('From disk to first answer, 10 openings', first);
});
