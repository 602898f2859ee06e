// The pictures of the README, made by the real program. With READOUT_PICTURES=write
// they are written; else they are compared with those in the repository.
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { test } from 'node:test';
import { linesAt } from './board.mjs';
import { bench } from './bench.mjs';
import { isPng, png } from './png.mjs';

const folder = new URL('../pictures/', import.meta.url);
const WRITE = process.env.READOUT_PICTURES === 'write';

function picture(on, name) {
  on.board.settle();
  const file = new URL(`${name}.png`, folder);
  if (WRITE) writeFileSync(file, png(on.screen.picture));
  assert.ok(isPng(readFileSync(file), on.screen.picture), `${name}.png is not what the program shows`);
}

function lose(on) {
  on.place += 2;
  on.board.setLines(linesAt(on.place));
  on.board.runMs(2);
}

test('the 127 wheel', async (t) => {
  const on = await bench(t, '127 40 1 2400 cw 10 2 two', { place: [36, 27213] });
  on.board.powerCycle();
  picture(on, 'believe');
  on.press('next');
  picture(on, 'to_cut');
  on.wait();
  on.press('next');
  on.turn(500);
  picture(on, 'going');
  on.turn(756);
  picture(on, 'on_target');
  on.turn(790);
  picture(on, 'past');
  on.press('menu');
  picture(on, 'menu');
  on.press('next');
  lose(on);
  picture(on, 'lost');
  on.press('next');
  picture(on, 'reference');
});

test('seven parts', async (t) => {
  const on = await bench(t, '7 40 1 2400 cw 10 2 two', { place: [6, 82286] });
  on.board.powerCycle();
  on.press('next');
  on.wait();
  on.press('next');
  on.turn(1200);
  picture(on, 'closing');
  on.turn(96_000 - 82_286);
  on.wait();
  on.press('next');
  picture(on, 'done');
});

test('settings and faults', async (t) => {
  const on = await bench(t, '127 40 1 2400 cw 10 2 two');
  picture(on, 'setup');
  on.press('next');
  on.press('next');
  on.press('next');
  picture(on, 'number');
  on.press('back', 800);
  on.press('back');
  on.press('back');
  on.press('next');
  picture(on, 'errors');
  on.press('next');
  on.press('menu');
  on.press('next');
  picture(on, 'begin');
  on.memory.silent = true;
  on.press('next');
  picture(on, 'memory_fault');
});
