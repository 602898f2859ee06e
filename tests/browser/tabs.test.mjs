// Two tabs on one Run never both count.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ask, isClean, movableClock, next, saved, shown, startRun } from './machine.mjs';
import { FILE, withBrowser } from './rig.mjs';

/** In the page: notes the number of every event whose transaction completed. */
function noteCounted() {
  window.counted = [];
  const { add } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.add = function (value, key) {
    if (this.name === 'events') this.transaction.addEventListener('complete', () => window.counted.push(key[1]));
    return add.call(this, value, key);
  };
}

/** In the page: a browser without locks between tabs; the mark in the record has to do. */
function noLocks() {
  Object.defineProperty(Navigator.prototype, 'locks', { value: undefined });
}

const BOTH = `(${movableClock})();(${noteCounted})()`;

/** Opens the Run on a second page of the same browser. */
async function second(browser, before) {
  const page = await browser.open(FILE, { before });
  await page.locator('#run-strip [data-do=run-resume]').click();
  await page.locator('#run').waitFor();
  return page;
}

/** In the page: takes over and presses, again and again, at moments that drift between the two tabs. */
const fight = (page, pause) => page.evaluate(async (pause) => {
  const wait = (ms) => new Promise((resolve) => { setTimeout(resolve, ms); });
  for (let k = 0; k < 80; k++) {
    window.aheadMs += 2000;
    document.getElementById('run-take')?.click();
    await wait((k * pause) % 31);
    document.getElementById('run-next').click();
    await wait((k * 5) % pause);
  }
}, pause);

/** Both pages stand at the same place, and each event was counted by one of them alone. */
async function agree(one, two) {
  for (const page of [one, two]) await page.waitForFunction(() => document.getElementById('run-saved').dataset.state === 'saved');
  const counted = await Promise.all([one, two].map((page) => page.evaluate(() => window.counted)));
  const all = counted.flat().sort((a, b) => a - b);
  assert.deepEqual(all, all.map((_, k) => k), 'each event once, none left out');
  for (const page of [one, two]) await page.waitForFunction((count) => Number(document.getElementById('run-saved').dataset.count) === count, all.length);
  assert.deepEqual((await shown(one)).at, (await shown(two)).at);
  return counted.map((numbers) => numbers.length);
}

test('the second tab only shows, until it takes over; the first knows at once', () => withBrowser(async (browser) => {
  const one = await browser.open(FILE, { before: BOTH });
  await ask(one, 64);
  await startRun(one, 'plain');
  await next(one, 3);
  const two = await second(browser, BOTH);
  await two.locator('#run-note', { hasText: 'This Run is open in another tab.' }).waitFor();
  assert.equal(await two.locator('#run-next').isDisabled(), true);
  await two.keyboard.press('PageDown');
  await next(one);
  await two.waitForFunction(() => document.getElementById('run-at').textContent === '5');
  await two.locator('#run-take').click();
  await one.locator('#run-note', { hasText: 'Another tab has taken this Run over.' }).waitFor();
  await two.locator('#run-note').waitFor({ state: 'detached' });
  await next(two, 2);
  await one.waitForFunction(() => document.getElementById('run-at').textContent === '7');
  assert.deepEqual(await agree(one, two), [4, 2]);
  await two.locator('[data-do=run-leave]').click();
  await one.locator('#run-take').click();
  await one.locator('#run-note').waitFor({ state: 'detached' });
  await next(one);
  assert.equal((await shown(one)).at, 8);
  isClean(one);
  isClean(two);
}));

for (const [name, before] of [['locks', BOTH], ['no locks in the browser', `${BOTH};(${noLocks})()`]]) {
  test(`two tabs press and take over against each other: ${name}`, () => withBrowser(async (browser) => {
    const one = await browser.open(FILE, { before });
    await ask(one, 360);
    await startRun(one, 'plain');
    await next(one, 2);
    // The second tab's clock is ahead, so that a press soon after the other's is not merely asked about.
    const two = await second(browser, `${before};window.aheadMs = 600_000`);
    await Promise.all([fight(one, 17), fight(two, 23)]);
    await Promise.all([one, two].map(saved));
    const [mine, yours] = await agree(one, two);
    assert.ok(mine > 5 && yours > 5, `both had their turns: ${mine} and ${yours}`);
    isClean(one);
    isClean(two);
  }));
}
