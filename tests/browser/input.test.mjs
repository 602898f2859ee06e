// Hostile and extreme input through the real page: a clear error or a right answer,
// never a fault, never a word of markup that was typed.
import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { FILE, openSite, withBrowser } from './rig.mjs';
import { divided, stock } from './screens.mjs';

const press = (page, does, value) => page.locator(`[data-do=${does}][data-value="${value}"]`).click();

/** Fills fields by their ids, in order; a long text at one stroke, as a paste does. */
async function fill(page, fields) {
  for (const [id, text] of Object.entries(fields)) {
    if (text.length < 2_000) await page.locator(`#${id}`).fill(text);
    else {
      await page.locator(`#${id}`).evaluate((field, text) => {
        field.value = text;
        field.dispatchEvent(new Event('input', { bubbles: true }));
      }, text);
    }
  }
}

/** What the page says: the answer's heading and every sentence under a field. */
const said = (page) => page.evaluate(() => ({
  answer: document.querySelector('#answer')?.textContent ?? '',
  wrong: [...document.querySelectorAll('.err')].map((error) => error.textContent.trim()).join(' | '),
  fault: !document.querySelector('#fault').hidden,
}));

/** `wanted` is a pattern of the error; or of the answer, when there must be no error. */
async function row(page, fields, wanted) {
  const what = JSON.stringify(fields).slice(0, 120);
  await fill(page, fields);
  const { answer, wrong, fault } = await said(page);
  assert.equal(fault, false, what);
  assert.deepEqual(page.seen.errors, [], what);
  if (wanted.wrong) {
    assert.match(wrong, wanted.wrong, what);
  } else {
    assert.equal(wrong, '', what);
    assert.match(answer, wanted.answer, what);
  }
}

/** The question is still answered rightly after all that. */
async function stillRight(page) {
  await press(page, 'kind', 'parts');
  await row(page, { parts: '64' }, { answer: /64/ });
  await page.locator('.row', { hasText: '10 holes on the 16' }).first().waitFor();
  assert.deepEqual([...page.seen.violations, ...page.strangers()], []);
}

const digits = '1234567890'.repeat(4);

test('parts: a whole number from 2 to 10,000, or a sentence', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await divided(page);
  const range = { wrong: /^Parts must be a whole number from 2 to 10,000\./ };
  for (const parts of ['0', '1', '-1', '−64', '10001', '1000000000000', '1e12', '', ' ', 'abc', '127.5', '1/2', '0x10', '∞', 'NaN', '٣', '64 64']) {
    await row(page, { parts }, range);
  }
  // More digits than fit are beyond the range, whether they can be held or not.
  for (const parts of [digits, `0.${digits}`, '9'.repeat(20_000)]) {
    await row(page, { parts }, { wrong: /from 2 to 10,000|too long to work out/ });
  }
  await row(page, { parts: '1,000' }, { wrong: /comma before three figures/ });
  for (const parts of ['2', '10000', ' 64 ', '64.0', '+64', '64.']) await row(page, { parts }, { answer: /\d/ });
  await row(page, { parts: '<img src=x onerror=alert(1)>' }, { wrong: /You typed <img/ });
  assert.equal(await page.locator('#page img').count(), 0);
  await page.locator('#parts').fill('12');
  await page.locator('#order summary').click();
  for (const every of ['0', '12', '-1', '1.5', 'x', '99999999999']) await row(page, { every }, { wrong: /./ });
  for (const every of ['5', '1']) await row(page, { every }, { answer: /12/ });
  await stillRight(page);
}));

test('an angle: within one turn, or a sentence', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await divided(page);
  await press(page, 'kind', 'angle');
  const range = { wrong: /^Angle must be between 0 and 360 degrees\./ };
  for (const angle of ['0', '361', '-1', '400°', '2 turns', '1000000000000']) await row(page, { angle }, range);
  for (const angle of ["7°60'", '7 60', '7°0′60″', '359°59′60.5″']) await row(page, { angle }, { wrong: /Minutes and seconds must be below 60/ });
  for (const angle of ['', 'abc', '°', "'", '7°°', '1//2', '3/0', '--3']) await row(page, { angle }, { wrong: /Angle (must be|stands|can’t be)|Angle/ });
  for (const angle of [digits, `0.${digits}`, `1/${digits}`]) await row(page, { angle }, { wrong: /too long|between 0 and 360/ });
  await row(page, { angle: '1,000' }, { wrong: /comma before three figures/ });
  for (const angle of ['360', '1 turn', '17,5', '17°30′', '17 30', '0.000001', '1/9973 turn', '359°59′59.999″']) await row(page, { angle }, { answer: /\S/ });
  for (const times of ['0', '-1', '10001', '1.5', 'x', '']) await row(page, { angle: '17°30′', times }, { wrong: /./ });
  await row(page, { times: '10000' }, { answer: /\S/ });
  await stillRight(page);
}));

