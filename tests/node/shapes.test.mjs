// Ratchets, splines, flats, clock wheels and cams in the JavaScript package, as it is built.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { handturn, near, refusal } from './rig.mjs';

const { ratchet, faceTeeth, splines, keyway, flats, clockPair, camLobe, camSteps } = handturn;

const rad = (degrees) => (degrees * Math.PI) / 180;

test('a ratchet: cutter and land, cutter and depth, depth and land', () => {
  const wheel = { teeth: 48, outside: 40 };
  const cut = ratchet({ ...wheel, cutter: 60, land: 0.2 });
  // The back runs from the end of the land, at 7.5° less 0.2 / 20, down at 60° to the upright face.
  const end = rad(7.5) - 0.2 / 20;
  const depth = 20 - (20 * Math.cos(end) - (20 * Math.sin(end)) / Math.tan(rad(60)));
  near(cut.depth.mm, depth);
  near(cut.depth.inch, depth / 25.4);
  near(cut.tooth, 52.5);
  assert.deepEqual([cut.parts, cut.cutter, cut.offset.mm], [48, 60, 0]);
  near(ratchet({ ...wheel, cutter: 60, depth: depth.toFixed(9) }).land.mm, 0.2, 1e-6);
  near(ratchet({ ...wheel, depth: depth.toFixed(9), land: 0.2 }).cutter, 60, 1e-6);
  near(ratchet({ ...wheel, cutter: 60, undercut: 10 }).offset.mm, 20 * Math.sin(rad(10)));
  near(faceTeeth({ teeth: 12, cutter: 60 }).raised, (Math.acos(1 / 3) * 180) / Math.PI);
  refusal(() => ratchet({ teeth: 3, outside: 40, cutter: 60 }), 'teeth', 'OutOfRange');
  refusal(() => ratchet({ ...wheel, cutter: 60, depth: 9 }), 'depth', 'OutOfLengths');
  refusal(() => ratchet({ ...wheel, cutter: 60, undercut: 31 }), 'undercut', 'OutOfRange');
  refusal(() => ratchet({ ...wheel, land: 1 }), 'cutter', 'Empty');
  refusal(() => ratchet({ ...wheel, cuter: 60 }), 'cuter', 'Unknown');
});

test('splines by their figures and by a fit, and keyways', () => {
  const shaft = splines({ keys: 6, major: 30, minor: 26, key: 6, cutter: 4 });
  near(shaft.depth.mm, 15 - Math.sqrt(13 * 13 - 3 * 3));
  assert.deepEqual([shaft.offset.exact, shaft.across.exact, shaft.between.left], ['5 mm', '10 mm', 'Ridge']);
  const inch = splines({ keys: 4, major: '1 in', fit: 'B', cutter: '1/8 in' });
  assert.deepEqual([inch.minor.exact, inch.key.exact], ['19.05 mm', '6.1214 mm']);
  refusal(() => splines({ keys: 4, major: 25, fit: 'C', cutter: 3 }), 'keys', 'Conflict');
  refusal(() => splines({ keys: 6, major: 30, minor: 26, key: 6, cutter: 13 }), 'cutter', 'OutOfLengths');
  refusal(() => splines({ keys: 2, major: 30, minor: 26, key: 6, cutter: 4 }), 'keys', 'OutOfRange');
  near(keyway({ shaft: 20, width: 6, side: 3.5 }).over.mm, 20 - 3.5 - (10 - Math.sqrt(91)));
});

test('flats on stock that reaches the corners, and that does not', () => {
  const found = flats({ sides: 4, across: 5, stock: 6.5, cutter: 3 });
  assert.deepEqual([found.cut.depth.exact, found.cut.over_first.exact, found.cut.passes], ['0.75 mm', '5.75 mm', 2]);
  near(found.sharp.stock.mm, 5 * Math.SQRT2);
  assert.ok(found.cut.round.mm > 0);
  assert.equal(flats({ sides: 6, across: 10, stock: 12 }).cut.round, null);
  near(flats({ sides: 5, across: 10 }).sharp.to_corner.mm, 5 + 5 / Math.cos(rad(36)));
  refusal(() => flats({ sides: 1, across: 5 }), 'stock', 'Empty');
  refusal(() => flats({ sides: 4, across: 5, stock: 5 }), 'stock', 'OutOfLengths');
});

test('a clock wheel and its pinion', () => {
  const pair = clockPair({ wheel: 64, leaves: 8, module: 0.8 });
  assert.deepEqual([pair.ratio, pair.centres.exact, pair.form], [8, '28.8 mm', 'Medium']);
  near(pair.wheel.outside.mm, 0.8 * (64 + 1.9 * 1.5521810506570048), 1e-9);
  near(pair.pinion.outside.mm, 0.8 * (8 + 2 * 0.67));
  near(clockPair({ wheel: 60, leaves: 8, module: 1, rule: 'common' }).wheel.outside.mm, 62.76);
  refusal(() => clockPair({ wheel: 64, leaves: 5, module: 1 }), 'leaves', 'OutOfRange');
  refusal(() => clockPair({ wheel: 8, leaves: 12, module: 1 }), 'wheel', 'Conflict');
});

test('a cam with a raised head, and by steps', () => {
  const lobe = { rise: 4, over: 90, geared: 20, face: 6 };
  const set = camLobe({ ...lobe, raised: 53 });
  assert.equal(set.lead.exact, '16 mm');
  near(set.tilt, (Math.asin(0.8) * 180) / Math.PI);
  near(set.gives.mm, 5 * Math.sin(rad(53)));
  assert.equal(camLobe(lobe).gives, null);
  refusal(() => camLobe({ ...lobe, geared: 15 }), 'geared', 'OutOfLengths');
  refusal(() => camLobe({ ...lobe, raised: 91 }), 'raised', 'OutOfRange');
  refusal(() => camLobe({ ...lobe, over: 361 }), 'over', 'OutOfRange');
  const steps = camSteps({ rise: 4, over: 90, steps: 90, radius: 30, mill: 10 });
  assert.deepEqual([steps.turn, steps.each.exact], [1, '2/45 mm']);
  near(steps.cusp.mm, 0.008032584874765543, 1e-12);
});
