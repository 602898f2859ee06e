// Values of a card in the JavaScript package, as it is built.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { handturn, near, refusal } from './rig.mjs';

const { cardValues } = handturn;

/** Values, one of them, and what it must be: exact by the drawing, exact in force. */
const ROWS = [
  [{ bore: { drawing: 6, measured: 6.02 }, plug: '= bore - 2*0.05' }, 'plug', [59, 10], [148, 25]],
  [{ plug: '=BORE-0,1', bore: '1/4 in' }, 'plug', [25, 4], [25, 4]],
  [{ a: '= b', b: '= c', c: { drawing: '5 thou' } }, 'a', [127, 1000], [127, 1000]],
  // A measured value cuts the chain: what it waited for no longer moves what follows it.
  [{ a: { drawing: 1, measured: 2 }, b: { drawing: '= a * 3', measured: 5 }, c: '= b + 1' }, 'c', [4, 1], [6, 1]],
  [{ n: { drawing: 64, kind: 'number' }, m: { drawing: '1 1/2', kind: 'number' }, d: '= (n + 2) * m * 1 mm' }, 'd', [99, 1], [99, 1]],
  [{ lean: { drawing: "17°30'", kind: 'angle' }, twice: { drawing: '= 2*lean - 5', kind: 'angle' } }, 'twice', [1, 12], [1, 12]],
  [{ a: { drawing: 7 }, b: 3, part: { drawing: '= a/b', kind: 'number' } }, 'part', [7, 3], [7, 3]],
];

const exact = (amount) => amount.fraction ?? amount.turns;

test('values follow each other exactly, by the drawing and as measured', () => {
  for (const [given, name, drawing, inForce] of ROWS) {
    const found = cardValues(given)[name];
    assert.deepEqual([exact(found.drawing), exact(found.in_force)], [drawing, inForce], name);
    const { fraction, turns, ...decimals } = found.in_force;
    const [num, den] = fraction ?? turns;
    const wanted = { length: { mm: num / den, inch: num / den / 25.4 }, angle: { degrees: (360 * num) / den }, number: { value: num / den } }[found.kind];
    assert.deepEqual(Object.keys(decimals), Object.keys(wanted));
    for (const [key, value] of Object.entries(wanted)) near(decimals[key], value, 1e-12 * Math.max(1, Math.abs(value)));
  }
});

test('every value is there under its own name, with what follows it', () => {
  const found = cardValues({ Bore: 6, plug: '= bore - 0.1', pin: '= plug / 2 + bore', rim: 80 });
  assert.deepEqual(Object.entries(found).map(([name, { kind, followed_by }]) => [name, kind, followed_by]), [
    ['Bore', 'length', ['plug', 'pin']], ['plug', 'length', ['pin']], ['pin', 'length', []], ['rim', 'length', []],
  ]);
  assert.deepEqual(cardValues({}), {});
});

test('a circle is refused with the way round', () => {
  const refused = refusal(() => cardValues({ x: '= a', a: '= b + 1', b: '= c', c: '= a / 2' }), 'a.drawing', 'Cycle');
  assert.equal(refused.message, 'a.drawing: It goes round in a circle: a waits for b waits for c waits for a.');
  assert.match(refusal(() => cardValues({ own: '= own' }), 'own.drawing', 'Cycle').message, /own waits for own\./);
  // As measured there is no circle, by the drawing there is.
  refusal(() => cardValues({ a: '= b', b: { drawing: '= a', measured: 3 } }), 'a.drawing', 'Cycle');
});

test('what cannot be is refused by name', () => {
  refusal(() => cardValues({ plug: '= bore' }), 'plug.drawing', 'Unknown');
  // What is wrong is told, not what waits for it.
  refusal(() => cardValues({ pin: '= plug', plug: '= bore' }), 'plug.drawing', 'Unknown');
  refusal(() => cardValues({ n: { drawing: 3, kind: 'number' }, a: 2, b: '= a + n' }), 'b.drawing', 'Units');
  refusal(() => cardValues({ a: 2, b: '= a * a' }), 'b.drawing', 'Units');
  refusal(() => cardValues({ a: '6x' }), 'a.drawing', 'NotANumber');
  refusal(() => cardValues({ a: { drawing: 6, measured: 'six' } }), 'a.measured', 'NotANumber');
  refusal(() => cardValues({ a: { measured: 6 } }), 'a.drawing', 'Empty');
  refusal(() => cardValues({ a: '= 1 / 0' }), 'a.drawing', 'Zero');
  refusal(() => cardValues({ a: { drawing: 6, kind: 'mass' } }), 'a.kind', 'Unknown');
  refusal(() => cardValues({ a: { drawing: 6, mesured: 6 } }), 'a.mesured', 'Unknown');
  refusal(() => cardValues({ '2nd': 6 }), '2nd', 'Conflict');
  refusal(() => cardValues({ bore: 6, BORE: 6 }), 'BORE', 'Twice');
  refusal(() => cardValues({ a: NaN }), 'a.drawing', 'WrongKind');
  refusal(() => cardValues(7), 'values', 'WrongKind');
  refusal(() => cardValues(), 'values', 'Empty');
  refusal(() => cardValues({ a: { drawing: '= 1/999999999 * 1/999999937', kind: 'number' } }), 'a', 'Overflow');
  const many = Object.fromEntries(Array.from({ length: 33 }, (_, k) => [`v${k}`, k]));
  assert.deepEqual(refusal(() => cardValues(many), 'values', 'TooMany').limits, { most: 32 });
});
