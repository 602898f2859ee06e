// A whole use: typed, chosen, run to the closing move; from disk and from the site
// with the network off. Every hole is worked out again here.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { ask, isClean, movableClock, next, saved, shown, startRun } from './machine.mjs';
import { FILE, openSite, withBrowser } from './rig.mjs';

/** The holes named in what was read out: "... hole 8 to hole 2." */
const holes = (said) => said.match(/hole (\d+) to hole (\d+)\.$/)?.slice(1).map(Number);

test('from disk: 127 by differential gears, every move and the closing one', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { before: movableClock });
  await ask(page, 127);
  await page.locator('[data-do=gears]').first().click();
  await startRun(page, 'differential');
  const first = (await shown(page)).says;
  assert.match(first, /^At 1 of 127\. Next: 13 holes on the 39 circle, clockwise, hole 0 to hole 13\.$/);
  const said = [first, ...await next(page, 126)];
  said.slice(0, 126).forEach((text, k) => {
    assert.deepEqual(holes(text), [(13 * k) % 39, (13 * (k + 1)) % 39], text);
    assert.ok(text.startsWith(`At ${k + 1} of 127.`), text);
  });
  assert.match(said[126], /^Cut 127, The last one\./);
  const [closing, closed] = await next(page, 2);
  assert.match(closing, /^All 127 cut\. One closing move, no cut: 13 holes on the 39 circle, clockwise\. The pin must come back to hole 13\.$/);
  assert.equal(closed, 'Closed. 40 turns made.');
  assert.equal((127 * 13) % 39, 13, 'hole 13 is where 127 moves of 13 end on 39');
  isClean(page);
}));

test('from the site with the network off: 127 by nearest hole, every move and the closing one', () => withBrowser(async (browser) => {
  const host = await openSite();
  const first = await browser.open(host.origin);
  await first.locator('#answer').waitFor();
  await first.evaluate(() => navigator.serviceWorker.ready);
  await first.close();
  await host.close();
  const page = await browser.open(host.origin, { before: movableClock });
  await ask(page, 127);
  await startRun(page, 'nearest');
  const place = (k) => Math.round((40 * 49 * k) / 127);
  const said = [(await shown(page)).says, ...await next(page, 126)];
  said.slice(0, 126).forEach((text, k) => {
    assert.deepEqual(holes(text), [place(k) % 49, place(k + 1) % 49], text);
    assert.ok(text.includes(`Next: ${place(k + 1) - place(k)} holes`), text);
  });
  const [closing, closed] = await next(page, 2);
  assert.match(closing, /The pin must come back to hole 0\.$/);
  assert.equal(closed, 'Closed. 40 turns made.');
  isClean(page, (asked) => asked.startsWith(host.origin));
}));

test('keys, sheets and focus', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { before: movableClock });
  const later = () => page.evaluate(() => { window.aheadMs += 2000; });
  const at = async (wanted) => {
    await saved(page);
    await page.waitForFunction((wanted) => document.getElementById('run-at').textContent === wanted, String(wanted));
  };
  await ask(page, 64);
  await startRun(page, 'plain');
  assert.equal(await page.evaluate(() => document.activeElement.id), 'run-next');
  await later();
  await page.keyboard.press('Enter'); // the button's own press: once
  await at(2);
  await page.keyboard.press('PageDown');
  await page.locator('#run-note', { hasText: 'Counted once.' }).waitFor();
  await later();
  await page.keyboard.down('PageDown');
  await later();
  await page.keyboard.down('PageDown'); // repeats while it is held
  await page.keyboard.up('PageDown');
  await at(3);
  await later();
  await page.keyboard.press('PageUp');
  await at(2);
  await page.keyboard.press('Control+z');
  await at(3);
  await page.locator('[data-do=run-past]').click();
  await page.locator('#run-sheet', { hasText: 'Went past hole 14?' }).waitFor();
  await later();
  await page.keyboard.press('PageDown');
  await page.keyboard.press('Escape');
  await page.locator('#run-sheet').waitFor({ state: 'detached' });
  await at(3);
  assert.equal(await page.evaluate(() => document.activeElement.id), 'run-next');
  await page.locator('[data-do=run-lost]').click();
  await page.locator('[data-do=run-hole][data-value="3"]').click();
  await page.locator('#run-sheet', { hasText: 'No part stops in hole 3.' }).waitFor();
  await page.locator('[data-do=run-hole][data-value="8"]').click();
  await page.locator('[data-do=run-found][data-value="36"]').click();
  await at(37);
  await page.keyboard.press('Escape');
  await page.locator('#run-strip', { hasText: '64 parts, at 37 of 64' }).waitFor();
  isClean(page);
}));

