// A card is never lost: to a full disk, a damaged store, a second tab, a killed browser,
// an older or a newer version of the page; and it goes from one device to another whole.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { isClean, seeded } from './machine.mjs';
import { FILE, dropProfile, newProfile, openBrowser, openSite, withBrowser } from './rig.mjs';

const STEPS = ['Saw the blank', 'Turn to 77.40', 'Deburr'];

/** Opens the room. */
async function room(page) {
  await page.locator('[data-do=room][data-value=card]').first().click();
  await page.locator('#card-title').waitFor();
}

const saved = (page) => page.locator('#card-state[data-state=saved]').waitFor();
const state = (page, text) => page.locator('#card-state', { hasText: text }).waitFor();

async function addStep(page, words) {
  await page.locator('[name=cd-new]').fill(words);
  await page.locator('[data-do=cd-add]').click();
}

/** A new card with this title and three steps, saved. */
async function newCard(page, title) {
  if (await page.locator('[data-do=cd-leave]').count()) await page.locator('[data-do=cd-leave]').click();
  await page.locator('#cd-begin').click();
  await page.locator('[name=cd-title]').fill(title);
  for (const words of STEPS) await addStep(page, words);
  await saved(page);
}

/** The boxes of the steps, in order. */
const boxes = (page) => page.locator('.card-steps input[type=checkbox]');

/** What the open card holds, as it is shown. */
const shown = (page) => page.evaluate(() => ({
  title: document.querySelector('[name=cd-title]').value,
  job: document.querySelector('[name=cd-job]').value,
  metal: document.querySelector('[name=cd-metal]').value,
  steps: [...document.querySelectorAll('.card-steps label.tk b')].map((step) => step.textContent),
  done: [...document.querySelectorAll('.card-steps input[type=checkbox]')].map((box) => box.checked),
}));

/** All that the store holds of cards: each with its beginning and its changes. */
const stored = (page) => page.evaluate(() => new Promise((resolve, reject) => {
  const opening = indexedDB.open('handturn-1');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const base = opening.result;
    const work = base.transaction(['runs', 'events']);
    const [runs, heads, keys, events] = [work.objectStore('runs').getAllKeys(), work.objectStore('runs').getAll(),
      work.objectStore('events').getAllKeys(), work.objectStore('events').getAll()];
    work.oncomplete = () => {
      base.close();
      resolve(runs.result.map((id, k) => ({
        id, next: heads.result[k].next, begins: heads.result[k].frozen,
        changes: events.result.filter((_, at) => keys.result[at][0] === id),
      })).filter(({ id }) => id.startsWith('card-')));
    };
  };
}));

/** Overwrites what the store holds of a card, as a fault or another version would. */
const overwrite = (page, id, change) => page.evaluate(([id, from, to]) => new Promise((resolve, reject) => {
  const opening = indexedDB.open('handturn-1');
  opening.onsuccess = () => {
    const base = opening.result;
    const work = base.transaction(['runs', 'events'], 'readwrite');
    const runs = work.objectStore('runs');
    let changed = 0;
    const put = (text) => { changed += text.includes(from); return text.replace(from, to); };
    runs.get(id).onsuccess = ({ target }) => runs.put({ ...target.result, frozen: put(target.result.frozen) }, id);
    work.objectStore('events').openCursor(IDBKeyRange.bound([id], [id, []])).onsuccess = ({ target: { result: at } }) => {
      if (!at) return;
      at.update(put(at.value));
      at.continue();
    };
    work.onerror = () => reject(work.error);
    work.oncomplete = () => { base.close(); resolve(changed); };
  };
}), [id, ...change]);

/** In the page: a store with room for so many entries; `room` can be raised. */
const fullAfter = (room) => `window.room = ${room};(${function full() {
  const { add } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.add = function (...given) {
    if (this.name !== 'page' && window.room-- <= 0) throw new DOMException('no space', 'QuotaExceededError');
    return add.apply(this, given);
  };
}})()`;

