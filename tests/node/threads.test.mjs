// Threads in the JavaScript package, as it is built: answers in plain data, refusals by name.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { handturn, near, refusal } from './rig.mjs';

const {
  threads, readThread, threadSizes, threadBlank, tappingDrills, whichThread, infeed, passes, pass, wires, overWires, fromWires, gearsFor,
} = handturn;

/** The clock's wheel arbor. */
const arbor = { thread: 'M6x0.75', class: '6g' };
const lathe = { screw: '8 tpi', gears: '20x2 25 30 35 40 45 50 55 60 65 75 127' };

test('answers are plain data all the way down, every length in both units', () => {
  let lengths = 0;
  const plain = (value) => {
    if (value === null || ['string', 'boolean'].includes(typeof value)) return true;
    if (typeof value === 'number') return Number.isFinite(value);
    if ('mm' in value) {
      lengths += 1;
      near(value.mm / 25.4, value.inch, 1e-12 * Math.abs(value.mm));
      assert.ok(value.exact === null ? value.within >= 0 && value.within < 1e-6 : value.within === 0, JSON.stringify(value));
      if (value.exact !== null && value.mm >= 0) {
        const [num, den] = handturn.readLength(value.exact);
        near(num / den, value.mm, 4e-16 * value.mm);
      }
    }
    return [Object.prototype, Array.prototype].includes(Object.getPrototypeOf(value)) && Object.values(value).every(plain);
  };
  const answers = [
    readThread('M6x0.75-6g'), threadSizes({ thread: '1/4-20 UNC' }), threadBlank(arbor), tappingDrills({ thread: 'M6', sets: ['metric', 'number'] }),
    whichThread({ diameter: '0.187 in', pitch: '32 tpi' }), infeed(arbor), passes(arbor), pass(arbor, 1), wires({ ...arbor, owned: [0.45] }),
    overWires({ ...arbor, wire: 0.45 }), fromWires({ ...arbor, wire: 0.45, reading: 6.25 }), gearsFor({ ...{ thread: 'M6x0.75' }, lathe }),
  ];
  for (const answer of answers) {
    assert.ok(plain(answer), JSON.stringify(answer));
    assert.deepEqual(JSON.parse(JSON.stringify(answer)), answer, 'nothing is undefined');
  }
  assert.ok(lengths > 150, `${lengths}`);
});

test('every name of every series reads again, among those it can stand for', () => {
  const all = threads();
  assert.equal(all.length, 24);
  let names = 0;
  for (const { series, names: sizes } of all) {
    for (const name of sizes) {
      names += 1;
      const found = readThread(name);
      // What two series list stands under the first: 1-8 UN is 1-8 UNC.
      const [first] = found;
      const again = name.endsWith(' UN') && first.form === 'Unified' && `-${first.tpi} UN` === name.slice(name.indexOf('-'));
      assert.ok(again || found.some((one) => one.name === name && one.series === series), `${series} ${name}`);
    }
  }
  assert.ok(names > 500, `${names}`);
});

test('a name that fits several gives them all; one is picked', () => {
  const found = readThread('10');
  assert.ok(found.length > 1);
  for (const [pick, { major }] of found.entries()) {
    assert.deepEqual(threadSizes({ thread: { name: '10', pick } }).thread.major, major);
  }
  const error = refusal(() => threadSizes({ thread: { name: '10', pick: found.length } }));
  assert.deepEqual([error.field, error.limits], ['thread.pick', { least: 0, greatest: found.length - 1 }]);
  const [steep] = readThread('Tr16x8 P4 LH');
  assert.deepEqual([steep.starts, steep.hand, steep.lead.mm, steep.pitch.exact], [2, 'Left', 8, '4 mm']);
});

test('limits of size are the printed ones', () => {
  const of = (thread, wanted, side) => threadSizes({ thread, class: wanted, side }).limits[0];
  // ISO 965-2 and ASME B1.1, as tests/published holds them.
  assert.equal(of('M6', '6g').pitch_diameter.max.exact, '5.324 mm');
  assert.equal(of('M6', '6H').minor.min.exact, '4.917 mm');
  near(of('1/4-20 UNC', '2A').pitch_diameter.max.inch, 0.2164, 1e-9);
  near(of('1/4-20 UNC', '2B').pitch_diameter.min.inch, 0.2175, 1e-9);
  assert.equal(of('1/4 BSW', 'medium', 'nut').side, 'nut');
  assert.deepEqual(threadSizes({ thread: { form: 'square', major: 20, pitch: 4 } }).limits, []);
  assert.ok(threadSizes({ thread: 'M6' }).limits.length >= 6);
});

