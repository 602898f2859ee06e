// The card as a person uses it: answers of every room put on it, moved, ticked and taken
// back; a measured value that changes what follows; paper; the worked card of the clock.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { FILE, withBrowser } from './rig.mjs';
import { divided, room } from './screens.mjs';

const DESK = { width: 1280, height: 800 };

const saved = (page) => page.locator('#card-state[data-state=saved]').waitFor();

/** Puts the answer of the room on screen on the card; the step it became is told. */
async function put(page, number) {
  await page.locator('#card-put').click();
  await page.locator('#putting [role=status]', { hasText: `step ${number}.` }).waitFor();
}

/** What stands on the card, step by step. */
const steps = (page) => page.locator('.card-steps > li .tk b').allTextContents();

/** An answer of every room on a new card. */
async function collected(browser) {
  const page = await browser.open(FILE, DESK);
  await divided(page);
  await put(page, 1);
  for (const [k, name] of ['thread', 'gear', 'bench'].entries()) {
    await room(page, name);
    await put(page, k + 2);
  }
  await room(page, 'card');
  await saved(page);
  return page;
}

const WANTED = ['Divide 127: Differential', 'M6 × 0.75: Size it', '64 teeth, module 1 (25.4 DP), 20°: Blank'];

test('answers of every room are put, moved, ticked, taken back, and still there after a reload', () => withBrowser(async (browser) => {
  const page = await collected(browser);
  assert.deepEqual((await steps(page)).slice(0, 3), WANTED);
  assert.equal((await steps(page)).length, 4);
  await page.locator('#cd-title').fill('Wheel, 127 teeth');
  await page.locator('#cd-job').fill('Astronomical clock');
  assert.equal(await page.locator('.job').getAttribute('aria-label'), 'Open job card: Astronomical clock, Wheel, 127 teeth');
  await page.locator('#cd-down-1').click();
  assert.deepEqual((await steps(page)).slice(0, 2), [WANTED[1], WANTED[0]]);
  assert.equal(await page.evaluate(() => document.activeElement.id), 'cd-down-1', 'the focus goes along');
  await page.locator('#cd-undo').click();
  assert.deepEqual((await steps(page)).slice(0, 2), WANTED.slice(0, 2));
  await page.locator('#cd-redo').click();
  assert.deepEqual((await steps(page)).slice(0, 2), [WANTED[1], WANTED[0]]);
  await page.locator('#cd-tick-2').check();
  await page.locator('#cd-step-2 .tk', { hasText: /Done \d+ \w+ \d{4}, \d\d:\d\d/ }).waitFor();
  // The time is that of the clock here.
  const [, time] = (await page.locator('#cd-step-2 .tk .in').textContent()).match(/(\d\d:\d\d)$/);
  const clock = await page.evaluate(() => new Date().toTimeString().slice(0, 5));
  const minutes = (text) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));
  assert.ok([0, 1, 1439].includes((minutes(clock) - minutes(time) + 1440) % 1440), `${time} at ${clock}`);
  await page.locator('#cd-more-1').click();
  await page.locator('#cd-next-1').click();
  await page.locator('#cd-cell-1-9').click();
  assert.match(await page.locator('#cd-count-1').textContent(), /^127 gaps, 2 cut, last at \d+ \w+ \d+, \d\d:\d\d$/);
  await page.locator('#cd-cell-1-9').press('ArrowRight');
  assert.equal(await page.evaluate(() => document.activeElement.id), 'cd-cell-1-10');
  await page.keyboard.press('Space');
  assert.match(await page.locator('#cd-count-1').textContent(), /^127 gaps, 3 cut, last at /);
  await page.locator('body').click({ position: { x: 5, y: 5 } });
  await page.keyboard.press('Control+z');
  assert.match(await page.locator('#cd-count-1').textContent(), /^127 gaps, 2 cut, last at /);
  await page.locator('#cd-new').fill('Deburr, count the teeth');
  await page.locator('#cd-new').press('Enter');
  assert.equal((await steps(page)).at(-1), 'Deburr, count the teeth');
  assert.equal(await page.locator('.last-step').textContent(), 'Wash off layout fluid or flux, oil bare steel.');
  await saved(page);
  const whole = await page.locator('.card-sheet').innerText();
  await page.reload();
  await page.locator('.card-sheet').waitFor();
  assert.equal(await page.locator('.card-sheet').innerText(), whole);
  assert.equal(await page.locator('#cd-title').inputValue(), 'Wheel, 127 teeth');
  // Its wheels stand in Divide.
  await room(page, 'divide');
  assert.deepEqual(await page.locator('[aria-labelledby=job] .chip').allTextContents(), ['127']);
  assert.deepEqual([...page.seen.errors, ...page.seen.violations, ...page.strangers()], []);
}));