async function saveToFile(page) {
  const [file] = await Promise.all([page.waitForEvent('download'), page.locator('[data-do=cd-save]').click()]);
  assert.equal(file.suggestedFilename(), 'handturn-card.json');
  return readFileSync(await file.path(), 'utf8');
}

const openFile = (page, text) =>
  page.locator('input[type=file]').setInputFiles({ name: 'a.json', mimeType: 'application/json', buffer: Buffer.from(text) });

test('a full store is said at once; the file holds all of it; with room again all is stored', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { before: fullAfter(1e6) });
  await room(page);
  await newCard(page, 'Wheel, 127 teeth');
  await boxes(page).nth(0).check();
  await saved(page);
  await page.evaluate(() => { window.room = 0; });
  await boxes(page).nth(1).check();
  await state(page, 'Not saved: the device’s store is full. What you do here is lost when this page closes: save the card to a file.');
  await page.locator('[name=cd-metal]').fill('Bronze, 4 mm');
  await boxes(page).nth(2).check();
  const before = await shown(page);
  assert.deepEqual(before.done, [true, true, true]);
  const file = await saveToFile(page);
  await page.locator('[data-do=cd-retry]').click();
  await state(page, 'Not saved');
  // The file goes on elsewhere.
  await withBrowser(async (other) => {
    const there = await other.open(FILE);
    await room(there);
    await openFile(there, file);
    await saved(there);
    assert.deepEqual(await shown(there), before);
    await there.reload();
    await room(there);
    await saved(there);
    assert.deepEqual(await shown(there), before);
  });
  await page.evaluate(() => { window.room = 1e6; });
  await page.locator('[data-do=cd-retry]').click();
  await saved(page);
  await page.reload();
  await room(page);
  await saved(page);
  assert.deepEqual(await shown(page), before);
  // What was done while nothing was stored can be taken back as well.
  await page.locator('#cd-undo').click();
  await saved(page);
  assert.deepEqual((await shown(page)).done, [true, true, false]);
}));

test('a card begun on a full device says so, and is stored when there is room', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, { before: fullAfter(0) });
  await room(page);
  await page.locator('#cd-begin').click();
  await state(page, 'the device’s store is full');
  await page.locator('[name=cd-title]').fill('Rim');
  assert.deepEqual(await stored(page), []);
  await page.evaluate(() => { window.room = 1e6; });
  await page.locator('[data-do=cd-retry]').click();
  await saved(page);
  await page.locator('[name=cd-job]').fill('Clock');
  await saved(page);
  await page.reload();
  await room(page);
  await saved(page);
  const { title, job } = await shown(page);
  assert.deepEqual([title, job], ['Rim', 'Clock']);
}));

test('a damaged card is left out and said, the others stay, and nothing in the store is changed', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await room(page);
  for (const title of ['One', 'Two', 'Three']) await newCard(page, title);
  await page.locator('[data-do=cd-leave]').click();
  const [one, two, three] = (await stored(page)).map(({ id }) => id);
  assert.equal(await overwrite(page, one, ['"version":2', '"version":"?"']), 1);
  assert.equal(await overwrite(page, three, ['Turn to 77.40"', 'Turn to 77.40']), 1);
  const before = await stored(page);
  await page.reload();
  await room(page);
  await page.locator(`#${one}`, { hasText: 'This card is damaged and can’t be read. It stays stored until you take it out.' }).waitFor();
  await page.locator(`#${three}`, { hasText: 'What was saved before the damage can be read.' }).waitFor();
  await page.locator(`#${two} [data-do=cd-resume]`).click();
  await saved(page);
  assert.deepEqual((await shown(page)).steps, STEPS);
  await page.locator('[data-do=cd-leave]').click();
  assert.deepEqual(await stored(page), before);
  // What came before the damage becomes a card of its own.
  await page.locator(`#${three} [data-do=cd-rescue]`).click();
  await saved(page);
  const rescued = await shown(page);
  assert.deepEqual([rescued.title, rescued.steps], ['Three', STEPS.slice(0, 1)]);
  const after = await stored(page);
  assert.deepEqual(after.slice(0, 3), before);
  assert.equal(after.length, 4);
  isClean(page);
}));