test('the arbor from the blank to the last measurement', () => {
  const blank = threadBlank(arbor);
  assert.deepEqual([blank.class, blank.side, blank.to.exact], ['6g', 'screw', '5.908 mm']);
  assert.ok(blank.die.mm < 6 && blank.limits.min.mm < blank.to.mm);
  const depths = infeed({ ...arbor, work: 5.91, nose: { radius: 0.108 } });
  near(depths.straight.mm, 0.451, 0.001);
  assert.deepEqual([depths.set_over, depths.on_bed_scale, depths.swing, depths.drift], [29.5, 60.5, 'Anticlockwise', 'Headstock']);
  assert.equal(infeed({ ...arbor, feed: 'flank' }).set_over, 30);
  assert.equal(infeed({ ...arbor, feed: { short: "1°" } }).set_over, 29);
  const cut = { ...arbor, nose: { flat: 0 }, depth: 0.518, first: 0.18, least: 0.04 };
  const all = passes(cut);
  assert.deepEqual([all.count, all.left_out, all.passes.length], [9, 0, 9]);
  assert.deepEqual(all.passes.map(({ number }) => pass(cut, number)), all.passes);
  assert.deepEqual(all.passes.map(({ spring }) => spring), [...Array(8).fill(false), true]);
  const some = passes({ ...cut, from: 3, most: 4 });
  assert.deepEqual([some.count, some.left_out, some.passes], [9, 5, all.passes.slice(2, 6)]);
  const again = passes({ ...cut, left: 0.1, dialAt: 21 });
  assert.equal(again.passes.filter(({ spring }) => !spring).at(-1).reading.from_zero, 26);
  const serving = wires({ ...arbor, owned: [0.3, '0.45 mm', 0.9] });
  assert.equal(serving.chosen.exact, '0.45 mm');
  near(serving.best.mm, 0.75 / Math.sqrt(3), 1e-12);
  const over = overWires({ ...arbor, wire: 0.45 });
  near(over.max.over_wires.mm, 6.1921, 0.0001);
  assert.equal(over.max.pitch_diameter.exact, '5.491 mm');
  const back = fromWires({ ...arbor, wire: 0.45, reading: (over.min.over_wires.mm + 0.001).toFixed(6) });
  near(back.pitch_diameter.mm, 5.392, 1e-5);
  assert.equal(back.verdict, 'Within');
  assert.equal(fromWires({ ...arbor, wire: 0.45, reading: 6.3, setOver: 29.5 }).verdict, 'MoreToCut');
});

test('a hole before a tap, by number drills and by those owned', () => {
  const [best] = tappingDrills({ thread: '1/4-20 UNC', percent: 75, sets: ['number'] });
  assert.deepEqual([best.drill.set, best.drill.name, Math.round(best.percent)], ['Number', '7', 75]);
  const [own] = tappingDrills({ thread: 'M6', drills: [5, '5.1', '13/64 in'] });
  assert.equal(own.drill.set, null);
  assert.ok(tappingDrills({ thread: '2 BA' }).length > 1);
});

test('gears of two, four and six for a lead; a cap on steps', () => {
  const exact = gearsFor({ thread: 'M6x0.75', lathe });
  assert.deepEqual(exact.trains[0].pairs, [{ driver: 30, driven: 127 }]);
  assert.deepEqual([exact.trains[0].exact, exact.trains[0].cuts.exact, exact.finished], [true, '0.75 mm', true]);
  const without = { screw: '8 tpi', gears: lathe.gears.replace(' 127', '') };
  const lacking = gearsFor({ lead: 0.75, lathe: without });
  assert.ok(!lacking.trains[0].exact && lacking.trains[0].off_ppm !== 0);
  assert.ok(lacking.lacking.train.exact);
  const worm = gearsFor({ module: 1, lathe: without, six: 'always', steps: 100_000_000 });
  assert.deepEqual([worm.trains[0].exact, worm.lead.exact, worm.tried_six, worm.finished], [false, null, true, true]);
  near(worm.lead.mm, Math.PI, 1e-12);
  const four = gearsFor({ module: 1, lathe: without });
  assert.ok(Math.abs(worm.trains[0].off_ppm) <= Math.abs(four.trains[0].off_ppm));
  assert.equal(gearsFor({ module: 1, lathe: without, six: 'always', steps: 1 }).finished, false);
  assert.equal(gearsFor({ module: 1, lathe: without, six: 5_000 }).tried_six, false);
  near(gearsFor({ diametralPitch: 20, lathe: without }).lead.inch, Math.PI / 20, 1e-12);
  assert.equal(gearsFor({ lead: '40 tpi', starts: 2, lathe: { ...without, gearbox: [1, [1, 2]] } }).lead.exact, '1.27 mm');
});

test('what was measured is told apart', () => {
  const found = whichThread({ diameter: '0.187 in', pitch: '32 tpi' });
  assert.deepEqual(found.slice(0, 4).map(({ thread }) => thread.series), ['Bsf', 'Cycle', 'Unf', 'Ba']);
  assert.deepEqual([found[0].reasons, found[1].reasons[0]], [[], 'Angle']);
  assert.deepEqual(whichThread({ diameter: 900, pitch: 0.06 }), []);
});

