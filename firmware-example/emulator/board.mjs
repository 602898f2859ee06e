// The readout's board: its processor emulated, running the very program that goes
// onto it; a screen and a memory chip on its bus; an encoder, three buttons, a lamp
// and a buzzer on its pins. The edge counter is stepped once for each cycle of the core.
import { readFileSync } from 'node:fs';
import { GPIOPinState, I2CMode, RP2040 } from 'rp2040js';
import { segments } from '../tool/elf.mjs';
import { capture, restore } from './moment.mjs';

export const PINS = { a: 2, b: 3, sda: 4, scl: 5, next: 6, back: 7, menu: 8, lamp: 9, buzzer: 10 };
const [VECTORS, FLASH, RAM] = [0x10000100, 0x10000000, 0x20000000];
const STACK_TOP = 0x20040000;
const PAINT = 0xa5;
/** Bits of a byte on the bus, its acknowledgement with them. */
const BITS = 9;
/** The bus block's data register, and its abort among the raw interrupts. */
const [DATA_CMD, TX_ABORT] = [0x10, 1 << 6];

/** The lines at place `n` of their cycle: A leads when `n` grows; A is the lower bit. */
export const linesAt = (n) => [0b00, 0b01, 0b11, 0b10][((n % 4) + 4) % 4];

export class Board {
  /** A board with `chips` on its bus, each `{address, start, write, read, stop}`; power off. */
  constructor(program, chips, { busSpeed = 400_000, watch = null } = {}) {
    this.chips = chips;
    this.watch = watch;
    this.busSpeed = busSpeed;
    this.mcu = new RP2040();
    this.clock = this.mcu.clock;
    const quiet = () => {};
    const complain = (name, message) => { throw new Error(`${name}: ${message}`); };
    this.mcu.logger = { debug: quiet, info: quiet, warn: quiet, error: complain };
    for (const { address, bytes } of segments(readFileSync(program))) {
      this.mcu.flash.set(bytes, address - FLASH);
    }
    /** Every pin's level; what nothing pulls down is up. */
    this.levels = 0x3fffffff & ~(0b11 << PINS.a);
    const board = this;
    Object.defineProperty(this.mcu, 'gpioValues', { get: () => board.levels });
    // The counter is stepped here, not from a timer.
    for (const pio of this.mcu.pio) pio.run = () => {};
    this.cycle = 0;
    this.edges = null;
    this.outputs = 0;
    this.beeps = 0;
    this.resets = 0;
    this.connectBus();
    const { gpio, peripherals } = this.mcu;
    gpio.forEach((pin, k) => pin.setInputValue(((this.levels >> k) & 1) === 1));
    gpio[PINS.lamp].addListener((state) => this.output(0, state));
    gpio[PINS.buzzer].addListener((state) => this.output(1, state));
    this.watchdog = peripherals[0x40058];
    this.watchdog.onWatchdogTrigger = () => {
      this.stuck = true;
      // Once: the emulator would come here again and again at the same moment.
      this.watchdog.timer.enable = false;
    };
    this.stuck = false;
    // The loop feeds the watchdog once a turn.
    this.turns = 0;
    const feed = this.watchdog.writeUint32.bind(this.watchdog);
    this.watchdog.writeUint32 = (offset, value) => {
      if (offset === 4) this.turns += 1;
      feed(offset, value);
    };
    this.mcu.sram.fill(PAINT);
    this.start();
    this.cold = capture(this, ['cold', 'chips', 'watch']);
  }

  start() {
    const { core, flashView } = this.mcu;
    core.VTOR = VECTORS;
    core.SP = flashView.getUint32(VECTORS - FLASH, true);
    core.PC = flashView.getUint32(VECTORS - FLASH + 4, true) & ~1;
  }

  output(bit, state) {
    const on = state === GPIOPinState.High;
    if (bit === 1 && on && !(this.outputs & 2)) this.beeps += 1;
    this.outputs = on ? this.outputs | (1 << bit) : this.outputs & ~(1 << bit);
  }

  get lamp() { return (this.outputs & 1) !== 0; }

  /** The power goes and comes back; what chips and the handle's lines are stays. */
  powerCycle({ watchdog = false } = {}) {
    const { levels, cycle, resets } = this;
    restore(this.cold);
    if (!watchdog) this.chips.forEach((chip) => chip.powerUp());
    [this.levels, this.cycle, this.resets] = [levels | (0b111 << PINS.next), cycle, resets];
    this.mcu.gpio.forEach((pin, k) => pin.setInputValue(((this.levels >> k) & 1) === 1));
    this.watchdog.reason = watchdog ? 1 : 0;
    this.watch?.powerUp(watchdog);
  }

  setPin(pin, level) {
    this.levels = level ? this.levels | (1 << pin) : this.levels & ~(1 << pin);
    this.mcu.gpio[pin].setInputValue(level);
  }

  setLines(lines) {
    this.levels = (this.levels & ~(0b11 << PINS.a)) | (lines << PINS.a);
  }