test('the second tab only reads until it takes over; a press of the first then does not count and says so', () => withBrowser(async (browser) => {
  const one = await browser.open(FILE);
  await room(one);
  await newCard(one, 'Wheel');
  const two = await browser.open(FILE);
  await room(two);
  await state(two, 'Another tab writes on this card. Here it can only be read.');
  await boxes(two).nth(0).click();
  await state(two, 'Not counted: another tab writes on this card.');
  assert.deepEqual((await shown(two)).done, [false, false, false]);
  await boxes(one).nth(1).check();
  await saved(one);
  await two.waitForFunction(() => document.querySelectorAll('.card-steps input:checked').length === 1);
  await two.locator('[data-do=cd-take-over]').click();
  await two.locator('#card-state', { hasText: 'Saved on this device' }).waitFor();
  await state(one, 'Here it can only be read.');
  await boxes(two).nth(2).check();
  await saved(two);
  await one.waitForFunction(() => document.querySelectorAll('.card-steps input:checked').length === 2);
  await boxes(one).nth(0).click();
  await state(one, 'Not counted');
  assert.deepEqual(await shown(one), await shown(two));
  assert.deepEqual((await shown(one)).done, [false, true, true]);
  await one.locator('[data-do=cd-take-over]').click();
  await one.locator('#card-state', { hasText: 'Saved on this device' }).waitFor();
  await boxes(one).nth(0).check();
  await saved(one);
  assert.deepEqual((await shown(one)).done, [true, true, true]);
  isClean(one);
  isClean(two);
}));

test('what did not count because another tab took the card over can be kept as a copy', () => withBrowser(async (browser) => {
  const one = await browser.open(FILE);
  await room(one);
  await newCard(one, 'Wheel');
  const two = await browser.open(FILE);
  await room(two);
  await state(two, 'Here it can only be read.');
  await two.locator('[data-do=cd-take-over]').click();
  await state(one, 'Here it can only be read.');
  assert.equal(await one.locator('#card-uncounted').count(), 0, 'nothing was done here yet');
  await one.locator('[name=cd-notes]').pressSequentially('Chuck jaws bored to 77.4');
  await boxes(one).nth(0).click();
  await state(one, 'Not counted: another tab writes on this card.');
  await one.locator('#card-uncounted', { hasText: 'Not counted: your changes of Wheel' }).waitFor();
  assert.equal(await one.locator('[name=cd-notes]').inputValue(), 'Chuck jaws bored to 77.4', 'it stays in its field');
  await boxes(two).nth(2).check();
  await saved(two);
  await one.waitForFunction(() => document.querySelectorAll('.card-steps input:checked').length === 1);
  await one.locator('[data-do=cd-copy]').click();
  await one.waitForFunction(() => document.querySelector('[name=cd-title]').value === 'Wheel (copy)');
  await saved(one);
  assert.deepEqual((await shown(one)).done, [true, false, false]);
  assert.equal(await one.locator('[name=cd-notes]').inputValue(), 'Chuck jaws bored to 77.4');
  assert.equal(await one.locator('#card-uncounted').count(), 0);
  // The other tab's card is as it left it, and both are stored.
  assert.deepEqual(await shown(two), { ...(await shown(two)), title: 'Wheel', done: [false, false, true] });
  assert.equal((await stored(one)).length, 2);
  await one.reload();
  await room(one);
  await saved(one);
  const { title, done } = await shown(one);
  assert.deepEqual([title, done], ['Wheel (copy)', [true, false, false]]);
  // Or it is let go: the field shows what counts again.
  await two.locator('[data-do=cd-leave]').click();
  await two.locator('.card-list li', { hasText: '(copy)' }).locator('[data-do=cd-resume]').click();
  await state(two, 'Here it can only be read.');
  await two.locator('[name=cd-notes]').fill('Else');
  await two.locator('[data-do=cd-uncopy]').click();
  await two.waitForFunction(() => document.querySelector('[name=cd-notes]').value === 'Chuck jaws bored to 77.4');
  isClean(one);
  isClean(two);
}));

