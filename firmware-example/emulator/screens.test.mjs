// Every screen that is not a move: settings, start, lost count, memory fault, restart.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { PINS, linesAt } from './board.mjs';
import { EEPROM, FRAM, bench } from './bench.mjs';

const RUN = '64 40 1 2400 cw 10 2 two';

/** Begun, cut at the first position, and confirmed at the second. */
async function atSecond(t, more) {
  const on = await bench(t, RUN, more);
  on.begin();
  on.wait();
  on.press('next');
  on.turn(1500);
  on.wait();
  on.press('next');
  await on.showing('cut', 1);
  return on;
}

test('a number is set digit by digit, and what cannot be is refused', async (t) => {
  const on = await bench(t, '64 40 1 2400 cw 10 2 two', { blank: true });
  await on.showing('setup', 0);
  on.press('next');
  await on.showing('number', 0, 64, 0);
  // 00064 to 00127, the last digit one down and three up.
  for (const key of ['next', 'next', 'menu', 'next', 'back', 'back', 'back', 'back', 'next']) on.press(key);
  await on.showing('number', 0, 124, 4);
  for (const key of ['menu', 'menu', 'menu', 'next']) on.press(key);
  await on.oracle.ask('settings', 127, 40, 1, 2400, 'cw', 10, 2, 'two');
  await on.showing('setup', 0);
  for (const item of [1, 2, 3]) {
    on.press('menu');
    await on.showing('setup', item);
  }
  // 02400 to 92400 counts: too many, the old value stays.
  for (const key of ['next', 'back']) on.press(key);
  on.press('next', 800);
  on.wait(2_000);
  await on.showing('number', 3, 2400, 0);
  on.press('back', 800);
  on.press('menu');
  on.press('next');
  await on.oracle.ask('settings', 127, 40, 1, 2400, 'acw', 10, 2, 'two');
  await on.showing('setup', 4);
  for (let item = 5; item <= 9; item += 1) on.press('menu');
  on.press('next');
  on.board.settle();
  on.shows(await on.oracle.ask('errors'), 'errors');
  on.press('next');
  on.press('menu');
  await on.showing('setup', 10);
  on.press('next');
  await on.showing('begin');
  on.press('next');
  await on.showing('cut', 0);
  assert.equal(await on.kept(), '0 0 0');
  on.end();
});

test('a press soon after another is asked about, and one beside the target refused', async (t) => {
  const on = await bench(t, RUN);
  on.begin();
  on.wait();
  on.press('next');
  on.turn(1499);
  on.press('next');
  await on.oracle.ask('aim', 1, 1499);
  on.shows(await on.oracle.ask('show-note', 'too-soon', 'move'), 'too soon');
  on.wait(2_000);
  on.turn(1490);
  on.press('next');
  await on.oracle.ask('see', 1490);
  on.shows(await on.oracle.ask('show-note', 'not-on', 'move'), 'not on target');
  assert.equal(await on.kept(), '0 0 1');
  on.end();
});

test('a double step stops the count, and a reference brings it back', async (t) => {
  const on = await atSecond(t);
  on.wait();
  on.press('next');
  on.turn(2000);
  const beeps = on.board.beeps;
  on.place += 2;
  on.board.setLines(linesAt(on.place));
  on.board.runMs(1);
  await on.showing('lost');
  assert.equal(on.board.lamp, false);
  assert.ok(on.board.beeps > beeps, 'it is heard');
  // Turning on or pressing BACK and MENU brings nothing back.
  on.turn(3000);
  on.press('back');
  on.press('menu');
  await on.showing('lost');
  assert.equal(await on.kept(), '1 1500 2', 'the last confirmed place is kept');
  on.press('next');
  await on.showing('reference', 1);
  on.press('menu');
  await on.showing('reference', 2);
  on.press('back');
  on.press('back');
  await on.showing('reference', 0);
  // It stands at the first position: counted from there again.
  on.press('next');
  assert.equal(await on.kept(), '0 0 2');
  const base = on.place;
  await on.oracle.ask('aim', 1, 0);
  on.board.settle();
  on.shows((await on.oracle.move()).picture, 'to the second position');
  on.turn(base + 1500);
  await on.oracle.ask('see', 1500);
  on.board.settle();
  on.shows((await on.oracle.move()).picture, 'on the second position');
  assert.equal(on.board.lamp, true);
  on.end();
});

