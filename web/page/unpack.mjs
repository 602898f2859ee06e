// Unpacks the engine that the one-file page carries: a raw LZMA stream (the first
// form of the format, as Igor Pavlov's public-domain specification gives it) with
// 3 literal context bits and no position bits. It is a sixth smaller than what
// browsers unpack by themselves, and this file costs far less than that.

const START = 1024; // a probability of one half, out of 2048

/** The `size` bytes that were packed. The build unpacks what it packs and compares. */
export function unpack(packed, size) {
  const out = new Uint8Array(size);
  let range = 2 ** 32 - 1, code = 0, from = 1;
  while (from < 5) code = code * 256 + packed[from++];

  const chances = (count) => new Uint16Array(count).fill(START);

  function normalised(bit) {
    if (range < 2 ** 24) {
      range *= 256;
      code = code * 256 + packed[from++];
    }
    return bit;
  }

  /** The next bit, by the chance at `at` of `table`, which learns from it. */
  function bit(table, at) {
    const bound = (range >>> 11) * table[at];
    if (code < bound) {
      range = bound;
      table[at] += (2048 - table[at]) >> 5;
      return normalised(0);
    }
    range -= bound;
    code -= bound;
    table[at] -= table[at] >> 5;
    return normalised(1);
  }

  /** A bit without a chance of its own. */
  function even() {
    range = Math.floor(range / 2);
    if (code < range) return normalised(0);
    code -= range;
    return normalised(1);
  }

  /** A number of `bits` bits, the highest first. */
  function tree(table, bits, at = 0) {
    let found = 1;
    for (let k = 0; k < bits; k++) found = found * 2 + bit(table, at + found);
    return found - 2 ** bits;
  }

  /** The same, the lowest first. */
  function reversed(table, bits, at = 0) {
    let found = 0, node = 1;
    for (let k = 0; k < bits; k++) {
      const next = bit(table, at + node);
      node = node * 2 + next;
      found += next * 2 ** k;
    }
    return found;
  }

  const lengths = () => ({ choice: chances(2), low: chances(8), middle: chances(8), high: chances(256) });
  function length({ choice, low, middle, high }) {
    if (!bit(choice, 0)) return 2 + tree(low, 3);
    return bit(choice, 1) ? 18 + tree(high, 8) : 10 + tree(middle, 3);
  }

  const matched = chances(12), again = chances(12), other = chances(12), third = chances(12), fourth = chances(12), long = chances(12);
  const literals = chances(0x300 << 3), slots = [chances(64), chances(64), chances(64), chances(64)];
  const special = chances(128), align = chances(16), fresh = lengths(), repeated = lengths();
  let state = 0, back = [1, 1, 1, 1], to = 0;

  function literal() {
    const table = literals.subarray(0x300 * ((out[to - 1] ?? 0) >> 5));
    let found = 1;
    if (state > 6) {
      let beside = out[to - back[0]];
      while (found < 256) {
        const hint = beside >> 7 & 1;
        beside <<= 1;
        const next = bit(table, (1 + hint << 8) + found);
        found = found * 2 + next;
        if (next !== hint) break;
      }
    }
    while (found < 256) found = found * 2 + bit(table, found);
    state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
    return found;
  }

  function distance(long) {
    const slot = tree(slots[Math.min(long, 5) - 2], 6);
    if (slot < 4) return 1 + slot;
    const bits = (slot >> 1) - 1;
    let found = (2 + slot % 2) * 2 ** bits;
    if (slot < 14) return 1 + found + reversed(special, bits, found - slot);
    for (let k = bits - 1; k > 3; k--) found += even() * 2 ** k;
    return 1 + found + reversed(align, 4);
  }

  while (to < size) {
    if (!bit(matched, state)) {
      out[to] = literal();
      to++;
      continue;
    }
    let count = 1;
    if (!bit(again, state)) {
      count = length(fresh);
      back = [distance(count), ...back.slice(0, 3)];
      state = state < 7 ? 7 : 10;
    } else if (bit(other, state)) {
      const which = bit(third, state) ? 2 + bit(fourth, state) : 1;
      back.unshift(...back.splice(which, 1));
      count = length(repeated);
      state = state < 7 ? 8 : 11;
    } else if (bit(long, state)) {
      count = length(repeated);
      state = state < 7 ? 8 : 11;
    } else {
      state = state < 7 ? 9 : 11;
    }
    for (const end = to + count; to < end; to++) out[to] = out[to - back[0]];
  }
  return out;
}