test('where both tabs write at once, what the store did not take is offered, on the list too', () => withBrowser(async (browser) => {
  const before = () => Object.defineProperty(Navigator.prototype, 'locks', { value: undefined });
  const one = await browser.open(FILE, { before });
  await room(one);
  await newCard(one, 'Wheel');
  const two = await browser.open(FILE, { before });
  await room(two);
  await saved(two);
  await boxes(two).nth(0).check();
  await saved(two);
  await one.waitForFunction(() => document.querySelectorAll('.card-steps input:checked').length === 1);
  await boxes(one).nth(2).click();
  await one.locator('#card-uncounted').waitFor();
  await one.locator('[data-do=cd-leave]').click();
  await one.locator('#card-uncounted', { hasText: 'Wheel' }).waitFor();
  await one.locator('[data-do=cd-copy]').click();
  await saved(one);
  assert.deepEqual((await shown(one)).done, [true, false, true]);
  await boxes(two).nth(1).check();
  await saved(two);
  assert.deepEqual((await shown(two)).done, [true, true, false]);
  isClean(one);
}));

test('where a browser has no locks, the mark in the record alone keeps two tabs apart', () => withBrowser(async (browser) => {
  const before = () => Object.defineProperty(Navigator.prototype, 'locks', { value: undefined });
  const one = await browser.open(FILE, { before });
  await room(one);
  await newCard(one, 'Wheel');
  const two = await browser.open(FILE, { before });
  await room(two);
  await saved(two);
  await boxes(two).nth(0).check();
  await saved(two);
  // The second has taken the card by opening it: the first is told at its next press.
  await boxes(one).nth(2).click();
  await state(one, 'Not counted: another tab writes on this card.');
  await one.waitForFunction(() => document.querySelectorAll('.card-steps input:checked').length === 1);
  assert.deepEqual((await shown(one)).done, [true, false, false]);
}));

test('a card taken out in one tab is not lost to the other, and comes back', () => withBrowser(async (browser) => {
  const one = await browser.open(FILE);
  await room(one);
  await newCard(one, 'Wheel');
  const two = await browser.open(FILE);
  await room(two);
  await state(two, 'Here it can only be read.');
  await one.locator('[data-do=cd-delete]').click();
  await state(two, 'Not saved: it was taken out in another tab.');
  assert.deepEqual(await stored(one), []);
  assert.deepEqual((await shown(two)).steps, STEPS);
  await one.locator('#cd-undelete').click();
  await saved(one);
  assert.deepEqual((await shown(one)).steps, STEPS);
  assert.equal((await stored(one)).length, 1);
}));

test('a newer version is left as it is; the form without metal is read and brought up to date', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await room(page);
  for (const title of ['Newer', 'Older']) await newCard(page, title);
  await page.locator('[data-do=cd-leave]').click();
  const [newer, older] = (await stored(page)).map(({ id }) => id);
  assert.equal(await overwrite(page, newer, ['"version":2', '"version":3']), 1);
  assert.equal(await overwrite(page, older, ['"metal":"",', '']), 1);
  assert.equal(await overwrite(page, older, ['"version":2', '"version":1']), 1);
  const before = await stored(page);
  await page.reload();
  await room(page);
  const row = page.locator(`#${newer}`);
  await page.locator(`#${newer}`, { hasText: 'newer version of Handturn. It is left as it is.' }).waitFor();
  assert.equal(await row.locator('button').count(), 0);
  assert.deepEqual(await stored(page), before, 'looking at them changes nothing');
  await page.locator(`#${older} [data-do=cd-resume]`).click();
  await saved(page);
  await page.waitForFunction(() => document.querySelector('[name=cd-metal]').value === '');
  await page.locator('[name=cd-metal]').fill('Brass');
  await boxes(page).nth(0).check();
  await saved(page);
  const after = await stored(page);
  assert.deepEqual(after[0], before[0]);
  assert.match(after[1].begins, /^\{"version":2,.*"metal":""/);
  await page.reload();
  await room(page);
  await saved(page);
  const card = await shown(page);
  assert.deepEqual([card.title, card.metal, card.steps, card.done], ['Older', 'Brass', STEPS, [true, false, false]]);
  isClean(page);
}));

