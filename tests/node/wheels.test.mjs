// Straight wheels in the JavaScript package, as it is built: answers in plain data, refusals by name.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { handturn, near, refusal } from './rig.mjs';

const {
  wheelSizes, wheelCutter, wheelBlank, whichWheel, teethOfBlank, wheelPitch, wheelSwing, meshWheels, openCentres, teethOfPair,
  toothCaliper, toothSpan, toothPins, trialGaps,
} = handturn;

/** The clock's wheels. */
const wheel = { teeth: 64, module: 1 };
const pair = { module: 1, first: { teeth: 64 }, second: { teeth: 38 } };

test('answers are plain data all the way down, every length in both units', () => {
  let lengths = 0;
  const plain = (value) => {
    if (value === null || ['string', 'boolean'].includes(typeof value)) return true;
    if (typeof value === 'number') return Number.isFinite(value);
    if ('mm' in value) {
      lengths += 1;
      near(value.mm / 25.4, value.inch, 1e-12 * Math.abs(value.mm));
      assert.ok(value.exact === null ? value.within >= 0 && value.within < 1e-9 : value.within === 0, JSON.stringify(value));
    }
    return [Object.prototype, Array.prototype].includes(Object.getPrototypeOf(value)) && Object.values(value).every(plain);
  };
  const swing = { outside: 66, depth: 2.25, centreHeight: 100, cutter: 63, collar: 40, beside: 30 };
  const answers = [
    wheelSizes(wheel), wheelCutter({ teeth: 64 }), wheelBlank({ ...wheel, outside: 65.9 }), whichWheel({ outside: 66, teeth: 64 }),
    teethOfBlank({ outside: 66, module: 1 }), wheelPitch({ circularPitch: '1 in' }), wheelSwing(swing), meshWheels({ ...pair, centres: 51 }),
    openCentres({ ...pair, centres: 51, measured: 0.02, wanted: 0.05 }), teethOfPair({ module: 1, centres: 51, ratio: [38, 64] }), toothCaliper(wheel),
    toothSpan({ ...wheel, reading: 23 }), toothPins({ ...wheel, pin: 1.7 }), trialGaps({ ...wheel, reading: 23.4 }),
  ];
  for (const answer of answers) {
    assert.ok(plain(answer), JSON.stringify(answer));
    assert.deepEqual(JSON.parse(JSON.stringify(answer)), answer, 'nothing is undefined');
  }
  assert.ok(lengths > 60, `${lengths}`);
});

test('a wheel from the blank to the cutter, by module and by diametral pitch', () => {
  const sizes = wheelSizes(wheel);
  assert.deepEqual([sizes.outside_diameter.exact, sizes.whole_depth.exact, sizes.depth_rule], ['66 mm', '2.25 mm', 'coarse']);
  assert.deepEqual([sizes.undercut, sizes.thin_top, sizes.fewest_teeth], [false, false, 18]);
  const inch = wheelSizes({ teeth: 32, diametralPitch: 8, pressureAngle: '14.5' });
  assert.deepEqual([inch.outside_diameter.inch, inch.depth_rule], [4.25, 'old']);
  near(inch.whole_depth.inch, 0.2696, 0.00005);
  // Whatever the set, one cutter serves each wheel, and both numberings mean the same.
  for (const halves of [false, true]) {
    for (let teeth = 12; teeth <= 300; teeth += 1) {
      const [by, other] = ['diametralPitch', 'module'].map((numbering) => wheelCutter({ teeth, numbering, halves }));
      assert.equal(by.cutter.number + other.cutter.number, 9);
      assert.equal(by.cutter.other_number, other.cutter.number);
      assert.ok(by.in_range && by.cutter.least <= teeth && (by.until ?? Infinity) >= teeth);
    }
  }
  const found = wheelBlank({ ...wheel, outside: 65.9 });
  assert.deepEqual([found.depth.exact, found.addendum.exact, found.height], ['2.2 mm', '0.95 mm', 'Fair']);
  assert.equal(teethOfBlank({ outside: 66.2, module: 1 }).over.exact, '0.2 mm');
  assert.equal(whichWheel({ outside: '3.25 in', teeth: 24 }).nearest_diametral_pitch.diametral_pitch, 8);
  near(wheelPitch({ chord: 2.5, teeth: 48 }).diameter.mm, 38.225, 0.001);
  assert.equal(wheelSwing({ outside: 225, depth: 2.25, centreHeight: 100, cutter: 63, collar: 40 }).table_clears, false);
});

