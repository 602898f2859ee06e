// A second model of each chip, made apart from chips.mjs: it reads whole
// transactions as they went over the bus, holds them against the chips' data
// sheets, and keeps its own idea of the picture and of the memory's bytes.
import assert from 'node:assert/strict';

/** Screen commands: how many bytes each has in all, and which values its arguments take. */
const SCREEN = [
  { is: (c) => c === 0x20, length: 2, allows: ([mode]) => mode <= 2 },
  { is: (c) => c === 0x21, length: 3, allows: ([from, to]) => from <= to && to <= 127 },
  { is: (c) => c === 0x22, length: 3, allows: ([from, to]) => from <= to && to <= 7 },
  { is: (c) => c === 0x2e, length: 1 },
  { is: (c) => c >= 0x40 && c <= 0x7f, length: 1 },
  { is: (c) => c === 0x81, length: 2 },
  { is: (c) => c === 0x8d, length: 2, allows: ([pump]) => pump === 0x14 || pump === 0x10 },
  { is: (c) => c >= 0xa0 && c <= 0xa7, length: 1 },
  { is: (c) => c === 0xa8, length: 2, allows: ([rows]) => rows === 63 },
  { is: (c) => c === 0xae || c === 0xaf, length: 1 },
  { is: (c) => c === 0xc0 || c === 0xc8, length: 1 },
  { is: (c) => c === 0xd3, length: 2, allows: ([offset]) => offset === 0 },
  { is: (c) => c === 0xd5, length: 2 },
  { is: (c) => c === 0xd9, length: 2 },
  { is: (c) => c === 0xda, length: 2, allows: ([pins]) => pins === 0x12 },
  { is: (c) => c === 0xdb, length: 2 },
];

export class Watch {
  constructor({ bytes, pageBytes = 0, writeUs = 0 }) {
    Object.assign(this, { pageBytes, writeUs, transactions: 0, written: 0, current: null, silentUntil: 0 });
    this.bytes = Array.from(bytes);
    this.pixels = new Map();
    this.screenUp(false);
  }

  screenUp(keeps) {
    if (keeps) return;
    this.window = null;
    this.filled = 0;
    this.lit = false;
  }

  powerUp(programAlone) {
    this.current = null;
    this.silentUntil = 0;
    this.next = null;
    this.screenUp(programAlone);
  }

  start(now) {
    if (this.current === null) this.current = { parts: [], began: now };
  }

  connect(address, reading, answered, now) {
    this.current.parts.push({ address, reading, answered, bytes: [], taken: [], now });
  }

  write(byte, taken) {
    const part = this.current.parts.at(-1);
    part.bytes.push(byte);
    part.taken.push(taken);
  }

  read(byte) { this.current.parts.at(-1).bytes.push(byte); }

  stop(now) {
    const { parts } = this.current;
    this.current = null;
    this.transactions += 1;
    assert.ok(parts.length >= 1 && parts.length <= 2, 'one write, one read, or a write and a read');
    for (const part of parts) {
      if (!part.answered) assert.equal(part.bytes.length, 0, 'bytes to a chip that does not answer');
      assert.ok(part.taken.every(Boolean), 'every byte is taken');
    }
    if (parts[0].address === 0x3c) this.screen(parts);
    else this.memory(parts, now);
  }

  screen(parts) {
    assert.equal(parts.length, 1);
    const [{ reading, answered, bytes }] = parts;
    assert.ok(!reading, 'a screen is not read');
    if (!answered) return;
    const [control, ...rest] = bytes;
    if (control === 0x40) {
      assert.ok(this.window !== null, 'data before a window is set');
      const { columns: [left, right], pages: [top, bottom] } = this.window;
      const wide = right - left + 1;
      for (const byte of rest) {
        const page = top + Math.floor(this.filled / wide) % (bottom - top + 1);
        this.pixels.set(`${page} ${left + this.filled % wide}`, byte);
        this.filled += 1;
      }
      assert.ok(this.filled <= wide * (bottom - top + 1), 'more data than the window holds');
      return;
    }
    assert.equal(control, 0x00, 'commands or data, nothing else');
    for (let k = 0; k < rest.length;) {
      const command = SCREEN.find(({ is }) => is(rest[k]));
      assert.ok(command, `no command of the screen is ${rest[k]?.toString(16)}`);
      const given = rest.slice(k + 1, k + command.length);
      assert.equal(given.length, command.length - 1, 'a command is whole within its transaction');
      assert.ok(command.allows?.(given) ?? true, `command ${rest[k].toString(16)} ${given}`);
      if (rest[k] === 0xaf || rest[k] === 0xae) this.lit = rest[k] === 0xaf;
      if (rest[k] === 0x21 || rest[k] === 0x22) {
        const part = rest[k] === 0x21 ? { columns: given } : { pages: given };
        this.window = { columns: [0, 127], pages: [0, 7], ...this.window, ...part };
        this.filled = 0;
      }
      k += command.length;
    }
  }

  memory(parts, now) {
    const [first, second] = parts;
    assert.equal(first.address, 0x50, 'nothing else is on the bus');
    if (first.answered) {
      assert.ok(first.now >= this.silentUntil, 'an answer while a page is being written');
    } else {
      assert.equal(parts.length, 1);
      return;
    }
    assert.ok(!first.reading, 'every access says its address');
    const [high, low, ...data] = first.bytes;
    assert.ok(low !== undefined, 'two address bytes');
    const address = high * 256 + low;
    assert.ok(address < this.bytes.length, 'within the chip');
    if (second === undefined) {
      assert.ok(data.length > 0, 'an address alone does nothing');
      const page = this.pageBytes || 32;
      assert.equal(Math.floor(address / page), Math.floor((address + data.length - 1) / page),
        'a write stays within its page');
      data.forEach((byte, k) => { this.bytes[address + k] = byte; });
      this.written += data.length;
      this.silentUntil = this.pageBytes ? now + this.writeUs * 1000 : 0;
    } else {
      assert.equal(data.length, 0);
      assert.ok(second.reading && second.address === 0x50);
      const held = this.bytes.slice(address, address + second.bytes.length);
      assert.deepEqual(second.bytes, held, 'what is read is what was written');
    }
  }

  /** The picture: a byte a column, pages from the top. */
  get picture() {
    const all = new Uint8Array(1024);
    if (!this.lit) return all;
    for (const [place, byte] of this.pixels) {
      const [page, column] = place.split(' ').map(Number);
      all[page * 128 + column] = byte;
    }
    return all;
  }
}