test('a long log is made short in one go, and the card stays as it is', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await room(page);
  await newCard(page, 'Wheel');
  await page.evaluate(async () => {
    for (let k = 0; k < 301; k++) {
      document.querySelectorAll('.card-steps input[type=checkbox]')[k % 3].click();
      while (document.getElementById('card-state').dataset.state !== 'saved') await new Promise((resolve) => { setTimeout(resolve); });
    }
  });
  await page.waitForTimeout(200);
  const [card] = await stored(page);
  assert.ok(card.next < 241 && card.changes.length === card.next, `${card.next} changes`);
  const before = await shown(page);
  assert.deepEqual(before.done, [true, false, false]);
  await page.reload();
  await room(page);
  await saved(page);
  assert.deepEqual(await shown(page), before);
  await page.locator('#cd-undo').click();
  await saved(page);
  assert.deepEqual((await shown(page)).done, [false, false, false]);
  isClean(page);
}));

test('a killed browser keeps every tick that was shown as saved', async () => {
  const profile = newProfile();
  const random = seeded(20261126);
  let browser = await openBrowser(profile);
  try {
    let page = await browser.open(FILE);
    await room(page);
    await newCard(page, 'Wheel');
    let done = [false, false, false];
    for (let kill = 0; kill < 10; kill++) {
      const presses = 1 + random(3);
      for (let k = 0; k < presses; k++) {
        const at = random(3);
        await boxes(page).nth(at).click();
        await saved(page);
        done[at] = !done[at];
      }
      // One more is on its way, or not.
      const late = random(3);
      await page.evaluate(([at, wait]) => setTimeout(() => document.querySelectorAll('.card-steps input[type=checkbox]')[at].click(), wait), [late, random(4)]);
      if (random(2)) await page.waitForTimeout(random(5));
      await browser.kill();
      browser = await openBrowser(profile);
      page = await browser.open(FILE);
      await room(page);
      await saved(page);
      const back = await shown(page);
      assert.deepEqual([back.title, back.steps], ['Wheel', STEPS]);
      const others = (list) => list.filter((_, at) => at !== late);
      assert.deepEqual(others(back.done), others(done), `kill ${kill}`);
      done = back.done;
    }
  } finally {
    await browser.close();
    dropProfile(profile);
  }
});

test('a file that is damaged, foreign or newer is refused whole with its place', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await room(page);
  await newCard(page, 'Wheel');
  const good = await saveToFile(page);
  await page.locator('[data-do=cd-leave]').click();
  const before = await stored(page);
  for (const [text, wanted] of [
    [good.slice(0, 300), 'a.json was not opened. It is damaged at letter 301. Your own cards are as they were.'],
    [good.replace('"text":"Deburr"', '"text":7'), 'Step 3 is damaged.'],
    [good.replace('"version":2', '"version":9'), 'This was written by a newer version of Handturn.'],
    ['{"kind":"else"}', 'It holds no card.'],
    [good.replace('"title":"Wheel"', `"title":"${'x'.repeat(401)}"`), 'The card’s heading: a text is longer than 400 letters.'],
  ]) {
    await openFile(page, text);
    await page.locator('.care', { hasText: wanted }).waitFor();
  }
  assert.deepEqual(await stored(page), before);
  await openFile(page, good);
  await saved(page);
  assert.equal((await stored(page)).length, 2);
  isClean(page);
}));

/** No fault and nothing against the policy; the site's own files are asked for. */
const quiet = ({ seen }) => assert.deepEqual([seen.errors, seen.violations], [[], []]);