test('a pair is set for a backlash, measured, and set again', () => {
  const { centres } = meshWheels({ ...pair, backlash: '0.05' });
  const at = meshWheels({ ...pair, centres: centres.mm });
  near(at.backlash.mm, 0.05, 1e-9);
  near(at.between_flanks.mm, 0.05 * Math.cos((at.working_angle.value * Math.PI) / 180), 1e-9);
  assert.deepEqual([at.runs_smoothly, at.fouls], [true, [false, false]]);
  const again = openCentres({ ...pair, centres: 51, measured: 0.02, wanted: 0.05 });
  near(meshWheels({ ...pair, first: { teeth: 64, thinned: 0.02 }, centres: again.centres.mm }).backlash.mm, 0.05, 1e-9);
  const { sum, first, second, whole } = teethOfPair({ module: 3, centres: 54, ratio: 1.25 });
  assert.deepEqual([sum, first, second, whole], [36, 16, 20, true]);
});

test('what is measured agrees with what was asked', () => {
  near(toothCaliper({ teeth: 20, module: 1 }).thickness.mm, 1.56918, 0.00001);
  const span = toothSpan({ teeth: 20, module: 1, across: 3 });
  near(span.reading.mm, 7.6604, 0.0001);
  const { thickness } = wheelSizes({ teeth: 20, module: 1 });
  near(toothSpan({ teeth: 20, module: 1, across: 3, reading: span.reading.mm }).thickness.mm, thickness.mm, 1e-9);
  const { pin, over } = toothPins({ teeth: 20, module: 1, owned: [0.9, 1.728, 3] });
  assert.equal(pin.exact, '1.728 mm');
  near(over.reading.mm, 22.39, 0.0001);
  assert.equal(toothPins({ teeth: 20, module: 1 }).over, null);
  near(trialGaps({ teeth: 20, module: 1, across: 3, reading: span.reading.mm }).deeper.mm, 0, 1e-9);
});

test('what cannot be is refused by name, with what is allowed', () => {
  const rows = [
    [() => wheelSizes({ teeth: 3, module: 1 }), 'teeth', 'OutOfRange'],
    [() => wheelSizes({ teeth: 64, diametralPitch: 0 }), 'diametralPitch', 'Zero'],
    [() => wheelSizes({ teeth: 64, module: 1, diametralPitch: 8 }), 'module', 'WrongKind'],
    [() => wheelSizes({ teeth: 64.5, module: 1 }), 'teeth', 'NotWhole'],
    [() => wheelSizes({ teeth: 64, module: 1, helix: 20 }), 'helix', 'Unknown'],
    [() => wheelSizes({ teeth: 8, module: 1, shift: 0.8 }), 'outside', 'Pointed'],
    [() => wheelCutter({ teeth: 11 }), 'teeth', 'TooFewTeeth'],
    [() => wheelBlank({ ...wheel, outside: 63 }), 'outside', 'OutOfLengths'],
    [() => toothPins({ teeth: 20, module: 1, pin: 0.5 }), 'pin', 'PinFalls'],
    [() => meshWheels({ ...pair, second: { teeth: 3 }, centres: 51 }), 'second.teeth', 'OutOfRange'],
    [() => meshWheels({ ...pair, centres: 60 }), 'centres', 'OutOfLengths'],
  ];
  for (const [call, field, cause] of rows) {
    const error = refusal(call);
    assert.deepEqual([error.field, error.cause], [field, cause], error.message);
    assert.ok(error.message.length > 20, error.message);
  }
  assert.deepEqual(refusal(() => wheelSizes({ teeth: 3, module: 1 })).limits, { least: 4, greatest: 5000 });
});