for (const [name, kind] of [['FRAM', FRAM], ['EEPROM', EEPROM]]) {
  test(`a memory chip that falls silent, ${name}`, async (t) => {
    const on = await atSecond(t, { kind });
    on.wait();
    on.memory.silent = true;
    on.press('next');
    await on.showing('fault', 'working');
    on.press('next');
    await on.showing('fault', 'working');
    assert.equal(await on.kept(), '1 1500 1', 'nothing counts that is not kept');
    on.memory.silent = false;
    on.press('next');
    assert.equal(await on.kept(), '1 1500 2');
    await on.oracle.ask('aim', 2, on.place);
    on.board.settle();
    on.shows((await on.oracle.move()).picture, 'on as ever');
    // Silent for good: on without it, and every screen of the run says so.
    on.turn(3000);
    on.memory.silent = true;
    on.wait();
    on.press('next');
    await on.showing('fault', 'working');
    on.press('next', 800);
    await on.oracle.ask('unkept', 'yes');
    await on.showing('cut', 2);
    on.end();
  });
}

test('a start without a memory chip', async (t) => {
  const on = await bench(t, RUN);
  on.memory.silent = true;
  on.board.powerCycle();
  on.board.settle();
  await on.showing('fault', 'reading');
  on.press('next');
  await on.showing('fault', 'reading');
  on.memory.silent = false;
  on.press('next');
  await on.showing('setup', 0);
});

test('after the power it says what it believes and asks', async (t) => {
  const on = await atSecond(t);
  on.board.powerCycle();
  on.board.settle();
  await on.showing('believe', 1, 'uncut');
  assert.equal(on.board.lamp, false);
  on.press('next');
  await on.showing('cut', 1);
  on.wait();
  on.press('next');
  on.board.powerCycle();
  on.board.settle();
  await on.showing('believe', 1, 'cut');
  // No: a reference is asked for.
  on.press('back');
  await on.showing('reference', 1);
  on.end();
});

test('a stuck loop is restarted, loses no place and asks for a reference', async (t) => {
  const on = await atSecond(t);
  // The bus hangs in the middle of a transaction and the program waits for ever.
  on.board.hung = true;
  on.turn(1700);
  on.board.runMs(5);
  on.turn(2600);
  on.board.skipMs(2_100);
  on.board.runMs(1);
  assert.equal(on.board.resets, 1);
  on.board.hung = false;
  on.board.settle();
  await on.showing('restarted', 1);
  on.press('next');
  await on.showing('reference', 1);
  on.press('next');
  await on.showing('cut', 1);
  assert.equal(await on.kept(), '1 1500 1');
});

test('a screen that was away shows the right picture again', async (t) => {
  const on = await atSecond(t);
  const { address } = on.screen;
  on.screen.address = 0x7f;
  on.turn(1700);
  on.board.runMs(60);
  on.screen.powerUp();
  on.watch.screenUp(false);
  on.watch.pixels.clear();
  on.screen.address = address;
  on.wait(1_500);
  await on.oracle.ask('aim', 1, 1500);
  await on.oracle.ask('see', 1700);
  on.board.settle();
  on.shows((await on.oracle.move()).picture, 'past the second position');
});

test('buttons bounce and the stack stays small', async (t) => {
  const on = await atSecond(t);
  on.wait();
  for (const level of [false, true, false, true, false]) {
    on.board.setPin(PINS.next, level);
    on.board.runMs(1);
  }
  on.board.skipMs(40);
  on.board.loop(1);
  for (const level of [true, false, true, false, true]) {
    on.board.setPin(PINS.next, level);
    on.board.runMs(1);
  }
  on.board.skipMs(40);
  on.board.loop(1);
  on.board.settle();
  assert.equal(await on.kept(), '1 1500 2', 'one press');
  t.diagnostic(`stack used: ${on.board.stackUsed()} bytes`);
  assert.ok(on.board.stackUsed() <= 16_384, `${on.board.stackUsed()} bytes`);
});
