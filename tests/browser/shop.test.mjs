// What is owned, as lists in the Shop: typed, pasted and checked, handed over as a file,
// kept on the device, the same in two tabs; and what is said when it can't be kept.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { FILE, withBrowser } from './rig.mjs';

const shop = async (browser, settings) => {
  const page = await browser.open(FILE, settings);
  await page.locator('[data-do=room][data-value=shop]').click();
  await page.locator('#shop-title').waitFor();
  return page;
};
/** Opens the group that a list stands in and gives the list. */
const list = async (page, group, key) => {
  const fold = page.locator(`#shop-${group}`);
  if (await fold.getAttribute('open') === null) await page.locator(`#shop-${group}-title`).click();
  return page.locator(`#own-${key}`);
};
const says = (page, key, text) =>
  page.locator('.entry', { has: page.locator(`#own-${key}`) }).filter({ hasText: text }).waitFor();
const opened = async (page, name, text) => {
  await page.locator('#shop-open').setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.locator('#shop-said', { hasText: name }).waitFor();
  return page.locator('#shop-said').innerText();
};
const handedOver = async (page) => {
  const [file] = await Promise.all([page.waitForEvent('download'), page.locator('[data-do=shop-save]').click()]);
  return readFileSync(await file.path(), 'utf8');
};
/** The field as the store has it, once it is there. */
const stored = (page, name, value) => page.waitForFunction(async ([name, value]) => {
  const base = await new Promise((resolve) => {
    const request = indexedDB.open('handturn-1');
    request.onsuccess = () => resolve(request.result);
  });
  const text = await new Promise((resolve) => {
    const request = base.transaction('page').objectStore('page').get('page');
    request.onsuccess = () => resolve(request.result);
  });
  base.close();
  return new Map(JSON.parse(text ?? '[]')).get(name) === value;
}, [name, value]);

test('a list is read as it is typed, and what is wrong is told at its place', () => withBrowser(async (browser) => {
  const page = await shop(browser);
  const blocks = await list(page, 'measures', 'blocks');
  await blocks.pressSequentially('1.001-1.009x0.001 5 1/4');
  await says(page, 'blocks', 'Read as 11 blocks: 1.001 to 6.35 mm.');
  await blocks.pressSequentially(' q');
  await says(page, 'blocks', 'Item 4: A leaf or block must be a number. You typed q.');
  await says(page, 'blocks', 'In force: 1.001-1.009x0.001 5 1/4');
  assert.equal(await blocks.getAttribute('aria-invalid'), 'true');
  // Pasted, on several lines.
  await page.evaluate(() => {
    const field = document.getElementById('own-blocks');
    field.focus();
    field.select();
    document.execCommand('insertText', false, '10\n20\n30');
  });
  await says(page, 'blocks', 'Read as 3 blocks: 10 to 30 mm.');
  const drills = await list(page, 'drills', 'drills');
  await drills.fill('');
  await page.locator('[data-do=shop-usual][data-value="drills 0"]').click();
  await drills.pressSequentially(' -#41 -#53');
  await says(page, 'drills', 'Read as 78 drills: 0.343 to 5.791 mm.');
  await page.locator('[data-do=shop-usual][data-value="drills 1"]').click();
  await says(page, 'drills', 'Read as 104 drills');
  await page.locator('[data-do=shop-list-undo]').click();
  assert.equal(await drills.inputValue(), 'number -#41 -#53');
  assert.deepEqual([...page.seen.errors, ...page.seen.violations, ...page.strangers()], []);
}));

test('other rooms read the lists and lead to them', () => withBrowser(async (browser) => {
  const page = await shop(browser);
  await (await list(page, 'drills', 'drills')).fill('number');
  await page.locator('[data-do=room][data-value=thread]').click();
  await page.locator('#th-answer', { hasText: 'No. 4 (5.309 mm)' }).waitFor();
  await page.locator('[data-do=own][data-value=own-drills]').focus();
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.activeElement.id === 'own-drills');
  assert.ok(await page.locator('#own-drills').isVisible());
}));

