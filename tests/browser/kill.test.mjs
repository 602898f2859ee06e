// The browser is killed in the middle of counting, again and again: no move that the
// page showed as current may ever be lost, and the place must be right.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ask, movableClock, next, saved, seeded, shown, startRun } from './machine.mjs';
import { FILE, dropProfile, newProfile, openBrowser } from './rig.mjs';

const KILLS = 31;
const PARTS = 127;

/** In the page: presses Next until `target` events are shown, reports that, and presses once more. */
function pressOn(target) {
  let last = Number(document.getElementById('run-saved').dataset.count);
  const press = () => {
    window.aheadMs += 2000;
    document.getElementById('run-next').click();
  };
  const watch = new MutationObserver(() => {
    const { state, count } = document.getElementById('run-saved').dataset;
    if (state !== 'saved' || Number(count) === last) return;
    last = Number(count);
    if (last === target) {
      watch.disconnect();
      console.log(`shown ${last}`);
    }
    setTimeout(press);
  });
  watch.observe(document.getElementById('page'), { subtree: true, childList: true, attributes: true, characterData: true });
  press();
}

/** Kills the browser `afterMs` after event `target` was shown, the next one under way or just done. */
async function killAt(browser, page, target, afterMs) {
  const reached = page.waitForEvent('console', (message) => message.text() === `shown ${target}`);
  await page.evaluate(pressOn, target);
  await reached;
  if (afterMs) await new Promise((resolve) => { setTimeout(resolve, afterMs); });
  await browser.kill();
}

/** The Run as it comes back: how many events, and that the place is the one they lead to. */
async function comesBack(page) {
  const resume = page.locator('#run-strip [data-do=run-resume]');
  await resume.waitFor().catch(async () => {
    const { requests, ...seen } = page.seen;
    assert.fail(`no way back to the Run, at ${requests.length} requests: ${JSON.stringify(seen)}\n${await page.locator('body').innerText()}`);
  });
  await resume.click();
  await saved(page);
  await page.locator('#run-next:enabled').waitFor();
  const { at, count, says } = await shown(page);
  assert.equal(at, count + 1, 'each event is one move from the first position');
  const place = (k) => Math.round((40 * 49 * k) / PARTS) % 49;
  assert.ok(says.startsWith(`At ${at} of ${PARTS}.`) && says.endsWith(`hole ${place(count)} to hole ${place(count + 1)}.`), says);
  return count;
}

/** A clock that never runs back from one life of the browser to the next. */
const clock = (life) => `(${movableClock})();window.aheadMs = ${life * 600_000}`;

test(`killed at move 37 and at ${KILLS - 1} more moments: nothing that was shown is lost`, async () => {
  const profile = newProfile();
  const random = seeded(20261125);
  let browser = await openBrowser(profile);
  try {
    let page = await browser.open(FILE, { before: clock(0) });
    await ask(page, PARTS);
    await startRun(page, 'nearest');
    let count = 0;
    for (let kill = 0; kill < KILLS; kill++) {
      const target = kill === 0 ? 36 : count + 1 + random(2);
      await killAt(browser, page, target, random(6));
      browser = await openBrowser(profile);
      page = await browser.open(FILE, { before: clock(kill + 1) });
      count = await comesBack(page);
      assert.ok(count === target || count === target + 1, `kill ${kill}: ${target} events were shown, ${count} came back`);
      assert.ok(count < PARTS - 3, 'the Run is long enough for every kill');
    }
    const said = await next(page, PARTS + 1 - count);
    assert.match(said.at(-2), /^All 127 cut\. One closing move, no cut: .* The pin must come back to hole 0\.$/);
    assert.equal(said.at(-1), 'Closed. 40 turns made.');
  } finally {
    await browser.close();
    dropProfile(profile);
  }
});
