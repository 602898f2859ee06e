// Edges on the real program: none lost, none made up, double steps told.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { linesAt } from './board.mjs';
import { BUS, bench, random } from './bench.mjs';

const RUN = '127 40 1 2400 cw 10 2 two';
/** Cycles after which the counter has seen every edge. */
const REST = 40;

const counter = (on) => on.board.mcu.pio[0].machines[0];
const count = (on) => counter(on).y | 0;
const flag = (on) => (on.board.mcu.pio[0].irq & 1) === 1;

/** Moves the handle by `step()` every `cycles()`, `many` times. */
function walk(on, many, cycles, step) {
  const { board } = on;
  let left = many;
  board.edges = {
    at: board.cycle + cycles(),
    change(moved, now) {
      on.place += step();
      moved.setLines(linesAt(on.place));
      left -= 1;
      this.at = left > 0 ? now + cycles() : Infinity;
    },
  };
  while (left > 0) board.run(10_000);
  board.edges = null;
  board.run(REST);
}

/** The screen says what the core says of the place where the handle is. */
async function agrees(on) {
  await on.oracle.ask('aim', 1, on.place);
  on.board.settle();
  on.shows((await on.oracle.move()).picture, `at ${on.place}`);
}

/** Begun, the first position cut, on the way to the second. */
async function begun(t, more = {}) {
  const on = await bench(t, RUN, more);
  on.begin();
  on.wait();
  on.press('next');
  return on;
}

test('the counter runs the words that the host model interprets', async (t) => {
  const on = await bench(t, RUN);
  const words = await on.oracle.bytes('program');
  const expected = new Uint16Array(words.buffer, words.byteOffset, words.length / 2);
  assert.ok(expected.length > 20);
  assert.deepEqual([...on.board.mcu.pio[0].instructions].slice(0, expected.length), [...expected]);
  assert.equal(counter(on).clockDivInt, 1, 'a step for each cycle of the core');
  assert.equal(counter(on).clockDivFrac, 0);
});

test('a million edges at 10 to 50 cycles, bouncing and turning back', async (t) => {
  const on = await begun(t);
  const chance = random(1_000_000);
  let [up, bounce] = [1, 0];
  // Up and down before the target, so that the figures stay those of one approach.
  const step = () => {
    if (bounce === 0 && chance(300) === 0) up = -up;
    if (on.place > 500) up = -1;
    if (bounce === 0 && chance(4) === 0) bounce = 2 * (1 + chance(3));
    if (bounce === 0) return up;
    bounce -= 1;
    return bounce % 2 === 1 ? up : -up;
  };
  for (let part = 0; part < 10; part += 1) {
    walk(on, 100_000, () => 10 + chance(41), step);
    assert.equal(count(on), on.place, `after ${part + 1}00 000 edges`);
    assert.equal(flag(on), false);
    await agrees(on);
  }
  on.end();
});

test('250 000 edges a second for two seconds, the screen being redrawn', async (t) => {
  const on = await begun(t, { busSpeed: BUS });
  const { board } = on;
  const each = board.mcu.clkSys / 250_000;
  assert.equal(each, 192);
  const [nanos, traffic] = [board.clock.nanos, board.traffic];
  walk(on, 500_000, () => each, () => 1);
  const seconds = (board.clock.nanos - nanos) / 1e9;
  assert.ok(seconds >= 2, `${seconds} s`);
  const frames = (board.traffic - traffic) / 400;
  assert.ok(frames > 30, `only about ${frames} pictures were sent`);
  assert.equal(count(on), on.place);
  assert.equal(flag(on), false);
  await on.oracle.ask('aim', 1, 0);
  await on.oracle.ask('see', on.place);
  board.settle();
  on.shows((await on.oracle.move()).picture, 'where it stands in the end');
  t.diagnostic(`${seconds.toFixed(2)} s, about ${Math.round(frames)} pictures, no edge lost`);
});

test('the highest rate without loss', async (t) => {
  const on = await begun(t);
  const runs = (cycles, way) => {
    on.board.mcu.pio[0].irq = 0;
    const [before, from] = [count(on), on.place];
    walk(on, 20_000, () => cycles, () => way);
    return { missed: on.place - from - (count(on) - before), told: flag(on) };
  };
  for (const cycles of [40, 20, 15, 12, 11, 10]) {
    for (const way of [1, -1]) assert.deepEqual(runs(cycles, way), { missed: 0, told: false }, `${cycles}`);
  }
  let least = 10;
  for (; least > 4; least -= 1) {
    const results = [1, -1].map((way) => runs(least, way));
    for (const { missed, told } of results) assert.ok(missed === 0 || told, 'no loss is silent');
    if (results.some(({ missed }) => missed !== 0)) break;
  }
  t.diagnostic(`an edge every ${least + 1} cycles is counted: ${on.board.mcu.clkSys / (least + 1) / 1e6} million a second`);
  assert.equal(least, 9);
});

test('every double step is told, at whatever cycle it comes', async (t) => {
  const on = await begun(t);
  const chance = random(2);
  const { board } = on;
  for (let k = 0; k < 2_000; k += 1) {
    board.mcu.pio[0].irq = 0;
    const single = 1 + chance(6);
    walk(on, single, () => 12 + chance(30), () => (chance(2) === 0 ? 1 : -1));
    assert.equal(flag(on), false);
    on.place += chance(2) === 0 ? 2 : -2;
    board.setLines(linesAt(on.place));
    board.run(REST);
    assert.equal(flag(on), true, `double step ${k}`);
  }
  await on.showing('lost');
});
