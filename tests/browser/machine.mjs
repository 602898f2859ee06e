// A Run as the person at the machine drives it, with a clock that the test moves on.
import assert from 'node:assert/strict';

/** Runs in the page before its script: a clock that can be set ahead, so that no test waits. */
export function movableClock() {
  const real = Date.now.bind(Date);
  window.aheadMs = 0;
  Date.now = () => real() + window.aheadMs;
}

/** Answers the first start with plates of 15 to 49 holes, and types how many parts. */
export async function ask(page, parts) {
  await page.locator('#answer').waitFor();
  const plates = page.locator('[data-do=plates]').first();
  if (await plates.count()) await plates.click();
  await page.locator('#parts').fill(String(parts));
  await page.locator('#answer', { hasText: `set ${parts}` }).waitFor();
}

/** Opens the way of this kind and starts a Run of it. */
export async function startRun(page, kind) {
  const row = page.locator(`[data-do=way][data-value=${kind}]`);
  if (await row.count() && await row.getAttribute('aria-expanded') !== 'true') await row.click();
  await page.locator('#run-it').click();
  await page.locator('#run-start').click();
  await saved(page);
}

/** Waits until nothing is being saved any more. */
export const saved = (page) => page.locator('#run-saved[data-state=saved]').waitFor();

/** What the screen shows: position, events confirmed, and what is read out. */
export const shown = (page) => page.evaluate(() => ({
  at: Number(document.getElementById('run-at').textContent.replace(',', '')),
  count: Number(document.getElementById('run-saved').dataset.count ?? -1),
  says: document.getElementById('run-say').textContent,
}));

/** Presses Next `times` times, two seconds apart by the page's clock; gives what was read out after each. */
export const next = (page, times = 1) => page.evaluate(async (times) => {
  const said = [];
  for (let k = 0; k < times; k++) {
    const before = document.getElementById('run-saved').dataset.count;
    window.aheadMs += 2000;
    document.getElementById('run-next').click();
    for (let tries = 0; ; tries++) {
      const { state, count } = document.getElementById('run-saved').dataset;
      if (state === 'saved' && count !== before) break;
      if (tries > 500) throw new Error(`press ${k} was not confirmed: ${document.getElementById('run').textContent}`);
      await new Promise((resolve) => { setTimeout(resolve); });
    }
    said.push(document.getElementById('run-say').textContent);
  }
  return said;
}, times);

/** The page asked for nothing but itself (and `own` files), broke no rule and threw nothing. */
export function isClean(page, own = () => false) {
  assert.deepEqual(page.strangers().filter((asked) => !own(asked) && !asked.startsWith('blob:')), []);
  assert.deepEqual(page.seen.violations, []);
  assert.deepEqual(page.seen.errors, []);
}

/** Numbers from 0 up to `below`, the same for the same seed. */
export function seeded(seed) {
  let state = BigInt(seed);
  return (below) => {
    state = (state * 6364136223846793005n + 1442695040888963407n) & 0xffffffffffffffffn;
    return Number((state >> 33n) % BigInt(below));
  };
}