test('a list of angles: 2 to 400, or a sentence', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await divided(page);
  await press(page, 'kind', 'list');
  for (const list of ['', '0', ';;;']) await row(page, { list }, { wrong: /two angles or more|stands empty/ });
  await row(page, { list: Array.from({ length: 10_000 }, (_, k) => k % 360).join('\n') }, { wrong: /at most 400/ });
  await row(page, { list: '0 400' }, { wrong: /between 0 and 360/ });
  await row(page, { list: "0 7°60'" }, { wrong: /below 60/ });
  await row(page, { list: '0 x 20' }, { wrong: /x/ });
  await row(page, { list: `0 ${digits}` }, { wrong: /too long|between 0 and 360/ });
  await row(page, { list: Array.from({ length: 400 }, (_, k) => `${k * 0.9}`.slice(0, 6)).join(' ') }, { answer: /\S/ });
  await row(page, { list: '0 10 10 0 360' }, { answer: /\S/ });
  await stillRight(page);
}));

test('a dial: whole marks, whole patterns, or a sentence', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await divided(page);
  await press(page, 'kind', 'dial');
  for (const marks of ['0', '1', '-3', '1e12', '1000000000000', 'x', '', '365.25', digits]) await row(page, { marks }, { wrong: /./ });
  await row(page, { marks: '365' }, { answer: /365/ });
  for (const id of ['long', 'middle', 'number', 'climb']) {
    const good = await page.locator(`#${id}`).inputValue();
    for (const text of ['-1', 'x', '1.5', '1000000000000', digits]) await row(page, { [id]: text }, { wrong: /./ });
    await row(page, { [id]: good }, { answer: /365/ });
  }
  await page.locator('#lines summary').click();
  for (const text of ['0', '-1', 'x', digits]) await row(page, { 'long-mm': text }, { wrong: /./ });
  await row(page, { 'long-mm': '1/4 in' }, { answer: /365/ });
  await stillRight(page);
}));

test('Shop: every bad value is told, and the last good head answers on', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await stock(page);
  await page.locator('#head-handwheel').check();
  await page.locator('#head-fine-dial').check();
  const bad = {
    'head-name': ['', '   '],
    'head-ratio': ['0', '-40', '', 'x', '40 : 0', '1,000', '1000000000000', digits, `0.${digits}`, '1/200000'],
    'head-plates': ['15 15', '15 / / 16', '1', '0', '-5', '15.5', 'x', '15(', '15(x)', '15(0/0)', '15,16', '1000000000000', '2 '.repeat(40), '15 / '.repeat(13), digits],
    'head-direct': ['1', '24 24', 'x', '-24', '24.5', '1000000000000'],
    'head-gears': ['7', '251', '24x0', '24x10', 'x', '24x', '24.5', '24 '.repeat(10), '1000000000000'],
    'head-stud-distance': ['-1', '1001', 'x', '1.5'],
    'head-stud-margin': ['', '-1', '1001', 'x'],
    'head-most-idlers': ['', '-1', '10', 'x'],
    'head-reach-least': ['-1', 'x', digits],
    'head-reach-greatest': ['-1', 'x', '1,000'],
    'head-pin': ['0', '-1', 'x', '10001'],
    'head-arms-least': ['', '351', "7°60'", 'x', '-1', digits],
    'head-arms-greatest': ['', '361', '9', '2 turns'],
    'head-slack': ['', '-1', '6', 'x'],
    'head-handwheel-marks': ['', '0', '1', '7′', 'x', '10001', "0'"],
    'head-handwheel-vernier': ['', '0', '101', 'x'],
    'head-fine-shift': ['', '0', '361', 'x'],
    'head-fine-marks': ['', '1', '10001', 'x'],
    'head-fine-travel': ['', '0', '400', 'x'],
    'head-fine-slack': ['', '-1', 'x'],
    'head-diameter': ['', '0', '-1', 'x', '1,000', '10001', digits],
  };
  for (const [id, texts] of Object.entries(bad)) {
    const good = await page.locator(`#${id}`).inputValue();
    for (const text of texts) {
      await fill(page, { [id]: text });
      const { wrong, fault } = await said(page);
      assert.equal(fault, false, `${id} ${text}`);
      assert.notEqual(wrong, '', `${id} takes ${text.slice(0, 50)}`);
      assert.match(await page.locator(`#at-${id}`).textContent(), /last good entry stays in force/, `${id} ${text.slice(0, 50)}`);
    }
    await fill(page, { [id]: good });
    assert.equal((await said(page)).wrong, '', id);
  }
  // Bad all at once: the last good head still sets 64 on the 16 circle.
  for (const [id, texts] of Object.entries(bad)) await fill(page, { [id]: texts.at(-1) });
  assert.equal(await page.locator('.err').count(), Object.keys(bad).length);
  await press(page, 'room', 'divide');
  await stillRight(page);
}));

