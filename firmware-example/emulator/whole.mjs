// Whole runs on the real program: every screen's figures are those of the core.
import assert from 'node:assert/strict';
import { bench, random } from './bench.mjs';

/** From one position to the next: part of the way, now and then too far, and on to the target. */
async function move(on, index, side, chance, overRun) {
  const { oracle } = on;
  await oracle.ask('aim', index, on.place);
  const target = Number(await oracle.ask('target', index));
  const stop = async (count) => {
    on.turn(count);
    // The loop sees the handle at every turn; where it matters the oracle sees the same.
    await oracle.ask('see', count);
    on.board.settle();
    const { what, picture } = await oracle.move();
    on.shows(picture, `${what} ${index} at ${count}`);
    return what;
  };
  if (chance(3) === 0) {
    const half = on.place + Math.trunc(((target - on.place) * (1 + chance(8))) / 10);
    assert.equal(await stop(half), 'up');
    assert.equal(on.board.lamp, false);
  }
  if (overRun) {
    assert.equal(await stop(target + side * (3 + chance(300))), 'back');
    // On the target from the wrong side is not on it.
    assert.equal(await stop(target), 'back');
    assert.equal(on.board.lamp, false);
    assert.equal(await stop(target - side * (1200 + chance(50))), 'up');
  }
  assert.equal(await stop(target + side * (chance(5) - 2)), 'on');
  assert.equal(on.board.lamp, true, 'the lamp is on on the target');
}

export async function whole(t, settings) {
  const [parts, , , , side, , , confirm] = settings.split(' ');
  const [last, twice, sign] = [Number(parts), confirm === 'two', side === 'cw' ? 1 : -1];
  const on = await bench(t, settings);
  const chance = random(last);
  on.begin();
  await on.showing('cut', 0);
  for (let index = 0; index < last; index += 1) {
    const isLast = index === last - 1;
    if (twice || isLast) {
      on.wait();
      on.press('next');
    }
    await move(on, index + 1, sign, chance, chance(9) === 0);
    on.wait();
    on.press('next');
    if (isLast) await on.showing('done');
    else await on.showing('cut', index + 1, index === last - 2 ? 'last' : 'more');
    // Now and then back to the position before, which is cut, and on again.
    if (index > 0 && index < last - 2 && chance(25) === 0) await thereAndBack(on, index, sign, twice);
  }
  const target = Number(await on.oracle.ask('target', last));
  assert.ok(Math.abs(on.place - target) <= 2, 'a whole turn of the work');
  assert.equal(await on.kept(), `${last} ${on.place} ${last}`);
  on.end();
  return on.seen;
}

/** At `index` + 1: back to `index`, confirmed there, and on to `index` + 1 again. */
async function thereAndBack(on, index, sign, twice) {
  on.press('back');
  if (!twice) on.press('back');
  const { oracle } = on;
  await oracle.ask('aim', index, on.place);
  const target = Number(await oracle.ask('target', index));
  for (const count of [target - sign * 1300, target]) {
    on.turn(count);
    await oracle.ask('see', count);
    on.board.settle();
    on.shows((await oracle.move()).picture, `back to ${index}`);
  }
  on.wait();
  on.press('next');
  assert.equal((await on.kept()).split(' ')[0], String(index));
  await oracle.ask('aim', index + 1, on.place);
  on.board.settle();
  on.shows((await oracle.move()).picture, `on to ${index + 1} again`);
  on.turn(Number(await oracle.ask('target', index + 1)));
  on.wait();
  on.press('next');
  await on.showing('cut', index + 1);
}