test('nothing runs over the edge, on small screens and at twice the text', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { before: movableClock });
  const fits = async (width, height) => {
    await page.setViewportSize({ width, height });
    const wide = await page.evaluate(() => {
      const run = document.getElementById('run');
      return [run.scrollWidth - run.clientWidth, document.documentElement.scrollWidth - innerWidth];
    });
    assert.ok(wide.every((over) => over <= 0), `${width} x ${height}: ${wide}`);
    const next = await page.locator('#run-next').boundingBox();
    assert.ok(next.height >= (height < 400 ? 60 : 76), `Next is ${next.height} tall at ${width} x ${height}`);
  };
  await ask(page, 3);
  await startRun(page, 'plain');
  for (const [width, height] of [[320, 568], [390, 844], [640, 360], [844, 390], [1280, 800]]) await fits(width, height);
}));

/** In the page: a store that can't be opened. */
function noStore() {
  indexedDB.open = () => { throw new DOMException('refused', 'SecurityError'); };
}

/** In the page: a store that has room for the Run and three events. */
function fullSoon() {
  const { add } = IDBObjectStore.prototype;
  let room = 4;
  IDBObjectStore.prototype.add = function (...given) {
    if (room-- <= 0) throw new DOMException('no space', 'QuotaExceededError');
    return add.apply(this, given);
  };
}

/** Presses Next while nothing is saved: it counts at once, and says so. */
const nextUnsaved = (page) => page.evaluate(() => {
  window.aheadMs += 2000;
  document.getElementById('run-next').click();
});

test('a store that refuses is told at once; the file that is offered goes on elsewhere', () => withBrowser(async (browser, profile) => {
  const page = await browser.open(FILE, { before: `(${movableClock})();(${noStore})()` });
  await ask(page, 64);
  await page.locator('#run-it').click();
  await page.locator('#run-start').click();
  await page.locator('#run-saved[data-state=unsaved]', { hasText: 'Not saved. Write down 1' }).waitFor();
  await nextUnsaved(page);
  await page.locator('#run-saved', { hasText: 'Write down 2' }).waitFor();
  await page.locator('#run-saved').click();
  await page.locator('#run-why-unsaved').waitFor();
  const [file] = await Promise.all([page.waitForEvent('download'), page.locator('[data-do=run-export]').click()]);
  const kept = join(profile, 'kept.json');
  writeFileSync(kept, readFileSync(await file.path()));
  await page.close();

  const later = await browser.open(FILE, { before: movableClock });
  await ask(later, 64);
  await startRun(later, 'plain');
  await later.locator('[data-do=run-leave]').click();
  await later.locator('[data-do=run-list]').click();
  await later.locator('#runs input[type=file]').setInputFiles({ name: 'no.json', mimeType: 'application/json', buffer: Buffer.from('{"frozen":1}') });
  await later.locator('#runs', { hasText: 'no.json was not opened.' }).waitFor();
  await later.locator('#runs input[type=file]').setInputFiles(kept);
  await saved(later);
  assert.equal((await shown(later)).at, 2);
  isClean(later);
}));

test('a store that is full is told at once', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { before: `(${movableClock})();(${fullSoon})()` });
  await ask(page, 64);
  await startRun(page, 'plain');
  await next(page, 3);
  await nextUnsaved(page);
  await page.locator('#run-saved[data-state=unsaved]', { hasText: 'Not saved. Write down 5' }).waitFor();
  await page.locator('#run-saved').click();
  await page.locator('#run-why-unsaved', { hasText: 'no space left' }).waitFor();
}));