test('Shop: extreme but right values are taken', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await stock(page);
  const plates = Array.from({ length: 12 }, (_, p) => Array.from({ length: 24 }, (_, c) => 2 + p * 24 + c).join(' ')).join(' / ');
  const good = {
    'head-ratio': ['1/1000', '1000', '99999/100000', '40,5', '40.5 : 1'],
    'head-plates': ['2', '1000', '49(51.5) 47(2 in)', plates, ''],
    'head-direct': ['', '2 3 4 5 6 7 8 9 10 11 12 1000'],
    'head-gears': ['', Array.from({ length: 24 }, (_, k) => `${20 + k}x9`).join(' '), '24 24 28'],
    'head-slack': ['0', '5', '1/3'],
    'head-diameter': ['0.001', '10000', '3 in', '1/7'],
    'head-arms-greatest': ['360', '1 turn', '349°59′59″'],
  };
  for (const [id, texts] of Object.entries(good)) {
    for (const text of texts) {
      await fill(page, { [id]: text });
      const { wrong, fault } = await said(page);
      assert.deepEqual([wrong, fault], ['', false], `${id} ${text.slice(0, 50)}`);
    }
  }
  // With all of these in force, Divide still answers.
  await press(page, 'room', 'divide');
  assert.deepEqual(page.seen.errors, []);
  assert.equal((await said(page)).fault, false);
}));

test('heads: added, copied, chosen, deleted and brought back; kept when the page is opened again', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE);
  await stock(page);
  await fill(page, { 'head-name': 'Small head' });
  await page.locator('[data-do=shop-copy]').click();
  await fill(page, { 'head-name': 'Large head', 'head-ratio': '60' });
  const names = () => page.locator('.head-chip').allTextContents();
  assert.deepEqual((await names()).map((name) => name.slice(0, 10)), ['Small head', 'Large head']);
  // Fields of several lines follow the head too, from something to nothing and back.
  await fill(page, { 'head-gears': '' });
  await page.locator('.head-chip').first().click();
  assert.match(await page.locator('#head-gears').inputValue(), /^24x2 28/);
  await page.locator('.head-chip').last().click();
  assert.equal(await page.locator('#head-gears').inputValue(), '');
  await page.locator('[data-do=shop-delete]').click();
  assert.deepEqual((await names()).length, 1);
  await page.locator('button[data-do=shop-undo]').click();
  assert.equal(await page.locator('#head-ratio').inputValue(), '60');
  await page.locator('.head-chip').first().click();
  assert.equal(await page.locator('#head-ratio').inputValue(), '40 : 1');
  assert.deepEqual(page.seen.errors, []);
  // What was typed is there when the page is opened again, the bad with the good.
  await fill(page, { 'head-ratio': '6x' });
  await page.reload();
  await page.locator('#head-ratio[value="6x"]').waitFor();
  assert.deepEqual((await names()).map((name) => name.slice(0, 10)), ['Small head', 'Large head']);
  assert.equal(await page.locator('#head-ratio').inputValue(), '6x');
  assert.match((await said(page)).wrong, /^Worm ratio must be a number/);
  assert.match(await page.locator('#at-head-ratio').textContent(), /stays in force: 40 : 1/);
}));

test('the package answers in a page as it does in Node', () => withBrowser(async (browser) => {
  const folder = mkdtempSync(join(tmpdir(), 'handturn-page-'));
  cpSync(fileURLToPath(new URL('../../web/dist/npm/', import.meta.url)), folder, { recursive: true });
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>package</title><script type="module" src="use.js"></script>');
  writeFileSync(join(folder, 'use.js'), `
    import { init, ways, divide, HandturnError } from './handturn.js';
    await init(fetch('./handturn.wasm'));
    const [best] = ways({ parts: 64, head: { plates: '15 16' } });
    let refused = '';
    try { divide({ parts: 127.5 }); } catch (error) { refused = error instanceof HandturnError ? error.message : 'something else'; }
    document.title = JSON.stringify([best.way.Plain.circle, refused]);
  `);
  const host = await openSite(folder);
  const page = await browser.open(host.origin);
  await page.waitForFunction(() => document.title.startsWith('['));
  assert.deepEqual(JSON.parse(await page.title()), [{ plate: 0, holes: 16 }, 'parts must be a whole number within 2^53, not 127.5.']);
  await host.close();
  rmSync(folder, { recursive: true });
}));