test('a measured value changes what follows, and both answers are seen', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, DESK);
  await room(page, 'card');
  await page.locator('#cd-begin').click();
  for (const [id, name, drawing] of [[1, 'width', '40'], [2, 'slot', '= width - 0.1']]) {
    await page.locator('#cd-value-add').click();
    assert.equal(await page.evaluate(() => document.activeElement.id), `cd-name-${id}`);
    await page.locator(`#cd-name-${id}`).fill(name);
    await page.locator(`#cd-drawing-${id}`).fill(drawing);
  }
  const force = (id) => page.locator(`#cd-value-${id} .force`).innerText();
  assert.match(await force(2), /39\.900 mm/);
  await room(page, 'bench');
  await page.locator('#be-row-tilt').click();
  await page.locator('#be-tilt-span').fill('=width');
  await put(page, 1);
  await room(page, 'card');
  assert.equal(await page.locator('.differs').count(), 0);
  await page.locator('#cd-measured-1').fill('50.8');
  assert.match(await force(2), /50\.700 mm/);
  const differs = await page.locator('.differs').innerText();
  assert.match(differs, /0° 45′ under 40 mm: 0\.524 mm/);
  assert.match(differs, /0° 45′ under 50\.8 mm: 0\.665 mm/);
  await page.locator('[data-do=cd-take]').click();
  assert.equal(await page.locator('.differs').count(), 0);
  assert.match(await page.locator('#cd-step-3 .lines').innerText(), /0\.665 mm/);
  await page.locator('#cd-drawing-1').fill('= slot');
  await page.locator('#cd-measured-1').fill('');
  const told = await page.locator('#cd-drawing-1-error').textContent();
  assert.match(told, /round in a circle: width waits for slot waits for width/);
  assert.equal(await page.locator('#cd-drawing-1').getAttribute('aria-invalid'), 'true');
  assert.deepEqual(page.seen.errors, []);
}));

/** How many sheets a PDF has. */
const sheets = (pdf) => pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g).length;

async function printed(page, [paperWidth, paperHeight]) {
  const session = await page.context().newCDPSession(page);
  const { data } = await session.send('Page.printToPDF', { paperWidth, paperHeight, preferCSSPageSize: false, printBackground: true });
  return Buffer.from(data, 'base64');
}

const A4 = [8.27, 11.69], LETTER = [8.5, 11];

