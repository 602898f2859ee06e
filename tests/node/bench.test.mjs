// Small sums in the JavaScript package, as it is built.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { handturn, near, refusal } from './rig.mjs';

const { sum, sums } = handturn;

const rad = (degrees) => (degrees * Math.PI) / 180;

/** A sum, what is asked of it, one of its figures and what that must be (mm, degrees, value or as it is). */
const ROWS = [
  ['tilt', { angle: '0 45', span: 40 }, 'lift', 40 * Math.sin(rad(0.75))],
  ['tilt', { angle: '0 45', span: 40, rule: 'tangent' }, 'lift', 40 * Math.tan(rad(0.75))],
  ['sine', { angle: 30, bar: 100 }, 'stack', 50],
  ['centred', { work: 25, cutter: 2, depth: 6 }, 'across', 13.55],
  ['centred', { work: 10, cutter: 6, depth: 3 }, 'at_sides', 2],
  ['centred', { work: 25, cutter: 2, depth: 6, from: 'side' }, 'dial', '1 turn and 21 marks'],
  ['ring', { holes: 6, diameter: 60 }, 'chord', 30],
  ['keyway', { shaft: 10, key: 6, side: 2 }, 'over', 7],
  ['corners', { sides: 4, size: 10 }, 'stock', 10 * Math.SQRT2],
  ['corners', { sides: 6, known: 'stock', size: 20 }, 'flats', 20 * Math.cos(rad(30))],
  ['vee', { round: 25, angle: 90, width: 30 }, 'top', 12.5 * Math.SQRT2 + 12.5 - 15],
  ['vee', { round: 20, angle: 60, width: 30, other: 26 }, 'other_higher', 9],
  ['vee', { round: 20, angle: 90, width: 30, other: 16 }, 'other_lower', 2 * (Math.SQRT2 + 1)],
  ['dovetail', { angle: 60, wide: 50, height: 10, roller: 8 }, 'reading', 50 - 20 / Math.tan(rad(60)) + 8 * (1 + 1 / Math.tan(rad(30)))],
  ['fit', { size: 25 }, 'play_least', 0.007],
  ['fit', { size: 25, does: 'own', classes: 'P7/h6' }, 'hold_most', 0.035],
  ['fit', { size: 20, does: 'own', classes: 'h9' }, 'at_least', 19.948],
  ['fit', { size: 25, part: 'hole', reading: 25.03, doubt: 0.002 }, 'aim', 25.006],
  ['allowance', { hole: 20 }, 'least', 20 - 0.0027 * 25.4],
  ['allowance', { hole: '2in', rule: 'shrink' }, 'most', 2.003 * 25.4],
  ['shrink', { diameter: 50, hold: 0.05, clear: 0.03 }, 'heat_to', 20 + 0.08 / (50 * 11e-6)],
  ['counterbore', { bore: 6.6, counterbore: 11, outside: 20, off: 0.2 }, 'thinnest', 4.3],
  ['chain', { lengths: '10 ±0.1\n-9 ±0.1\n-0.5 ±0.1' }, 'most', 0.8],
  ['chain', { lengths: '10 ±0.1\n-9 ±0.1\n-0.5 ±0.1' }, 'likely_most', 0.5 + Math.sqrt(0.03)],
  ['bend', { legs: '20 40 20', angles: 90, radius: 1, thickness: 1, k: 'own', 'own-k': 0.42 }, 'flat', 72 + Math.PI * 1.42],
  ['joggle', { angle: 90, offset: 5, k: 'middling' }, 'between', (Math.PI / 2) * 1.41 + 2],
  // 2R (1 − cos 60°) is 1.5: no web; two bends of 60° about 1, less 2 × 1.5 × sin 60°.
  ['joggle', { angle: 60, offset: 1.5, k: 'own', 'own-k': 0 }, 'taken', (2 * Math.PI) / 3 - 3 * Math.sin(rad(60))],
  ['knurl', { by: 'dp', dp: 96, stock: '0.5in' }, 'teeth', 48],
  ['knurl', { by: 'tips', tips: '0.8', stock: 20 }, 'blank', (78 * 0.8) / Math.PI],
  ['countersink', { of: 'size', diameter: 10, angle: '82', hole: 4 }, 'down', 3 / Math.tan(rad(41))],
  ['countersink', { of: 'screw', head: 'iso10642', thread: 'M8', hole: 9 }, 'down', 4.46],
  ['countersink', { of: 'cap', thread: 'M6', below: '0.5' }, 'down', 6.5],
  ['chamfer', { by: 'along', size: 2, angle: '30' }, 'off-radius', 2 * Math.tan(rad(30))],
  ['speed', { material: 'own', speed: 60, unit: 'ft', diameter: '5in', speeds: '25 40 70' }, 'set', 40],
  ['point', { diameter: 10, angle: '135', depth: 12 }, 'tip', 12 + 5 / Math.tan(rad(67.5))],
  ['temper', { for: 'spring' }, 'colour', 'full blue to dark blue'],
  // R to the neutral line 4 mm, X = 1800 × 4 ÷ (206000 × 0.8).
  ['former', { section: 'strip', of: 'own', yield: 1800, modulus: 206, thick: 0.8, inside: (2 * 4) / (1 - (3 * 7.2) / 164.8 + 4 * (7.2 / 164.8) ** 3) - 0.8 }, 'former', 7.2],
  ['push', { wire: 1, across: 'mean', size: 9, coils: 9.5, free: 30, load: 20 }, 'rate', 81000 / (8 * 729 * 7.5)],
  ['push', { wire: 1, across: 'mean', size: 9, coils: 9.5, free: 30, load: 20 }, 'stress', (35 / 32 + 0.615 / 9) * 8 * 20 * 9 / Math.PI],
  ['push', { wire: 1, across: 'mean', size: 9, by: 'rate', rate: 1.852, free: 30 }, 'coils', '9.5'],
  ['push', { wire: 1, across: 'mean', size: 9, coils: 9.5, free: 30, load: 20 }, 'stress-solid', (35 / 32 + 0.615 / 9) * 8 * (81000 / (8 * 729 * 7.5)) * 20.5 * 9 / Math.PI],
  ['pull', { wire: 1, across: 'mean', size: 8, coils: 20, tension: 10, load: 30 }, 'rate', 81000 / (8 * 512 * (20 + 81 / 200))],
  ['pull', { wire: 1, across: 'mean', size: 8, coils: 20, tension: 10, load: 30 }, 'free', 35],
  ['twist', { wire: 1.5, across: 'mean', size: 12, coils: 6, leg: 0, 'other-leg': 0, load: 400 }, 'per-turn', (200000 * 1.5 ** 4) / (10.8 * 12 * 6)],
  ['rivet', { diameter: 3, hole: 3.1, grip: 5 }, 'length', 5 + 3 * (1.4 / 3) * (0.75 * 1.6 ** 2 + 0.7 ** 2) + 5 * (3.1 ** 2 / 9 - 1)],
  ['taper', { kind: 'one', one: 20 }, 'slide', Math.atan(1 / 40) / rad(1)],
  ['taper', { kind: 'half', angle: 30, between: 100, length: '' }, 'over', 100 * Math.tan(rad(30))],
  ['trial', { head: 20, tail: 20.06, apart: 100, between: 150 }, 'tailstock', 0.045],
  ['standard', { series: 'morse', number: 3 }, 'slide', Math.atan(0.60235 / 24) / rad(1)],
  ['disks', { kind: 'angle', large: '1.5in', small: '1in', centres: '5in' }, 'included', (2 * Math.asin(0.05)) / rad(1)],
  ['square', { disk: '2in', angle: '15 10' }, 'head', 25.4 * (1 + 1 / Math.tan(rad(91 / 12)))],
  ['square', { kind: 'angle', disk: 20, head: 40 }, 'angle', (2 * Math.atan(1 / 3)) / rad(1)],
  ['ball', { kind: 'dome', diameter: 20, stock: 20, tool: 'square', cuts: 24 }, 'cuts', 24],
  ['radius', { radius: 5, bar: 20 }, 'blank', 20],
  ['arc', { chord: 40, height: 4 }, 'radius', 52],
];

