// Handturn for JavaScript: one glue for browsers and Node, the wasm's bytes handed in.
import start, { initSync as startSync, __wbg_reset_state as fresh } from 'glue';
import * as glue from 'glue';

/**
 * Starts the engine from the bytes of handturn.wasm, a compiled module, or a
 * Response or a promise of one. Call it once, before any other function.
 */
export async function init(wasm) {
  await start({ module_or_path: wasm });
}

/** Starts the engine at once, from bytes or a compiled module. */
export function initSync(wasm) {
  startSync({ module: wasm });
}

/** What is thrown when a value is refused: which one, why, and what is allowed. */
export class HandturnError extends Error {
  name = 'HandturnError';
  constructor({ field, cause, limits, message }) {
    super(message);
    this.field = field;
    this.cause = cause;
    this.limits = limits;
  }
}

/** Calls into the engine; after a trap a fresh instance takes over, so later answers are right. */
function call(name, ...given) {
  try {
    return glue[name](...given);
  } catch (fault) {
    if (fault && typeof fault.field === 'string') throw new HandturnError(fault);
    if (!(fault instanceof WebAssembly.RuntimeError || fault instanceof RangeError)) throw fault;
    fresh();
    throw new Error('handturn: internal fault; the engine has been started afresh', { cause: fault });
  }
}

export const divide = (request) => call('divide', request);
export const ways = (request, order = 'closest') => call('ways', request, order);
export const place = (request, way, index) => call('place', request, way, index);
export const step = (request, way, index) => call('step', request, way, index);
export const working = (request, way) => call('working', request, way);
export const budget = (request, way) => call('budget', request, way);
export const makePlate = (request, first) => call('make_plate', request, first);
export const plateRing = (asked) => call('of_plate', 'ring', asked);
export const plateHoles = (asked) => call('of_plate', 'holes', asked);
export const drumTape = (asked) => call('of_plate', 'tape', asked);
export const drumFor = (asked) => call('of_plate', 'drum', asked);
export const touchingDisks = (asked) => call('of_plate', 'disks', asked);
export const head = (values = {}) => call('head', values);
export const nearest = (num, den, most) => call('nearest', num, den, most);
export const readNumber = (text) => call('read_text', 'number', text);
export const readRatio = (text) => call('read_text', 'ratio', text);
export const readAngle = (text) => call('read_text', 'angle', text);
export const readAngles = (text) => call('read_text', 'angles', text);
export const readLength = (text) => call('read_text', 'length', text);
export const readPlates = (text) => call('read_text', 'plates', text);
export const readGears = (text) => call('read_text', 'gears', text);

export const ratchet = (asked) => call('of_shape', 'ratchet', asked);
export const faceTeeth = (asked) => call('of_shape', 'face', asked);
export const splines = (asked) => call('of_shape', 'splines', asked);
export const keyway = (asked) => call('of_shape', 'keyway', asked);
export const flats = (asked) => call('of_shape', 'flats', asked);
export const clockPair = (asked) => call('of_shape', 'clock', asked);
export const camLobe = (asked) => call('of_shape', 'lobe', asked);
export const camSteps = (asked) => call('of_shape', 'steps', asked);

export const helical = (asked) => call('of_slant', 'helical', asked);
export const helixGears = (asked) => call('of_slant', 'gears', asked);
export const wormPair = (asked) => call('of_slant', 'worm', asked);
export const bevelPair = (asked) => call('of_slant', 'bevel', asked);
export const rack = (asked) => call('of_slant', 'rack', asked);

/** Small sums: `sums()` lists them, `sum('tilt', { angle: '0 45', span: 40 })` answers one. */
export const sums = () => call('sums');
export const sum = (name, asked = {}, owned = {}) => call('sum', name, asked, owned);
/** Values of a card that follow each other: `cardValues({ bore: { drawing: 6, measured: 6.02 }, plug: '= bore - 0.1' })`. */
export const cardValues = (values) => call('card_values', values);
export const threads = () => call('of_thread', 'all');
export const readThread = (text) => call('of_thread', 'read', text);
export const threadSizes = (asked) => call('of_thread', 'sizes', asked);
export const threadBlank = (asked) => call('of_thread', 'blank', asked);
export const tappingDrills = (asked) => call('of_thread', 'drills', asked);
export const whichThread = (measured) => call('of_thread', 'which', measured);
export const infeed = (asked) => call('of_thread', 'infeed', asked);
export const passes = (asked) => call('of_thread', 'passes', asked);
export const pass = (asked, number) => call('pass', asked, number);
export const wires = (asked) => call('of_thread', 'wires', asked);
export const overWires = (asked) => call('of_thread', 'over', asked);
export const fromWires = (asked) => call('of_thread', 'from', asked);
export const gearsFor = (asked) => call('of_thread', 'gears', asked);

export const dialMarks = (asked) => call('of_dial', 'marks', asked);
export const dialMark = (asked) => call('of_dial', 'mark', asked);
export const dialStops = (asked) => call('of_dial', 'stops', asked);
export const dialFigures = (asked) => call('of_dial', 'figures', asked);
export const vernier = (asked) => call('of_dial', 'vernier', asked);
export const vernierReads = (asked) => call('of_dial', 'reads', asked);
export const dialWidth = (asked) => call('of_dial', 'width', asked);
export const dialDiameter = (asked) => call('of_dial', 'diameter', asked);
export const dialsForScrew = (asked) => call('of_dial', 'screw', asked);
export const fineDialSteps = (asked) => call('of_dial', 'steps', asked);
export const fineDial = (asked) => call('of_dial', 'fine', asked);

export const wheelSizes = (asked) => call('of_wheel', 'sizes', asked);
export const wheelCutter = (asked) => call('of_wheel', 'cutter', asked);
export const wheelBlank = (asked) => call('of_wheel', 'blank', asked);
export const whichWheel = (measured) => call('of_wheel', 'tell', measured);
export const teethOfBlank = (measured) => call('of_wheel', 'teeth', measured);
export const wheelPitch = (measured) => call('of_wheel', 'pitch', measured);
export const wheelSwing = (asked) => call('of_wheel', 'swing', asked);
export const meshWheels = (asked) => call('of_wheel', 'mesh', asked);
export const openCentres = (asked) => call('of_wheel', 'opening', asked);
export const teethOfPair = (asked) => call('of_wheel', 'pair', asked);
export const toothCaliper = (asked) => call('of_wheel', 'caliper', asked);
export const toothSpan = (asked) => call('of_wheel', 'span', asked);
export const toothPins = (asked) => call('of_wheel', 'pins', asked);
export const trialGaps = (asked) => call('of_wheel', 'trial', asked);