test('a card in an address is offered, and stored only when it is kept; the server hears nothing of it', () => withBrowser(async (browser) => {
  const site = await openSite();
  try {
    const page = await browser.open(site.origin);
    await room(page);
    await newCard(page, 'Wheel, 127 teeth');
    await boxes(page).nth(1).check();
    await saved(page);
    const card = await shown(page);
    await page.locator('#cd-link').click();
    const link = await page.locator('#cd-the-link').getAttribute('href');
    assert.match(link, /^#card=[A-Za-z0-9_-]+$/);
    for (const address of [site.origin + link, FILE + link]) {
      await withBrowser(async (other) => {
        const there = await other.open(address);
        await there.locator('#card-offered', { hasText: 'Wheel, 127 teeth' }).waitFor();
        assert.deepEqual(await stored(there), []);
        assert.deepEqual(there.seen.requests.filter((asked) => asked !== address && /card=|Wheel/.test(asked)), [], 'only the address itself holds it');
        await there.locator('[data-do=cd-keep]').click();
        await saved(there);
        assert.deepEqual(await shown(there), card);
        assert.equal((await stored(there)).length, 1);
        quiet(there);
      });
    }
    // The browser asked the server for the page twice, and never with what stands after #.
    assert.ok(site.heard.filter((asked) => asked.startsWith('/ ')).length >= 2);
    const packed = link.slice('#card='.length);
    for (let at = 0; at + 12 <= packed.length; at += 12) assert.deepEqual(site.heard.filter((asked) => asked.includes(packed.slice(at, at + 12))), []);
    assert.deepEqual(site.heard.filter((asked) => asked.includes('card=')), []);
  } finally {
    await site.close();
  }
}));

test('a link that is damaged, cut, foreign or of a newer form is refused in words; one too long is not made', () => withBrowser(async (browser) => {
  const site = await openSite();
  try {
    const page = await browser.open(site.origin);
    await room(page);
    await newCard(page, 'Wheel, 127 teeth');
    await page.locator('#cd-link').click();
    const link = await page.locator('#cd-the-link').getAttribute('href');
    const middle = link.length >> 1;
    const changed = link.slice(0, middle) + (link[middle] === 'A' ? 'B' : 'A') + link.slice(middle + 1);
    const cut = 'The link was not opened. It is damaged, or not all of it arrived. Ask for the card as a file. Your own cards are as they were.';
    await withBrowser(async (other) => {
      for (const [bad, wanted] of [
        [link.slice(0, -9), cut], [link.slice(0, -1), cut], [changed, cut], [`${link}A`, cut], ['#card=', cut], ['#card=hello', cut],
        [link.replace('#card=1', '#card=2'), 'The link was not opened. This was written by a newer version of Handturn.'],
      ]) {
        const there = await other.open(site.origin + bad);
        await there.locator('.care', { hasText: wanted }).waitFor();
        assert.equal(await there.locator('#card-offered').count(), 0, bad);
        assert.deepEqual(await stored(there), []);
        quiet(there);
        await there.close();
      }
    });
    // Words that repeat are packed: only what differs makes a link long.
    const random = seeded(20261127);
    const notes = Array.from({ length: 3900 }, () => String.fromCharCode(33 + random(90))).join('');
    await page.locator('[name=cd-notes]').fill(notes);
    for (let k = 0; k < 8; k++) await addStep(page, notes.slice(k * 390, k * 390 + 390).split('').reverse().join(''));
    const said = await page.locator('.card-link .care').textContent();
    const [, letters] = said.match(/^As a link this card has ([\d,]+) letters; messages pass on at most 8,000\. Save it to a file\.$/);
    assert.ok(Number(letters.replace(',', '')) > 8000, said);
    assert.equal(await page.locator('#cd-the-link').count(), 0);
    await page.locator('[name=cd-notes]').fill('');
    await page.locator('#cd-the-link').waitFor();
    quiet(page);
  } finally {
    await site.close();
  }
}));

test('the link is there on the site only', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await room(page);
  await newCard(page, 'Wheel');
  assert.equal(await page.locator('#cd-link').count(), 0);
}));
