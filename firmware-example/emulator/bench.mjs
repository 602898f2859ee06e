// The board on a bench: a hand on the handle, a thumb on the buttons, an eye on the screen.
import assert from 'node:assert/strict';
import { Board, PINS, linesAt } from './board.mjs';
import { Memory, Screen } from './chips.mjs';
import { Oracle } from './oracle.mjs';
import { Watch } from './watch.mjs';

export const FRAM = {};
export const EEPROM = { pageBytes: 32, writeUs: 5000 };
/** The board's own bus speed, and one that spends no time on waiting for it. */
export const BUS = 400_000;
export const FAST_BUS = 8_000_000;

export const random = (seed) => {
  let state = BigInt(seed);
  return (below) => {
    state = (state * 6_364_136_223_846_793_005n + 1n) & 0xffff_ffff_ffff_ffffn;
    return Number((state >> 33n) % BigInt(below));
  };
};

const { READOUT_PROGRAM, READOUT_EXPECT } = process.env;

/** A board that has started, with what its chip holds; `settings`: parts, ratio, counts a turn, side, slack, window, confirm. */
export async function bench(t, settings, { kind = FRAM, busSpeed = FAST_BUS, place = [], blank = false } = {}) {
  const oracle = new Oracle(READOUT_EXPECT);
  t.after(() => oracle.end());
  await oracle.ask('settings', ...settings.split(' '));
  const bytes = blank ? new Uint8Array(4096).fill(0xff) : await oracle.bytes('chip', ...place);
  const screen = new Screen();
  const memory = new Memory({ ...kind, bytes });
  const watch = new Watch({ bytes, ...kind });
  const board = new Board(READOUT_PROGRAM, [screen, memory], { busSpeed, watch });
  board.settle();
  return new Bench(board, screen, memory, watch, oracle);
}

export class Bench {
  constructor(board, screen, memory, watch, oracle) {
    Object.assign(this, { board, screen, memory, watch, oracle, place: 0, seen: 0 });
  }

  get picture() { return Buffer.from(this.screen.picture).toString('hex'); }

  /** The screen shows this, and both models of it agree. */
  shows(expected, what) {
    this.seen += 1;
    assert.deepEqual(this.watch.picture, this.screen.picture, 'both models of the screen');
    if (this.picture !== expected) {
      console.error(`${what}: shown, then expected`);
      console.error(drawn(this.screen.picture));
      console.error(drawn(Buffer.from(expected, 'hex')));
    }
    assert.ok(this.picture === expected, what);
  }

  /** What a view of this name should look like is what is shown. */
  async showing(...view) {
    this.board.settle();
    this.shows(await this.oracle.ask('show', ...view), view.join(' '));
  }

  /** Turns the handle to count `to`, an edge every `cycles`. */
  turn(to, cycles = 50) {
    const { board } = this;
    const step = to > this.place ? 1 : -1;
    const edges = {
      at: board.cycle + cycles,
      change: (moved) => {
        this.place += step;
        moved.setLines(linesAt(this.place));
        edges.at = this.place === to ? Infinity : edges.at + cycles;
      },
    };
    if (to !== this.place) {
      board.edges = edges;
      board.run(cycles * (Math.abs(to - this.place) + 2));
      board.edges = null;
      assert.equal(this.place, to);
    }
  }

  press(name, heldMs) {
    this.board.press(PINS[name], heldMs);
    this.board.settle();
  }

  /** Longer than a second press could be a mistake. */
  wait(ms = 1_500) {
    for (let left = ms; left > 0; left -= 500) {
      this.board.skipMs(Math.min(left, 500));
      this.board.runMs(1);
    }
  }

  /** From the list of settings to the first position, its count nought. */
  begin() {
    this.press('back');
    this.press('next');
    this.press('next');
    this.base = this.place;
  }

  /** What the memory chip holds, told by the host's journal: position, count, cuts. */
  async kept() {
    return this.oracle.ask('read', Buffer.from(this.memory.bytes).toString('hex'));
  }

  end() {
    // Both models of the memory chip agree as well.
    assert.deepEqual(Uint8Array.from(this.watch.bytes), this.memory.bytes);
  }
}

/** A picture as text, two rows a line. */
export function drawn(picture) {
  const bit = (x, y) => (picture[(y >> 3) * 128 + x] >> (y & 7)) & 1;
  let text = '';
  for (let y = 0; y < 64; y += 2) {
    for (let x = 0; x < 128; x += 1) text += ' ▀▄█'[bit(x, y) + 2 * bit(x, y + 1)];
    text += '\n';
  }
  return text;
}
