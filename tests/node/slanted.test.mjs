// Helical wheels, the table geared for them, worms, bevels and racks in the JavaScript package, as it is built.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { handturn, near, refusal } from './rig.mjs';

const { helical, helixGears, wormPair, bevelPair, rack } = handturn;

const rad = (degrees) => (degrees * Math.PI) / 180;
const deg = (radians) => (radians * 180) / Math.PI;

const screw = { screw: '4 tpi', gears: '24x2 28 32 40 44 48 56 64 72 86 100' };
const wheel = { diametralPitch: 10, teeth: 24, helix: 45, face: '1 in' };

test('a helical wheel and the gears of the table for it', () => {
  const found = helical(wheel);
  near(found.pitch.inch, 2.4 * Math.SQRT2);
  near(found.outside.inch, 2.4 * Math.SQRT2 + 0.2);
  near(found.lead.inch, 2.4 * Math.PI * Math.SQRT2);
  near(found.virtual_teeth, 24 * 2 ** 1.5);
  assert.deepEqual([found.parts, found.depth.exact, found.table_swings, found.beyond_swing], [24, '5.715 mm', 'Anticlockwise', false]);
  assert.equal(helical({ ...wheel, hand: 'left' }).table_swings, 'Clockwise');
  const { machine, trains } = helixGears({ ...wheel, mill: screw });
  assert.equal(machine.exact, '254 mm');
  for (const { pairs, exact, lead, off, off_arcsec } of trains) {
    const turns = pairs.reduce((all, { driver, driven }) => (all * driver) / driven, 1);
    near(lead.mm, 254 / turns);
    near(off.mm, lead.mm - found.lead.mm);
    near(off_arcsec, (deg(Math.atan((Math.PI * found.pitch.mm) / lead.mm)) - 45) * 3600, 1e-6);
    assert.equal(exact, false);
  }
  refusal(() => helical({ ...wheel, helix: 90 }), 'helix', 'OutOfRange');
  refusal(() => helical({ ...wheel, teeth: 3 }), 'teeth', 'OutOfRange');
  refusal(() => helical({ ...wheel, diametralPitch: 0 }), 'diametralPitch', 'Zero');
  refusal(() => helical({ ...wheel, module: 2 }), 'module', 'WrongKind');
  refusal(() => helical({ ...wheel, helx: 2 }), 'helx', 'Unknown');
  refusal(() => helixGears({ ...wheel, mill: { ...screw, gears: '' } }), 'mill.gears', 'Empty');
  refusal(() => helixGears({ ...wheel, mill: { ...screw, screw: 0 } }), 'mill.screw', 'OutOfRange');
});

test('a lead that a drawing gives is cut exactly, and short ones off the spindle', () => {
  const asked = { lead: '27 in', diameter: 50, face: 40, grooves: 8, mill: screw };
  const [best] = helixGears(asked).trains;
  assert.deepEqual([best.exact, best.lead.exact, best.off.mm, best.teeth_on], [true, '685.8 mm', 0, null]);
  const short = helixGears({ ...asked, lead: '0.154 in', geared: 'spindle', mill: { ...screw, gears: '40 44 56 100' } }).trains[0];
  assert.deepEqual([short.exact, short.pairs.at(-1).driven, short.teeth_on], [true, 56, 7]);
  refusal(() => helixGears({ ...asked, lead: 10_000 }), 'lead', 'OutOfRange');
  refusal(() => helixGears({ ...asked, diameter: 0 }), 'diameter', 'Zero');
});

test('a worm by its pitch, and a wheel with it', () => {
  const { worm, wheel: none } = wormPair({ pitch: '1/4 in', pressureAngle: 14.5, depth: 'old', starts: 3, diameter: '1.25 in' });
  assert.deepEqual([worm.lead.exact, none], ['19.05 mm', null]);
  near(worm.lead_angle, deg(Math.atan(0.75 / (Math.PI * 1.25))));
  near(worm.depth.inch, (0.25 / Math.PI) * 2.157);
  const pair = wormPair({ module: 2, diameter: 20, teeth: 40, face: 12, leave: 0.2 });
  near(pair.worm.lead.mm, 2 * Math.PI);
  near(pair.wheel.centres.mm, 50);
  near(pair.wheel.throat.mm, 84);
  near(pair.wheel.outside.mm, 2 * (50 - Math.sqrt(64 - 36)));
  near(pair.wheel.gash_depth.mm, 4.3);
  near(pair.wheel.free.centres.mm, 48);
  assert.deepEqual([pair.wheel.parts, pair.wheel.ratio], [40, 40]);
  refusal(() => wormPair({ module: 2, diameter: 4 }), 'diameter', 'OutOfLengths');
  refusal(() => wormPair({ module: 2, diameter: 20, teeth: 40, face: 16 }), 'face', 'OutOfLengths');
  refusal(() => wormPair({ module: 2, diameter: 20, teeth: 40, face: 12, leave: 5 }), 'leave', 'OutOfLengths');
  refusal(() => wormPair({ module: 2, diameter: 20, starts: 0 }), 'starts', 'OutOfRange');
});

test('bevel wheels of both depths', () => {
  const asked = { module: 2, teeth: 20, mate: 40, face: 10 };
  const cone = Math.hypot(20, 40);
  const tapering = bevelPair({ ...asked, along: 'tapering' });
  near(tapering.cone.mm, cone);
  near(tapering.wheels[0].pitch_angle, deg(Math.atan(0.5)));
  near(tapering.wheels[0].cutting_angle, deg(Math.atan(0.5) - Math.atan(2.5 / cone)));
  near(tapering.wheels[1].outside.mm, 80 + 4 * Math.cos(Math.atan(2)));
  assert.deepEqual([tapering.offset, tapering.wheels[0].roll], [null, null]);
  const parallel = bevelPair({ ...asked, along: 'parallel' });
  near(parallel.cone.mm, cone + 10);
  near(parallel.large_module.mm, (2 * (cone + 10)) / cone);
  near(parallel.offset.mm, Math.PI / 2);
  assert.deepEqual(parallel.wheels.map(({ roll }) => roll), [4.5, 2.25]);
  refusal(() => bevelPair({ ...asked, along: 'tapering', shafts: 120 }), 'shafts', 'Conflict');
  refusal(() => bevelPair({ ...asked, along: 'tapering', face: 45 }), 'face', 'OutOfLengths');
  refusal(() => bevelPair({ ...asked, along: 'deep' }), 'along', 'WrongKind');
});

test('a rack off the dial', () => {
  const { readings, thickness, worst, adjacent } = rack({ module: 3, gaps: 20, division: 0.02, marks: 250 });
  assert.equal(readings.length, 20);
  near(thickness.mm, 1.5 * Math.PI);
  const offs = readings.map(({ turns, mark, wanted, off }, gap) => {
    near(wanted.mm, 3 * Math.PI * gap);
    near(off.mm, (turns * 250 + mark) * 0.02 - 3 * Math.PI * gap);
    return off.mm;
  });
  near(worst.mm, Math.max(...offs.map(Math.abs)));
  near(adjacent.mm, Math.max(...offs.slice(1).map((off, k) => Math.abs(off - offs[k]))));
  refusal(() => rack({ module: 3, gaps: 1, division: 0.02, marks: 250 }), 'gaps', 'OutOfRange');
  refusal(() => rack({ module: 3, gaps: 20, division: 0, marks: 250 }), 'division', 'Zero');
});