test('the whole Shop goes as a file, shows what it changes, and comes back by one press', () => withBrowser(async (browser) => {
  const one = await shop(browser);
  await (await list(one, 'measures', 'feelers')).fill('0.05 0.1');
  await (await list(one, 'drills', 'taps')).fill('M6 x 0.75\n2 BA');
  const text = await handedOver(one);
  const { kind, version, lists } = JSON.parse(text);
  assert.deepEqual([kind, version, lists.feelers, lists.taps], ['handturn-shop', 2, '0.05 0.1', 'M6 x 0.75\n2 BA']);
  await (await list(one, 'measures', 'feelers')).fill('0.3');
  await (await list(one, 'measures', 'blocks')).fill('5');
  const said = await opened(one, 'mine.json', text);
  assert.match(said, /Feeler leaves and shims, mm: 0\.3 → 0\.05 0\.1/);
  assert.match(said, /Gauge blocks, mm: 5 → nothing/);
  assert.equal(await one.locator('#own-feelers').inputValue(), '0.05 0.1');
  await one.locator('[data-do=shop-file-undo]').click();
  assert.equal(await one.locator('#own-feelers').inputValue(), '0.3');
  assert.equal(await one.locator('#own-blocks').inputValue(), '5');
  const rows = [
    ['cut.json', text.slice(0, -9), /no file of the Shop/],
    ['newer.json', text.replace('"version":2', '"version":3'), /newer version/],
    ['lacks.json', text.replace('"feelers"', '"fillers"'), /It is damaged\./],
    ['where.json', text.replace('2 BA', '2 BX'), /“Taps”: Item 2: No thread goes by this name\./],
  ];
  for (const [name, bad, wanted] of rows) {
    const refused = await opened(one, name, bad);
    assert.match(refused, new RegExp(`^${name} was not opened`));
    assert.match(refused, wanted);
    assert.equal(await one.locator('#own-feelers').inputValue(), '0.3', name);
  }
}));

test('lists are there when the page opens again', () => withBrowser(async (browser) => {
  const page = await shop(browser);
  await (await list(page, 'cutters', 'knurls')).fill('0.8 1 x');
  await page.reload();
  await page.locator('#shop-title').waitFor();
  const knurls = await list(page, 'cutters', 'knurls');
  assert.equal(await knurls.inputValue(), '0.8 1 x');
  await says(page, 'knurls', 'Item 3:');
}));

test('two tabs do not overwrite each other', () => withBrowser(async (browser) => {
  const [one, two] = [await shop(browser), await shop(browser)];
  await (await list(one, 'measures', 'feelers')).fill('0.07');
  await stored(one, 'own-feelers', '0.07');
  await (await list(two, 'measures', 'blocks')).fill('7');
  await stored(two, 'own-blocks', '7');
  await two.waitForFunction(() => document.getElementById('own-feelers').value === '0.07');
  await one.waitForFunction(() => document.getElementById('own-blocks').value === '7');
  await stored(two, 'own-feelers', '0.07');
  const third = await shop(browser);
  await list(third, 'measures', 'feelers');
  assert.equal(await third.locator('#own-feelers').inputValue(), '0.07');
  assert.equal(await third.locator('#own-blocks').inputValue(), '7');
}));

const FULL = 'The device is full: what you do here is not kept.';
const REFUSED = 'The browser refuses to store: what you do here is not kept.';

/** What is said of the store over the page. */
const notice = (page, text) => page.locator('#notice[role=alert]', { hasText: text }).waitFor();

test('a full store is said at once in every room, moves nothing, and is asked again', () => withBrowser(async (browser) => {
  const page = await shop(browser, { before: () => {
    const { put } = IDBObjectStore.prototype;
    window.full = true;
    IDBObjectStore.prototype.put = function (value, key) {
      if (window.full && key === 'page' && value.includes('own-')) throw new DOMException('no space', 'QuotaExceededError');
      return put.call(this, value, key);
    };
  } });
  const blocks = await list(page, 'measures', 'blocks');
  await blocks.focus();
  const before = await blocks.boundingBox();
  await blocks.fill('5');
  await notice(page, FULL);
  assert.deepEqual(await blocks.boundingBox(), before, 'the field stays under the hand');
  assert.equal(await page.evaluate(() => document.activeElement.id), 'own-blocks');
  assert.equal(JSON.parse(await handedOver(page)).lists.blocks, '5', 'the file is still offered');
  for (const room of ['divide', 'thread', 'gear', 'bench', 'card']) {
    await page.locator(`[data-do=room][data-value=${room}]`).click();
    await notice(page, FULL);
  }
  await page.locator('[data-do=store-again]').click();
  await notice(page, 'Tried again: it is still so.');
  // Put away, it is said in the Shop, and no more elsewhere.
  await page.locator('[data-do=store-away]').click();
  await page.locator('#notice').waitFor({ state: 'detached' });
  await page.locator('[data-do=room][data-value=shop]').click();
  await page.locator('main .care', { hasText: FULL }).waitFor();
  await page.evaluate(() => { window.full = false; });
  await page.locator('main [data-do=store-again]').click();
  await page.locator('main .care', { hasText: FULL }).waitFor({ state: 'detached' });
  await stored(page, 'own-blocks', '5');
  assert.deepEqual([...page.seen.errors, ...page.seen.violations], []);
}));

