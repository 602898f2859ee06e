// Dials in the JavaScript package, as it is built: answers in plain data, refusals by name.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { handturn, near, refusal } from './rig.mjs';

const {
  dialMarks, dialMark, dialStops, dialFigures, vernier, vernierReads, dialWidth, dialDiameter, dialsForScrew, fineDialSteps, fineDial, divide,
} = handturn;

const lines = [{ every: 1, length: 3 }, { every: 10, length: 6 }, { every: 5, length: '4.5 mm' }];
const numbers = { every: 10, perMark: 1, climbs: 'clockwise', zero: false };
const marks = dialMarks({ count: 365, lines, numbers });

const refused = (call, field, cause, message) => assert.match(refusal(call, field, cause).message, message);

test('the marks of a dial are those of a question', () => {
  assert.deepEqual(marks.kinds, [{ length: '6 mm' }, { length: '4.5 mm' }, { length: '3 mm' }]);
  assert.deepEqual(marks.pattern, [0, 2, 2, 2, 2, 1, 2, 2, 2, 2]);
  const head = { plates: '15 16 17 18 19 20' };
  assert.ok(divide({ marks, head }).groups.length > 0);
  assert.equal('numbers' in dialMarks({ count: 100, lines }), false);
});

test('every mark is cut once, whichever way the numbers climb', () => {
  for (const climbs of ['clockwise', 'anticlockwise']) {
    const ring = dialMarks({ count: 365, lines, numbers: { ...numbers, climbs } });
    const cut = Array.from({ length: 365 }, (_, index) => dialMark({ marks: ring, index }));
    assert.equal(new Set(cut.map(({ mark }) => mark)).size, 365);
    const stamped = cut.flatMap(({ number }) => number ?? []);
    assert.deepEqual(stamped.toSorted((a, b) => a - b), [...Array.from({ length: 36 }, (_, k) => 10 * k + 10), 365]);
    assert.deepEqual(cut[0], dialMark({ marks: ring, mark: 0 }));
    assert.equal(cut.filter(({ kind }) => kind === 0).length, 37);
    assert.equal(cut[1].mark, climbs === 'clockwise' ? 364 : 1);
    assert.equal(dialMark({ marks: ring, index: 1, workTurns: 'anticlockwise' }).mark, climbs === 'clockwise' ? 1 : 364);
  }
});

test('the saddle stops, and what its dial cannot show is told', () => {
  const { start, ends } = dialStops({ marks, lead: 5, round: 100, from: 1 });
  assert.deepEqual([start.turns, start.mark, start.travel.mm], [0, 20, 1]);
  assert.deepEqual(ends.map(({ reading, off }) => [reading.turns, reading.mark, off.mm]), [[1, 40, 0], [1, 10, 0], [0, 80, 0]]);
  const thou = dialStops({ marks, lead: '8 tpi', round: 125, runs: 'down' }).ends;
  assert.deepEqual(thou.map(({ reading }) => [reading.turns, reading.mark]), [[1, 14], [1, 73], [0, 7]]);
  for (const [k, { length, off }] of thou.entries()) {
    near(length.mm - off.mm, [6, 4.5, 3][k], 1e-12);
    assert.ok(Math.abs(off.inch) <= 0.001);
  }
});

test('figures stand where they are read', () => {
  const rows = [
    ['handwheel', true, 'clockwise', 'Front', true], ['handwheel', false, 'clockwise', 'Back', false],
    ['table', true, 'clockwise', 'Back', false], ['face', true, 'clockwise', 'Centre', true], ['face', false, 'anticlockwise', 'Outside', true],
  ];
  for (const [on, upright, climbs, feet, right] of rows) {
    const found = dialFigures({ on, upright, climbs });
    assert.deepEqual([found.feet, found.climbs_right], [feet, right], `${on} ${upright} ${climbs}`);
    assert.equal(found.rises, climbs === 'clockwise' ? 'Anticlockwise' : 'Clockwise');
  }
});

