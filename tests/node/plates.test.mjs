// Error budgets and the plate one lacks in the JavaScript package, as it is built.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { handturn, near, refusal } from './rig.mjs';

const { ways, divide, step, budget, makePlate, plateRing, plateHoles, drumTape, drumFor, touchingDisks } = handturn;

const head = { plates: '15 16 17 18 19 20 / 21 23 27 29 31 33 / 37 39 41 43 47 49' };
const none = { wheel: 0, worm: 0, hole: 0, pinPlay: 0, plateRunOut: 0, blankRunOut: 0, reading: 0 };

test('the plate of 127 by nearest holes: rounding and drilling alone', () => {
  const request = { parts: 127, head };
  const first = divide(request).groups.find(({ kind }) => kind === 'NearestHole').closest[0].way;
  const plan = makePlate({ ...request, sources: none }, first);
  assert.deepEqual(plan.needs, { turns: [40, 127], holes: 127, owned: null });
  assert.deepEqual([plan.circle, plan.parts, plan.enough], [{ plate: 3, holes: 127 }, { count: 127, every: 1 }, 2]);
  const [one, two] = plan.generations;
  assert.deepEqual(one.way, first);
  // 63/127 of a hole of the 49, and 0.05 mm at 55 mm: 328″ + 188″; a fortieth at the work.
  near(one.plate.sum.total.arcsec, 328.03 + 187.51, 0.05);
  near(one.work.sum.total.arcsec, (328.03 + 187.51) / 40, 0.01);
  near(one.plate.sum.total.mm, (515.54 / 1_296_000) * Math.PI * 110, 1e-5);
  near(two.plate.sum.total.arcsec, 187.51 + 515.54 / 40, 0.05);
  assert.deepEqual([one.pays, two.pays, plan.generations[2].pays], [true, true, false]);
  assert.deepEqual(one.plate.terms.map(({ source, spread }) => [source, spread]), [['Rounding', 'Known'], ['Drilling', 'Even']]);
  assert.equal(step({ parts: 127 }, two.way, 0).legs[0].spaces, 40, '40 holes on the 127');
});

test('every way has a budget, whose sizes go with each other', () => {
  const all = { ...head, gears: '24x2 28 32 40 44 48 56 64 72 86 100', handwheel: true, handwheelMarks: 100, fineDial: true, fineShift: 1, fineMarks: 100, fineTravel: 12, fineSlack: 1 };
  const kinds = new Set();
  for (const parts of [24, 64, 69, 127]) {
    for (const { way, errors } of ways({ parts, head: all })) {
      kinds.add(Object.keys(way)[0]);
      const { rounding, terms, sum, dominant } = budget({ parts, head: all }, way);
      assert.deepEqual(rounding, errors);
      assert.equal(terms.some(({ source }) => source === 'Rounding'), errors.worst[0] !== 0);
      near(terms.reduce((total, term) => total + term.total.arcsec, 0), sum.total.arcsec, 1e-6);
      near(Math.hypot(...terms.map(({ rms }) => rms.arcsec)), sum.rms.arcsec, 1e-6);
      const greatest = Math.max(...terms.map(({ total }) => total.arcsec));
      assert.equal(terms.find(({ source }) => source === dominant).total.arcsec, greatest);
      for (const { total, adjacent, rms, adjacent_rms } of [...terms, sum]) {
        assert.ok(rms.arcsec <= total.arcsec * 1.000001 && adjacent_rms.arcsec <= adjacent.arcsec * 1.000001);
        assert.ok(adjacent.arcsec <= 2.000001 * total.arcsec && total.within < 1e-9);
        near(total.mm, (total.arcsec / 1_296_000) * Math.PI * 76.2, 1e-9);
      }
    }
  }
  assert.equal(kinds.size, 7);
});

test('the ancient wheels: what plate is needed, and what their teeth will have', () => {
  const needs = (parts) => makePlate({ parts, head }).needs;
  assert.deepEqual([127, 223, 235].map((parts) => needs(parts).holes), [127, 223, 47]);
  assert.deepEqual(needs(235).owned, { plate: 2, holes: 47 });
  for (const parts of [127, 223]) {
    const { generations, enough } = makePlate({ parts, head });
    const last = generations[enough - 1].work.sum;
    assert.ok(last.total.mm < 0.025 && last.rms.mm < 0.012, JSON.stringify(last));
  }
});

test('a ring is proposed, or what is in the way is said', () => {
  const asked = { holes: 127, drill: 1.5, rim: 60, rings: [{ radius: 52, drill: '1.5 mm' }], head: { ...head, pin: 1.5, reachLeast: 30, reachGreatest: 57 } };
  const fit = plateRing(asked);
  assert.equal(fit.radius.exact, '57 mm');
  near(fit.web.mm, 114 * Math.sin(Math.PI / 127) - 1.5, 1e-12);
  assert.deepEqual([fit.beside.exact, fit.to_rim.exact, fit.play.exact], ['3.5 mm', '2.25 mm', '0 mm']);
  const refused = (change) => {
    const { field, cause, limits } = refusal(() => plateRing({ ...asked, ...change }));
    return [field, cause, limits];
  };
  assert.deepEqual(refused({ radius: 30 }), ['ring', 'HolesMeet', { least_mm: 45.484, greatest_mm: 1000 }]);
  assert.deepEqual(refused({ radius: 58 }), ['ring', 'OutOfLengths', { least_mm: 30, greatest_mm: 57 }]);
  assert.deepEqual(refused({ radius: 53 }), ['ring', 'Conflict', null]);
  assert.deepEqual(refused({ drill: 1.4 }), ['drill', 'OutOfLengths', { least_mm: 1.5, greatest_mm: 2 }]);
  assert.deepEqual(refused({ holes: 1 })[0], 'holes');
});