  /** Runs for so many cycles. `this.edges`, where it is set, says at which cycle the lines change next. */
  run(cycles) {
    const end = this.cycle + cycles;
    const { core, clock, pio } = this.mcu;
    const counter = pio[0].machines[0];
    while (this.cycle < end) {
      const took = core.executeInstruction();
      clock.tick((took * 1e9) / this.mcu.clkSys);
      if (counter.enabled) {
        const { edges } = this;
        for (let k = 0; k < took; k += 1) {
          if (edges !== null && edges.at <= this.cycle + k) edges.change(this, this.cycle + k);
          counter.step();
        }
      }
      this.cycle += took;
      if (this.stuck) {
        this.stuck = false;
        this.resets += 1;
        this.powerCycle({ watchdog: true });
        return;
      }
    }
  }

  /** Runs for so many milliseconds of the board's own time. */
  runMs(ms) {
    this.run(Math.round((ms * this.mcu.clkSys) / 1000));
  }

  /** Moves the clock on with the loop standing still: only while nothing moves. */
  skipMs(ms) {
    this.clock.tick(ms * 1e6);
  }

  /** Runs until the loop has nothing more to send: three turns of it without bus traffic. */
  settle(mostMs = 1000) {
    let [turns, traffic] = [this.turns, this.traffic];
    for (let part = 0; part < mostMs * 4; part += 1) {
      this.runMs(0.25);
      if (this.traffic !== traffic) [turns, traffic] = [this.turns, this.traffic];
      if (this.turns >= turns + 4) return;
    }
    throw new Error('the bus does not come to rest');
  }

  /** Runs so many whole turns of the loop. */
  loop(turns) {
    const end = this.turns + turns + 1;
    while (this.turns < end) this.runMs(0.1);
  }

  /** A button pressed for `heldMs` and let go; the time between is skipped, the ends are run. */
  press(pin, heldMs = 60) {
    this.setPin(pin, false);
    this.loop(1);
    this.skipMs(30);
    this.loop(1);
    if (heldMs > 60) {
      this.skipMs(heldMs);
      this.loop(1);
    }
    this.setPin(pin, true);
    this.loop(1);
    this.skipMs(30);
    this.loop(1);
  }

  /** Bytes of RAM the stack has reached since the start. */
  stackUsed() {
    const { sram } = this.mcu;
    let low = STACK_TOP - RAM;
    for (let k = 64; k < STACK_TOP - RAM; k += 1) {
      if (sram[k] !== PAINT) { low = k; break; }
    }
    return STACK_TOP - RAM - low;
  }

  connectBus() {
    const bus = this.mcu.i2c[0];
    // While an abort is not cleared, the processor's queue takes nothing (data sheet,
    // IC_CLR_TX_ABRT); the emulator's would begin another transaction with the rest.
    const put = bus.writeUint32.bind(bus);
    bus.writeUint32 = (offset, value) => {
      const shut = offset === DATA_CMD && (bus.intRaw & TX_ABORT) !== 0;
      if (!shut) put(offset, value);
    };
    this.traffic = 0;
    /** Nothing on the bus comes to its end. */
    this.hung = false;
    this.bus = { chip: null, after: null, address: 0, reading: false };
    this.bus.alarm = this.clock.createAlarm(() => {
      const { after } = this.bus;
      this.bus.after = null;
      after.call(this);
    });
    const later = (bits, then) => {
      this.traffic += 1;
      this.bus.after = then;
      if (this.hung) return;
      this.bus.alarm.schedule((bits * 1e9) / this.busSpeed);
    };
    bus.onStart = () => later(1, function started() {
      this.watch?.start(this.clock.nanos);
      bus.completeStart();
    });
    const connect = (address, reading) => {
      const chip = this.chips.find((one) => one.address === address);
      const answers = chip !== undefined && chip.start(reading, this.clock.nanos);
      Object.assign(this.bus, { chip: answers ? chip : null, address, reading });
      this.watch?.connect(address, reading, answers, this.clock.nanos);
      return answers;
    };
    bus.onConnect = (address, mode) => later(BITS, function connected() {
      bus.completeConnect(connect(address, mode === I2CMode.Read));
    });
    bus.onWriteByte = (byte) => later(BITS, function written() {
      const taken = this.bus.chip !== null && this.bus.chip.write(byte);
      this.watch?.write(byte, taken);
      bus.completeWrite(taken);
    });
    // The processor repeats the start by itself where the direction turns; the
    // emulator does not, so it is done here.
    const turns = () => this.bus.chip !== null && !this.bus.reading;
    bus.onReadByte = () => later(turns() ? 2 * BITS + 1 : BITS, function read() {
      if (turns()) {
        this.watch?.start(this.clock.nanos);
        connect(this.bus.address, true);
      }
      const byte = this.bus.chip === null ? 0xff : this.bus.chip.read();
      this.watch?.read(byte);
      bus.completeRead(byte);
    });
    bus.onStop = () => later(1, function stopped() {
      this.bus.chip?.stop(this.clock.nanos);
      this.bus.chip = null;
      this.watch?.stop(this.clock.nanos);
      bus.completeStop();
    });
  }
}