test('it prints black on white on A4 and Letter, drawings and squares on it, whatever the theme', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, DESK);
  await divided(page);
  await put(page, 1);
  await room(page, 'card');
  await page.locator('#cd-title').fill('Wheel, 127 teeth');
  await page.locator('#cd-more-1').click();
  await page.locator('#cd-next-1').click();
  for (const colorScheme of ['light', 'dark']) {
    // A wheel of 127 gaps and its head fit one sheet; with the clock's others there are more.
    await page.emulateMedia({ colorScheme });
    assert.equal(sheets(await printed(page, A4)), 1, `${colorScheme}, A4`);
    assert.ok(sheets(await printed(page, LETTER)) <= 2, `${colorScheme}, Letter`);
    await page.emulateMedia({ colorScheme, media: 'print' });
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    const seen = await page.evaluate(() => {
      const paper = document.querySelector('.paper');
      const all = [document.documentElement, document.body, ...paper.querySelectorAll('*')];
      const rgb = (colour) => colour.match(/[\d.]+/g).map(Number);
      const dark = all.filter((element) => {
        const [r, g, b, a = 1] = rgb(getComputedStyle(element).backgroundColor);
        return a > 0 && Math.min(r, g, b) < 230;
      });
      const pale = [...paper.querySelectorAll('p, li, td, h2, text')].filter((element) => {
        const { color, fill } = getComputedStyle(element);
        return Math.max(...rgb(element.nodeName === 'text' ? fill : color).slice(0, 3)) > 60;
      });
      const size = (element) => element.getBoundingClientRect();
      return {
        dark: dark.map((element) => element.className || element.nodeName),
        pale: pale.map((element) => element.textContent),
        page: getComputedStyle(document.querySelector('.app')).display,
        drawings: [...paper.querySelectorAll('figure svg')].map((svg) => size(svg).width > 50 && size(svg).height > 50),
        squares: paper.querySelectorAll('.ticks li').length,
        crossed: [...paper.querySelectorAll('.ticks .cut')].map((cell) => [cell.textContent, getComputedStyle(cell).backgroundImage !== 'none']),
        split: [...paper.querySelectorAll('section')].map((section) => getComputedStyle(section).breakInside),
        heading: getComputedStyle(paper.querySelector('.paper-head')).display,
        margin: [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules]).filter((rule) => rule instanceof CSSPageRule && rule.selectorText === 'card').map((rule) => rule.style.margin),
        lines: [...paper.querySelectorAll('.write')].map((line) => Math.round(size(line).height * 25.4 / 96)),
        text: paper.textContent,
      };
    });
    assert.deepEqual([seen.dark, seen.pale], [[], []], colorScheme);
    assert.equal(seen.page, 'none');
    assert.deepEqual(seen.drawings, [true, true], 'plate and train');
    assert.deepEqual([seen.squares, seen.crossed], [127, [['1', true]]]);
    assert.ok(seen.split.length >= 4 && seen.split.every((rule) => rule === 'avoid'), String(seen.split));
    assert.equal(seen.heading, 'table-header-group', 'it stands on every sheet');
    assert.deepEqual(seen.margin, ['11mm']);
    assert.deepEqual(seen.lines, [7, 7, 7, 7]);
    for (const words of ['Wheel, 127 teeth', '13 holes on the 39', 'the plate must go back 21°', 'Wash off layout fluid or flux, oil bare steel.']) {
      assert.ok(seen.text.includes(words), words);
    }
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    await page.emulateMedia({ colorScheme, media: null });
    assert.equal(await page.locator('.paper').count(), 0);
  }
  // The button prints too.
  await page.evaluate(() => { window.print = () => { window.prints = true; }; });
  await page.locator('[data-do=cd-print]').click();
  assert.equal(await page.evaluate(() => window.prints), true);
  assert.deepEqual(page.seen.errors, []);
}));

test('the worked card is offered while there is none, and leaves the Shop as it is', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, DESK);
  await room(page, 'card');
  await page.locator('#cd-demo').click();
  await saved(page);
  const text = await page.locator('.card-sheet').innerText();
  for (const words of ['13 holes on the 39', '6 holes on the 33', '10 holes on the 16', '1 turn + 1 hole on the 19', '15 holes on the 18', '3 holes on the 27']) {
    assert.ok(text.includes(words), words);
  }
  assert.equal(await page.locator('.differs').count(), 0);
  const [a4, letter] = [sheets(await printed(page, A4)), sheets(await printed(page, LETTER))];
  assert.ok(a4 > 1 && a4 < 9 && letter > 1 && letter < 9, `${a4} and ${letter} sheets`);
  await room(page, 'divide');
  await page.locator('#first').waitFor();
  assert.deepEqual(await page.locator('[aria-labelledby=job] .chip').allTextContents(), ['127', '223', '64', '38', '48', '365']);
  await room(page, 'card');
  await page.locator('[data-do=cd-leave]').click();
  assert.equal(await page.locator('#cd-demo').count(), 0);
  await page.locator('[data-do=cd-delete]').click();
  await page.locator('#cd-undelete').click();
  await page.locator('.card-sheet').waitFor();
  assert.deepEqual(page.seen.errors, []);
}));

test('how far a Run is goes on the card', () => withBrowser(async (browser) => {
  const page = await browser.open(FILE, DESK);
  await divided(page, '64');
  await page.locator('#run-it').click();
  await page.locator('#run-start').click();
  await page.locator('#run-saved[data-state=saved]').click();
  await page.locator('[data-do=card-put]').click();
  await page.locator('[role=status]', { hasText: 'step 1.' }).waitFor();
  await page.keyboard.press('Escape');
  await page.locator('#run-next').click();
  await page.locator('#run-saved[data-state=saved]').waitFor();
  await page.locator('[data-do=run-leave]').click();
  await room(page, 'card');
  assert.match((await steps(page))[0], /^Run: /);
  const differs = await page.locator('.differs').innerText();
  assert.match(differs, /at 1 of 64/);
  assert.match(differs, /at 2 of 64/);
  assert.deepEqual(page.seen.errors, []);
}));
