// Heads handed over as a file and taken from one, in the Shop; what is no file of
// heads, or a damaged one, is refused whole and says where.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { FILE, newProfile, dropProfile, openBrowser, withBrowser } from './rig.mjs';

const shop = async (page) => {
  await page.locator('[data-do=room][data-value=shop]').click();
  await page.locator('#shop-title').waitFor();
};
const opened = async (page, name, text) => {
  await page.locator('#shop-open').setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.locator('#shop-said', { hasText: name }).waitFor();
  return page.locator('#shop-said p').first().textContent();
};
const names = (page) => page.locator('.head-chip').evaluateAll((chips) => chips.map((chip) => chip.firstChild.textContent));

/** Two heads, as a file. */
async function handedOver(browser) {
  const page = await browser.open(FILE);
  await shop(page);
  await page.locator('#head-name').fill('Old <b>"one"</b>');
  await page.locator('#head-plates').fill('15 16 / 39 43');
  await page.locator('[data-do=shop-copy]').click();
  await page.locator('#head-name').fill('For the clock');
  await page.locator('#head-ratio').fill('60 : 1');
  const [file] = await Promise.all([page.waitForEvent('download'), page.locator('[data-do=shop-save]').click()]);
  assert.equal(file.suggestedFilename(), 'handturn-shop.json');
  const text = readFileSync(await file.path(), 'utf8');
  await page.close();
  return text;
}

test('heads go as a file to another device and stay there', async () => {
  const text = await withBrowser(handedOver);
  const { kind, version, heads } = JSON.parse(text);
  assert.deepEqual([kind, version, heads.length], ['handturn-shop', 2, 2]);
  assert.deepEqual([heads[0].plates, heads[1].ratio], ['15 16 / 39 43', '60 : 1']);
  const profile = newProfile();
  try {
    let browser = await openBrowser(profile);
    try {
      const page = await browser.open(FILE);
      await shop(page);
      assert.equal(await opened(page, 'mine.json', text), 'mine.json: 2 heads added.');
      assert.deepEqual(await names(page), ['Old <b>"one"</b>', 'For the clock']);
      assert.equal(await page.locator('#head-ratio').inputValue(), '60 : 1');
      assert.equal(await opened(page, 'again.json', text), 'again.json: nothing in it is new here.');
      assert.deepEqual([...page.seen.errors, ...page.seen.violations, ...page.strangers()], []);
    } finally {
      await browser.close();
    }
    browser = await openBrowser(profile);
    try {
      const page = await browser.open(FILE);
      await shop(page);
      assert.deepEqual(await names(page), ['Old <b>"one"</b>', 'For the clock']);
      assert.equal(await page.locator('#shop-said').textContent(), '', 'what was said of a file is not kept');
    } finally {
      await browser.close();
    }
  } finally {
    dropProfile(profile);
  }
});

test('a foreign or damaged file changes nothing, and says where', () => withBrowser(async (browser) => {
  const good = await handedOver(browser);
  const page = await browser.open(FILE);
  await shop(page);
  const before = await names(page);
  const run = '{"frozen":{"version":1,"core":"0.1.0"},"events":[]}';
  const rows = [
    ['empty.json', '', /no file of the Shop/],
    ['binary.json', '\u0000\u001c\u001d\u001e\u001f\uffff', /no file of the Shop/],
    ['deep.json', '['.repeat(200_000), /no file of the Shop/],
    ['run.json', run, /It holds a Run: open it in the list of Runs\./],
    ['cut.json', good.slice(0, -40), /no file of the Shop/],
    ['newer.json', good.replace('"version":2', '"version":3'), /newer version/],
    ['lacks.json', good.replace('"slack"', '"__proto__"'), /It is damaged\./],
    ['where.json', good.replace('60 : 1', '0 : 1'), /Head 2, “Worm ratio”: Worm ratio must be above 0/],
    ['markup.json', good.replace('39 43', '<img src=x onerror=alert(1)>'), /Head 1, “Holes in each circle/],
  ];
  for (const [name, text, wanted] of rows) {
    const said = await opened(page, name, text);
    assert.match(said, new RegExp(`^${name} was not opened`));
    assert.match(said, wanted);
    assert.deepEqual(await names(page), before, name);
  }
  assert.equal(await page.locator('#fault').isHidden(), true);
  assert.deepEqual([...page.seen.errors, ...page.seen.violations, ...page.strangers()], []);
  // Offered in the list of Runs, it is named for what it is; and in the Shop it still opens.
  await page.locator('[data-do=run-list]').click();
  await page.locator('#runs input[type=file]').setInputFiles({ name: 'heads.json', mimeType: 'application/json', buffer: Buffer.from(good) });
  await page.locator('#runs', { hasText: 'It holds heads: open it in the Shop.' }).waitFor();
  await page.locator('[data-do=run-list-close]').click();
  assert.equal(await opened(page, 'good.json', good.replace('60 : 1', '90 : 1')), 'good.json: 1 head added.');
}));