const told = (figure) => figure.mm ?? figure.degrees ?? figure.value ?? figure;

test('every sum answers as worked out by other means', () => {
  for (const [name, asked, key, wanted] of ROWS) {
    const found = told(sum(name, asked).figures[key]);
    if (typeof wanted === 'number') near(found, wanted, 1e-9 * Math.max(1, Math.abs(wanted)));
    else assert.equal(found, wanted, `${name} ${key}`);
  }
});

test('every sum has a row here, answers to what is usual, and says its care and source', () => {
  const all = sums();
  assert.deepEqual(all.filter(({ sum: key }) => !ROWS.some(([name]) => name === key)).map(({ sum: key }) => key), []);
  for (const { sum: key, asks } of all) {
    const usual = Object.fromEntries(asks.map(({ key: ask, usual: text }) => [ask, text]));
    const answer = sum(key, usual);
    assert.deepEqual(answer.figures, sum(key).figures, key);
    assert.ok(answer.source.length > 0 && answer.working.length > 0 && answer.drawing.startsWith('<svg'), key);
  }
});

test('the leaves that come nearest, out of those owned', () => {
  const { tables } = sum('tilt', { angle: '0 45', span: 40, limit: '0 1' }, { feelers: '0.0025in 0.018in 0.02in 0.4 0.005in' });
  assert.deepEqual(tables.choices.map(({ pieces }) => pieces), ['20 thou', '18 thou + 2.5 thou']);
});

test('what cannot be is refused by name', () => {
  refusal(() => sum('tilt', { angle: 90 }), 'angle', 'OutOfRange');
  refusal(() => sum('tilt', { span: 'abc' }), 'span', 'NotANumber');
  refusal(() => sum('tilt', { rule: 'cosine' }), 'rule', 'Unknown');
  refusal(() => sum('tilt', { angel: 1 }), 'angel', 'Unknown');
  refusal(() => sum('fit', { does: 'own', classes: 'H7/q6' }), 'classes', 'NotANumber');
  refusal(() => sum('fit', { size: 20, does: 'own', classes: 't6' }), 'classes', 'Conflict');
  refusal(() => sum('fit', { size: 501 }), 'size', 'OutOfLengths');
  refusal(() => sum('chain', { lengths: '8 0.1' }), 'lengths', 'NotANumber');
  refusal(() => sum('bend', { legs: '1 40' }), 'legs', 'Conflict');
  refusal(() => sum('tlit'), 'sum', 'Unknown');
  refusal(() => sum('tilt', { span: NaN }), 'span', 'WrongKind');
});
