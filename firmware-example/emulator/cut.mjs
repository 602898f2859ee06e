// The power goes at seeded moments of a press being kept, once and twice in a row.
// Moments: READOUT_MOMENTS, 100 unless told otherwise; READOUT_SEED.
import assert from 'node:assert/strict';
import { bench, random } from './bench.mjs';
import { capture, restore } from './moment.mjs';

export const MOMENTS = Number(process.env.READOUT_MOMENTS ?? 100);
const SEED = Number(process.env.READOUT_SEED ?? 4);
/** An EEPROM quicker than any, so that half of the moments do not fall into waiting for it. */
export const QUICK = { pageBytes: 32, writeUs: 300 };

/** The press of NEXT, as far as the program hears of it. */
function hear(on) {
  const { board } = on;
  board.setPin(6, false);
  board.loop(1);
  board.skipMs(30);
  board.loop(1);
  board.setPin(6, true);
  board.loop(1);
  board.skipMs(30);
}

/** The power goes `cycles` after the program hears of NEXT. What the chip holds then. */
async function cut(on, cycles) {
  hear(on);
  on.board.run(cycles);
  const shown = on.picture;
  on.memory.cut(on.board.clock.nanos);
  on.board.powerCycle();
  on.watch.bytes = Array.from(on.memory.bytes);
  on.board.settle();
  return { shown, kept: await on.kept() };
}

/** The readout says what it believes, which is what the chip holds. */
async function believes(on, kept) {
  const [index, , cuts] = kept.split(' ').map(Number);
  await on.showing('believe', index, cuts > index ? 'cut' : 'uncut');
}

export async function moments(t, kind, many) {
  const on = await bench(t, '127 40 1 2400 cw 10 2 two', { kind, place: [35, 26457] });
  // Yes, it still stands there; then cut, and on to the next position.
  on.press('next');
  on.wait();
  on.press('next');
  const target = Number(await on.oracle.ask('target', 36));
  on.turn(target - 26457);
  on.board.settle();
  on.wait();
  const before = await on.kept();
  assert.equal(before, '35 26457 36');
  const moment = capture({ board: on.board, on });
  // Once without a cut: how long it takes, and what it leaves.
  hear(on);
  const began = on.board.cycle;
  on.board.settle();
  const length = on.board.cycle - began;
  const [after, done] = [await on.kept(), on.picture];
  assert.equal(after, `36 ${target} 36`);
  const chance = random(SEED);
  // The chip is written in the first part; what follows is drawing.
  const when = () => chance(chance(2) === 0 ? Math.floor(length / 4) : length);
  const found = { old: 0, new: 0, twice: 0, torn: 0 };
  for (let k = 0; k < many; k += 1) {
    restore(moment);
    on.memory.chance = k;
    const { shown, kept } = await cut(on, when());
    assert.ok(kept === before || kept === after, `moment ${k}: ${kept}`);
    if (shown === done) assert.equal(kept, after, 'what was shown as confirmed is kept');
    found[kept === before ? 'old' : 'new'] += 1;
    await believes(on, kept);
    if (k % 2 === 1) {
      // Once more, while the answer "it stands there" is being kept.
      const again = await cut(on, when());
      assert.equal(again.kept, kept);
      await believes(on, kept);
      found.twice += 1;
    }
    // A clean store works and is there after the next start.
    on.press('next');
    assert.equal(await on.kept(), kept);
    on.board.powerCycle();
    on.board.settle();
    assert.equal(await on.kept(), kept);
    await believes(on, kept);
  }
  t.diagnostic(`${many} moments: ${found.old} before it was kept, ${found.new} after, ${found.twice} cut twice`);
  assert.ok(many < 20 || (found.old > many / 10 && found.new > many / 10), 'cuts on both sides');
}
