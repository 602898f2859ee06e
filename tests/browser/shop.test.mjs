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

test('a full or refused store is said at once', () => withBrowser(async (browser) => {
  const full = await shop(browser, { before: () => {
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (value, key) {
      if (key === 'page' && value.includes('own-')) throw new DOMException('no space', 'QuotaExceededError');
      return put.call(this, value, key);
    };
  } });
  await (await list(full, 'measures', 'blocks')).fill('5');
  await full.locator('main [role=alert]', { hasText: 'The device is full: what you type is not kept.' }).waitFor();
  assert.equal(JSON.parse(await handedOver(full)).lists.blocks, '5', 'the file is still offered');
  const refused = await shop(browser, { before: () => {
    indexedDB.open = () => { throw new DOMException('refused', 'SecurityError'); };
  } });
  await refused.locator('main [role=alert]', { hasText: 'The browser refuses to store' }).waitFor();
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
  await page.locator('#notice', { hasText: 'could not be read. It was set aside' }).waitFor();
  await page.locator('[data-do=room][data-value=shop]').click();
  await (await list(page, 'measures', 'feelers')).fill('0.1');
  await stored(page, 'own-feelers', '0.1');
  assert.ok((await inStore(null)).includes(damaged));
}));