test('what cannot be is refused by name, with what is allowed', () => {
  const refused = (change, first) => {
    const { field, cause, message } = refusal(() => makePlate({ parts: 127, head, ...change }, first));
    assert.ok(message.length > 20, message);
    return [field, cause];
  };
  assert.deepEqual(refused({ parts: 20 }), ['holes', 'OutOfRange']);
  assert.deepEqual(refused({ head: {} }), ['first', 'Conflict']);
  assert.deepEqual(refused({ sources: { hole: -1 } }), ['sources.hole', 'OutOfLengths']);
  assert.deepEqual(refused({ sources: { wheel: 2 } }), ['sources.wheel', 'OutOfRange']);
  assert.deepEqual(refused({ ring: '5 mm' }), ['ring', 'OutOfLengths']);
  assert.deepEqual(refused({ multiple: 1.5 }), ['multiple', 'NotWhole']);
  assert.deepEqual(refused({ parts: undefined, list: '0 10 25' }), ['list', 'Conflict']);
  assert.deepEqual(refused({}, { Plain: {} }), ['way', 'WrongKind']);
  const [{ way }] = ways({ parts: 64, head });
  assert.deepEqual(refused({}, way), ['way', 'Conflict'], 'no exact way of this plate');
});

test('holes by coordinates and by the dials of a table', () => {
  const asked = { holes: 131, ring: 55, centre: [60, 60], screws: { lead: 2.5, marks: 50, slack: 0.15 } };
  const { holes, worst } = plateHoles(asked);
  assert.equal(holes.length, 131);
  holes.forEach(({ degrees, from_centre: [x, y], from_edges, dial }, k) => {
    const angle = (2 * Math.PI * k) / 131;
    near(degrees, (360 * k) / 131, 1e-9);
    near(x.mm, 55 * Math.cos(angle), 1e-12);
    near(y.mm, 55 * Math.sin(angle), 1e-12);
    dial.forEach(({ shows: { turns, mark }, off }, axis) => {
      assert.ok(mark >= 0 && mark < 50 && Math.abs(off.mm) <= 0.025 + 1e-12);
      near(turns * 2.5 + mark * 0.05 - from_edges[axis].mm, off.mm, 1e-12);
    });
  });
  assert.deepEqual(holes[1].dial.map(({ shows, comes, past }) => [shows, comes, past]), [
    [{ turns: 45, mark: 49 }, 'Past', { turns: 45, mark: 24 }], [{ turns: 25, mark: 3 }, 'Straight', null],
  ]);
  assert.ok(worst.onwards.mm < 0.036 && worst.onwards_arcsec.arcsec > 50);
  const plain = plateHoles({ holes: 4, ring: '2 in', first: 90, sense: 'clockwise' });
  assert.deepEqual([plain.worst, plain.holes[0].dial], [null, null]);
  assert.deepEqual(plain.holes.map(({ from_centre }) => from_centre.map(({ inch }) => Math.round(inch))), [[0, 2], [2, 0], [0, -2], [-2, 0]]);
  const refused = (change) => refusal(() => plateHoles({ ...asked, ...change })).field;
  assert.deepEqual([{ holes: 1 }, { ring: 0 }, { sense: 'left' }, { centre: [1] }, { screws: { lead: 0, marks: 50 } }, { screws: { lead: 2, marks: 0 } }].map(refused),
    ['holes', 'ring', 'sense', 'centre', 'screws', 'screws.marks']);
});

test('a tape closes on its drum; disks touch', () => {
  const tape = drumTape({ parts: 131, drum: 120, thickness: 0.1, stretch: 1 });
  near(tape.length.mm, Math.PI * 120.1, 1e-10);
  near(tape.pitch.mm * 131, tape.length.mm, 1e-9);
  near(tape.lap.mm, Math.PI * 0.1201, 1e-12);
  near(drumFor({ parts: 131, pitch: '3', thickness: 0.1 }).drum.mm, (131 * 3) / Math.PI - 0.1, 1e-10);
  const { disk, central } = touchingDisks({ parts: 9, diameter: '7 3/8 in' });
  near(disk.inch, 2.5224, 5e-5);
  near(central.inch, 4.8526, 5e-5);
  assert.equal(refusal(() => drumTape({ parts: 131, drum: 0 })).field, 'drum');
  assert.equal(refusal(() => touchingDisks({ parts: 2, diameter: 50 })).field, 'parts');
});