test('a refused store is said at once; with another try all that was typed is kept', () => withBrowser(async (browser) => {
  const before = await shop(browser);
  await (await list(before, 'measures', 'feelers')).fill('0.07');
  await stored(before, 'own-feelers', '0.07');
  await before.close();
  const page = await browser.open(FILE, { before: () => {
    const { open } = IDBFactory.prototype;
    window.refuses = true;
    IDBFactory.prototype.open = function (...given) {
      if (window.refuses) throw new DOMException('refused', 'SecurityError');
      return open.apply(this, given);
    };
  } });
  await notice(page, REFUSED);
  await page.locator('[data-do=store-again]').click();
  await notice(page, 'Tried again: it is still so.');
  await page.locator('#parts').fill('91');
  await page.locator('[data-do=room][data-value=shop]').click();
  await (await list(page, 'measures', 'blocks')).fill('7');
  await page.evaluate(() => { window.refuses = false; });
  await page.locator('#notice [data-do=store-again]').click();
  await page.locator('#notice').waitFor({ state: 'detached' });
  // What the store held is here, and what was typed meanwhile is in it.
  await page.waitForFunction(() => document.getElementById('own-feelers').value === '0.07');
  assert.equal(await page.locator('#own-blocks').inputValue(), '7');
  await stored(page, 'own-blocks', '7');
  const later = await browser.open(FILE);
  await later.locator('[data-do=room][data-value=divide]').click();
  await later.waitForFunction(() => document.getElementById('parts')?.value === '91');
  assert.deepEqual([...page.seen.errors, ...page.seen.violations], []);
}));

/** In the page: the store fails to open so many times, as one does right after a kill. */
const failing = (times) => `window.fails = ${times};(${function fails() {
  const { open } = IDBFactory.prototype;
  IDBFactory.prototype.open = function (...given) {
    if (window.fails-- <= 0) return open.apply(this, given);
    const request = {};
    setTimeout(() => {
      request.error = new DOMException('Internal error opening backing store', 'UnknownError');
      request.onerror();
    });
    return request;
  };
}})()`;

test('a store that does not open for a moment is tried again before anything is said', () => withBrowser(async (browser) => {
  const first = await shop(browser);
  await (await list(first, 'measures', 'feelers')).fill('0.07');
  await stored(first, 'own-feelers', '0.07');
  await first.close();
  const watched = (times) => `${failing(times)};window.said = 0;new MutationObserver(() => {
    if (document.getElementById('notice')) window.said++;
  }).observe(document, { childList: true, subtree: true })`;
  const soon = await shop(browser, { before: watched(2) });
  await list(soon, 'measures', 'feelers');
  assert.equal(await soon.locator('#own-feelers').inputValue(), '0.07');
  assert.deepEqual(await soon.evaluate(() => [window.fails, window.said]), [-1, 0]);
  // The page opens without it meanwhile; what is typed then is kept, what is stored comes.
  const late = await browser.open(FILE, { before: watched(4) });
  await late.locator('#parts').fill('93');
  await late.locator('[data-do=room][data-value=shop]').click();
  await late.waitForFunction(() => document.getElementById('own-feelers')?.value === '0.07');
  assert.equal(await late.evaluate(() => window.said), 0);
  await stored(late, 'parts', '93');
  // One that never opens is said in the end.
  const never = await browser.open(FILE, { before: failing(1e6) });
  await notice(never, REFUSED);
  assert.equal(await never.evaluate(() => window.fails), 1e6 - 5);
}));

test('what was kept and can not be read is set aside, not overwritten', () => withBrowser(async (browser) => {
  const page = await shop(browser);
  await (await list(page, 'measures', 'blocks')).fill('5');
  await stored(page, 'own-blocks', '5');
  const inStore = (what) => page.evaluate(async (what) => {
    const base = await new Promise((resolve) => {
      const request = indexedDB.open('handturn-1');
      request.onsuccess = () => resolve(request.result);
    });
    const work = base.transaction('page', 'readwrite');
    const store = work.objectStore('page');
    const request = what === null ? store.getAll() : store.put(what, 'page');
    await new Promise((resolve) => { work.oncomplete = resolve; });
    base.close();
    return request.result;
  }, what);
  const damaged = '[["own-blocks","5"],["own-feel';
  await inStore(damaged);
  await page.reload();
  await notice(page, 'could not be read. It was set aside');
  const handed = async (where) => {
    const [file] = await Promise.all([page.waitForEvent('download'), page.locator(`${where} [data-do=store-unread]`).click()]);
    assert.equal(file.suggestedFilename(), 'handturn-unread.json');
    return JSON.parse(readFileSync(await file.path(), 'utf8')).map(([, text]) => text);
  };
  assert.deepEqual(await handed('#notice'), [damaged]);
  await page.locator('[data-do=store-away]').click();
  await page.locator('#notice').waitFor({ state: 'detached' });
  await page.locator('[data-do=room][data-value=shop]').click();
  await (await list(page, 'measures', 'feelers')).fill('0.1');
  await stored(page, 'own-feelers', '0.1');
  assert.ok((await inStore(null)).includes(damaged));
  // It can still be got at when the page opens again.
  await page.reload();
  await page.locator('#shop-title').waitFor();
  assert.equal(await page.locator('#notice').count(), 0);
  assert.deepEqual(await handed('main'), [damaged]);
}));