test('a vernier and its readings are exact', () => {
  const bevel = vernier({ main: 1, least: "5'", long: true, double: true, diameter: 80 });
  assert.deepEqual([bevel.divisions, bevel.over_marks, bevel.lines], [12, 23, 25]);
  assert.deepEqual([bevel.division.turns, bevel.spans.turns], [[23, 4320], [23, 180]]);
  near(bevel.spans_arc.mm, Math.PI * 80 * 23 / 180, 1e-12);
  for (let line = 0; line < 12; line += 1) {
    const [num, den] = [12 * 7 + line, 12 * 360];
    assert.deepEqual(vernierReads({ main: 1, least: "5'", reading: [num, den] }), { mark: 7, line, left: { turns: [0, 1], degrees: 0 } });
  }
  const { main, least, division_arc } = vernier({ count: 365, parts: 10, retrograde: true });
  assert.deepEqual([main.turns, least.turns, division_arc], [[1, 365], [1, 3650], null]);
});

test('widths, diameters and dials for a screw', () => {
  const { arc, chord, line } = dialWidth({ count: 365, diameter: 160 });
  near(arc.mm, Math.PI * 160 / 365, 1e-12);
  near(chord.mm, 160 * Math.sin(Math.PI / 365), 1e-12);
  near(line.greatest.mm, arc.mm / 5, 1e-12);
  near(dialDiameter({ count: 365, width: arc.mm }).by_arc.mm, 160, 1e-9);
  const { handy, for_step } = dialsForScrew({ lead: 3, step: '0.001 in' });
  assert.deepEqual(handy.map(({ marks: n, step, inch }) => [n, step.exact, inch]), [
    [300, '0.01 mm', false], [150, '0.02 mm', false], [120, '0.025 mm', false], [60, '0.05 mm', false], [30, '0.1 mm', false],
    [15, '0.2 mm', false], [12, '0.25 mm', false],
  ]);
  assert.deepEqual([for_step.marks, for_step.off.mm], [118, 0.0028]);
});

test('a fine dial: the arm that is exact, and the error of its tangent', () => {
  const [first] = fineDialSteps({ lead: 1, radius: 60 });
  assert.deepEqual([first.at_work.turns, first.marks], [[1, 1296000], 86]);
  near(first.radius.mm, 1296000 / (2 * Math.PI * 86 * 40), 1e-9);
  const asked = { lead: 1, radius: 59.961, marks: 86, step: '1"', turns: 3, within: '0.5"' };
  const { worst, most_marks, least_holes, shift, travel } = fineDial(asked);
  assert.equal(least_holes, Math.ceil(5400 / 43 / 2));
  const error = (n) => Math.atan(n / 59.961) * (1296000 / (2 * Math.PI)) / 40 - 86 * n;
  near(worst.arcsec, error(3), 1e-9);
  assert.ok(Math.abs(error(most_marks / 86)) <= 0.5 && Math.abs(error((most_marks + 1) / 86)) > 0.5);
  assert.deepEqual([shift.turns, travel.turns], [[43, 16200], [43, 5400]]);
});

test('refusals name the value', () => {
  refused(() => dialMarks({ count: 365, lines: [{ every: 2, length: 3 }] }), 'lines', 'Conflict', /./);
  refused(() => dialMarks({ count: 365, lines: [{ every: 0, length: 3 }] }), 'lines.0.every', 'OutOfRange', /1/);
  refused(() => dialMarks({ count: 1, lines }), 'count', 'OutOfRange', /10,000/);
  refused(() => dialMark({ marks, index: 365 }), 'index', 'OutOfRange', /364/);
  refused(() => dialStops({ marks, lead: 0, round: 100 }), 'lead', 'Zero', /0/);
  refused(() => dialStops({ marks, lead: 5, round: 1 }), 'round', 'OutOfRange', /2/);
  refused(() => dialFigures({ on: 'rim', climbs: 'clockwise' }), 'on', 'WrongKind', /handwheel or table or face/);
  refused(() => vernier({ main: 1, least: "7'" }), 'least', 'NotWhole', /whole/);
  refused(() => vernier({ count: 12, parts: 100 }), 'parts', 'Conflict', /./);
  refused(() => vernier({ main: 0, least: "5'" }), 'main', 'OutOfRange', /180/);
  refused(() => dialWidth({ count: 365, diameter: -1 }), 'diameter', 'OutOfLengths', /10000|10,000|mm/);
  refused(() => dialsForScrew({ lead: 3, step: 0 }), 'step', 'Zero', /0/);
  refused(() => fineDial({ lead: 1, radius: 60, marks: 86, step: '1"', turns: 61, within: 0 }), 'turns', 'Conflict', /./);
  refused(() => fineDialSteps({ lead: 1, radius: 0 }), 'radius', 'Zero', /0/);
  refused(() => vernier({ main: 1, least: "5'", wide: true }), 'wide', 'Unknown', /./);
});
