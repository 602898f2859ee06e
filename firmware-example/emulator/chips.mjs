// The chips on the readout's bus, byte by byte as they come: a screen of the
// SSD1306 type and a memory chip of the 24C family. Sources: their data sheets.

/** Bytes that follow a command byte; what is not listed has none. */
const ARGUMENTS = new Map([
  [0x20, 1], [0x21, 2], [0x22, 2], [0x81, 1], [0xa8, 1], [0xd3, 1], [0xd5, 1], [0xd9, 1],
  [0xda, 1], [0xdb, 1], [0x8d, 1],
]);

export class Screen {
  constructor(address = 0x3c) {
    this.address = address;
    this.memory = new Uint8Array(1024);
    this.powerUp();
  }

  /** Its memory holds chance, and it is dark. */
  powerUp() {
    for (let k = 0; k < 1024; k += 1) this.memory[k] = (k * 73) & 0xff;
    Object.assign(this, {
      on: false, inverse: false, mirrored: false, flipped: false, pump: false, mode: 2,
      columns: [0, 127], pages: [0, 7], column: 0, page: 0,
      control: null, command: null, waiting: 0, given: [],
    });
  }

  start(reading) {
    this.control = null;
    return !reading;
  }

  write(byte) {
    if (this.control === null) {
      this.control = byte;
    } else if (this.control & 0x40) {
      this.data(byte);
    } else {
      this.take(byte);
    }
    return true;
  }

  read() { return 0xff; }

  stop() {}

  take(byte) {
    if (this.command === null) {
      this.command = byte;
      this.waiting = ARGUMENTS.get(byte) ?? 0;
      this.given = [];
    } else {
      this.given.push(byte);
      this.waiting -= 1;
    }
    if (this.waiting > 0) return;
    const [command, [first, second]] = [this.command, this.given];
    this.command = null;
    if (command === 0x20) this.mode = first & 3;
    if (command === 0x21) [this.columns, this.column] = [[first & 127, second & 127], first & 127];
    if (command === 0x22) [this.pages, this.page] = [[first & 7, second & 7], first & 7];
    if (command === 0x8d) this.pump = (first & 4) !== 0;
    if ((command & 0xfe) === 0xae) this.on = command === 0xaf;
    if ((command & 0xfe) === 0xa6) this.inverse = command === 0xa7;
    if ((command & 0xfe) === 0xa0) this.mirrored = command === 0xa1;
    if ((command & 0xf7) === 0xc0) this.flipped = command === 0xc8;
  }

  data(byte) {
    this.memory[this.page * 128 + this.column] = byte;
    this.column += 1;
    if (this.column <= this.columns[1]) return;
    [this.column] = this.columns;
    this.page += 1;
    if (this.page > this.pages[1]) [this.page] = this.pages;
  }

  /** The picture: 1024 bytes, a byte a column, pages from the top; dark while it is off. */
  get picture() {
    if (!this.on || !this.pump) return new Uint8Array(1024);
    if (!this.mirrored || !this.flipped) throw new Error('the picture is upside down');
    return this.inverse ? this.memory.map((byte) => ~byte) : this.memory.slice();
  }
}

export class Memory {
  /** `pageBytes` and `writeUs` for an EEPROM; without them a FRAM. */
  constructor({ pageBytes = 0, writeUs = 0, bytes = new Uint8Array(4096).fill(0xff) } = {}) {
    this.address = 0x50;
    Object.assign(this, { pageBytes, writeUs, bytes, silent: false, chance: 1 });
    this.powerUp();
  }

  /** Its bytes stay, and nothing else. */
  powerUp() {
    Object.assign(this, { pointer: 0, given: [], busyUntil: 0, page: null, reading: false });
  }

  random(below) {
    this.chance = (Math.imul(this.chance, 1_103_515_245) + 12_345) >>> 0;
    return Math.floor((this.chance / 2 ** 32) * below);
  }

  start(reading, now) {
    if (this.silent || now < this.busyUntil) return false;
    this.page = null;
    this.reading = reading;
    if (!reading) this.given = [];
    return true;
  }

  write(byte) {
    this.given.push(byte);
    const { given } = this;
    if (given.length === 2) this.pointer = ((given[0] << 8) | given[1]) % this.bytes.length;
    if (given.length > 2 && this.pageBytes === 0) {
      this.bytes[this.pointer] = byte;
      this.pointer = (this.pointer + 1) % this.bytes.length;
    }
    return true;
  }

  read() {
    const byte = this.bytes[this.pointer];
    this.pointer = (this.pointer + 1) % this.bytes.length;
    return byte;
  }

  stop(now) {
    if (this.pageBytes === 0 || this.reading || this.given.length <= 2) return;
    const data = this.given.slice(2);
    const base = this.pointer - (this.pointer % this.pageBytes);
    const places = data.map((_, k) => base + ((this.pointer - base + k) % this.pageBytes));
    this.page = { places, old: places.map((at) => this.bytes[at]), from: now };
    places.forEach((at, k) => { this.bytes[at] = data[k]; });
    this.busyUntil = now + this.writeUs * 1000;
  }

  /** The power goes at `now`: a page that is being written is part new, part old, one byte anything. */
  cut(now) {
    if (this.page === null || now >= this.busyUntil) return;
    const { places, old, from } = this.page;
    const done = Math.floor((places.length * (now - from)) / (this.busyUntil - from));
    const turned = this.random(places.length);
    places.forEach((at, k) => {
      const order = (k - turned + places.length) % places.length;
      if (order === done) this.bytes[at] = this.random(256);
      if (order > done) this.bytes[at] = old[k];
    });
  }
}