test('NaN, fractions and negatives are refused by name', () => {
  const row = (call, field, cause, message = /./) => {
    const error = refusal(call);
    assert.deepEqual([error.field, error.cause], [field, cause], error.message);
    assert.match(error.message, message);
    return error;
  };
  row(() => threadSizes(), '', 'Empty', /object/);
  row(() => threadSizes({}), 'thread', 'Empty', /name of a thread/);
  row(() => threadSizes({ thread: 6 }), 'thread', 'WrongKind');
  row(() => threadSizes({ thread: 'M6', colour: 1 }), 'colour', 'Unknown');
  row(() => readThread(6), 'text', 'WrongKind', /text/);
  row(() => readThread('M6 gold'), 'text', 'NotANumber', /gold/);
  const own = (more) => () => threadSizes({ thread: { form: 'metric', major: 20, pitch: 1.5, ...more } });
  row(own({ pitch: 0 }), 'thread.pitch', 'OutOfRange', /0\.05 to 200 mm/);
  row(own({ pitch: NaN }), 'thread.pitch', 'WrongKind', /NaN/);
  row(own({ pitch: [3, 0] }), 'thread.pitch', 'Zero');
  row(own({ pitch: [1.5, 1] }), 'thread.pitch.0', 'NotWhole', /1\.5/);
  row(own({ major: -20 }), 'thread.major', 'OutOfRange');
  row(own({ major: Infinity }), 'thread.major', 'WrongKind');
  row(own({ starts: 1.5 }), 'thread.starts', 'NotWhole', /1\.5/);
  row(own({ starts: -1 }), 'thread.starts', 'OutOfRange', /1 to 60/);
  row(own({ starts: NaN }), 'thread.starts', 'WrongKind', /NaN/);
  row(own({ starts: 2 ** 53 }), 'thread.starts', 'Overflow');
  row(own({ form: 'round' }), 'thread.form', 'WrongKind', /metric or unified/);
  row(own({ form: { angle: 200, crestFlat: '1/8', rootFlat: '1/8' } }), 'thread.form', 'OutOfRange', /5 and 150/);
  row(() => threadSizes({ thread: 'M6', class: '2A' }), 'class', 'Conflict', /2A/);
  for (const number of [NaN, 1.5, 0, -1, 1e6]) {
    assert.equal(refusal(() => pass(arbor, number)).field, 'number', `${number}`);
  }
  assert.deepEqual(refusal(() => pass(arbor, 1e6)).limits, { least: 1, greatest: passes(arbor).count });
  row(() => passes({ ...arbor, most: 1.5 }), 'most', 'NotWhole');
  row(() => passes({ ...arbor, most: 421 }), 'most', 'OutOfRange', /1 to 420/);
  row(() => passes({ ...arbor, first: 0.001, least: 0.0001, dial: { division: 0.0001 } }), 'least', 'OutOfLengths', /0\.001 to/);
  const sinks = row(() => overWires({ ...arbor, wire: 0.1 }), 'wire', 'WireSinks', /Use 0\.\d+ to 0\.\d+ mm/);
  assert.ok(sinks.limits.least_mm < sinks.limits.greatest_mm);
  row(() => overWires({ ...arbor, wire: 3 }), 'wire', 'WireRides');
  row(() => overWires({ ...arbor, wire: NaN }), 'wire', 'WrongKind', /NaN/);
  row(() => overWires({ thread: { form: 'square', major: 20, pitch: 4 }, wire: 2 }), 'thread', 'Conflict', /square/);
  row(() => infeed({ ...arbor, nose: { flat: 0.4 } }), 'nose', 'Blunt', /at most/);
  row(() => infeed({ ...arbor, nose: {} }), 'nose', 'WrongKind', /flat or radius/);
  row(() => infeed({ thread: 'M6', side: 'nut', work: 7 }), 'work', 'Conflict');
  row(() => gearsFor({ lead: 0.75 }), 'lathe', 'Empty');
  row(() => gearsFor({ lead: 0.75, lathe: { ...lathe, gears: [20, 0] } }), 'lathe.gears', 'OutOfRange', /8 to 250/);
  row(() => gearsFor({ lead: 0.75, lathe: { ...lathe, gears: [20, NaN] } }), 'lathe.gears.1', 'WrongKind', /NaN/);
  row(() => gearsFor({ lead: 4000, lathe }), 'lead', 'OutOfRange', /mm/);
  row(() => gearsFor({ lead: 0.75, lathe, steps: 0.5 }), 'steps', 'NotWhole');
  row(() => gearsFor({ lead: 0.75, lathe, six: -1 }), 'six', 'OutOfRange');
  row(() => gearsFor({ lathe }), 'lead', 'WrongKind', /one of thread/);
  row(() => whichThread({ diameter: 5, pitch: 0 }), 'pitch', 'OutOfRange');
  row(() => tappingDrills({ thread: 'M6', percent: 120 }), 'percent', 'OutOfRange', /30 to 100/);
  row(() => tappingDrills({ thread: 'M6', sets: ['gold'] }), 'sets.0', 'WrongKind');
});
