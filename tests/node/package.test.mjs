// The JavaScript package as others get it: packed, installed afresh, asked from Node.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath, pathToFileURL } from 'node:url';

const built = fileURLToPath(new URL('../../web/dist/npm/', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'handturn-npm-'));
after(() => rmSync(folder, { recursive: true }));

const npm = (...given) => execFileSync('npm', [...given, '--silent', '--offline', '--no-audit', '--no-fund'], { cwd: folder, encoding: 'utf8' });
writeFileSync(join(folder, 'package.json'), '{"private":true,"type":"module"}');
npm('install', npm('pack', built).trim());
writeFileSync(join(folder, 'use.mjs'), "export * from 'handturn';\nexport const wasm = import.meta.resolve('handturn/handturn.wasm');\n");
const handturn = await import(pathToFileURL(join(folder, 'use.mjs')).href);
const { divide, ways, place, step, working, HandturnError } = handturn;

const PLATES = '15 16 17 18 19 20 / 21 23 27 29 31 33 / 37 39 41 43 47 49';
const GEARS = '24x2 28 32 40 44 48 56 64 72 86 100';
const owned = { plates: PLATES, gears: GEARS };

/** What is thrown, which must be a refusal. */
function refusal(call) {
  try {
    call();
  } catch (error) {
    assert.ok(error instanceof HandturnError && error instanceof Error, String(error));
    return error;
  }
  return assert.fail('nothing was refused');
}

test('starts from bytes, and starting twice does no harm', async () => {
  const bytes = readFileSync(fileURLToPath(handturn.wasm));
  await handturn.init(bytes);
  handturn.initSync(bytes);
});

test('answers are plain objects of plain numbers, all the way down', () => {
  const plain = (value) => {
    if (value === null || ['number', 'string', 'boolean'].includes(typeof value)) {
      return typeof value !== 'number' || Number.isSafeInteger(value);
    }
    const prototype = Object.getPrototypeOf(value);
    return [Object.prototype, Array.prototype].includes(prototype) && Object.values(value).every(plain);
  };
  for (const parts of [127, 64, 51, 9973]) {
    const answer = divide({ parts, head: owned });
    assert.ok(answer.groups.length > 0);
    assert.ok(plain(answer), `${parts}`);
    assert.deepEqual(JSON.parse(JSON.stringify(answer)), answer, 'nothing is undefined');
  }
  assert.ok(plain(handturn.head(owned)));
});

test('127 by differential, walked to the end', () => {
  const request = { parts: 127, head: owned };
  const [best] = ways(request);
  const { circle, holes, train } = best.way.Differential;
  assert.deepEqual([holes, circle.holes, train.first], [13, 39, { driver: 56, driven: 24 }]);
  assert.deepEqual(best.errors, { worst: [0, 1], adjacent: [0, 1], closing: [0, 1] });
  const home = place(request, best.way, 127);
  assert.deepEqual(home.stands, [1, 1]);
  assert.deepEqual(home.pin, { number: 13, of: 39 });
  let hole = 0;
  for (let k = 0; k < 127; k += 1) {
    const [leg] = step(request, best.way, k).legs;
    assert.equal(leg.from.number, hole);
    hole = leg.to.number;
  }
  assert.equal(hole, 13);
  assert.ok(working(request, best.way).length > 0);
  assert.equal(ways(request, 'quickest').length, ways(request).length);
});

test('angles, lists and marks are asked in the same way', () => {
  const [plain] = ways({ angle: "17°30'", times: 3, head: owned });
  assert.equal(plain.way.Plain.circle.holes, 18);
  assert.deepEqual(ways({ angle: [7, 144], times: 3, head: owned }), ways({ angle: 17.5, times: 3, head: owned }));
  const list = { list: [0, '10°30′', [1, 7]], head: owned };
  assert.deepEqual(place(list, ways(list)[0].way, 2).wanted, [1, 7]);
  assert.equal(ways({ marks: { count: 365, kinds: [{ length: 5 }, { length: '2 mm' }], pattern: [0, 1, 1, 1, 1] }, head: owned })[0].errors.worst[0], 0);
});

test('a head is given as text or as data, in part or as a whole', () => {
  const data = { plates: PLATES.split(' / ').map((plate) => plate.split(' ').map(Number)), gears: [24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100] };
  assert.deepEqual(handturn.head(data), handturn.head(owned));
  assert.deepEqual(handturn.head({ ratio: 40.5 }).ratio, [81, 2]);
  assert.deepEqual(handturn.head({ ratio: [81, 2] }), handturn.head({ ratio: '40.5 : 1' }));
  assert.deepEqual(handturn.head({ armsLeast: [1, 36] }), handturn.head());
  assert.equal(handturn.head({ tilted: true }).tilted, true);
  const left = divide({ parts: 127, head: { ...owned, tilted: true } }).left_out;
  assert.ok(left.some(({ kind, reason }) => kind === 'Differential' && reason === 'Tilted'));
});

test('counts at the border are refused by name, never wrapped', () => {
  const refused = (parts, cause) => {
    const error = refusal(() => divide({ parts }));
    assert.deepEqual([error.field, error.cause], ['parts', cause], `${parts}`);
    return error;
  };
  refused(undefined, 'Empty');
  refused(null, 'Empty');
  refused(NaN, 'WrongKind');
  refused(Infinity, 'WrongKind');
  refused('127', 'WrongKind');
  refused(true, 'WrongKind');
  refused([127], 'WrongKind');
  refused(127.5, 'NotWhole');
  refused(2 ** 53, 'Overflow');
  for (const parts of [-127, 0, 1, 10_001, 2 ** 31, 2 ** 32 + 127, 2 ** 53 - 1, -(2 ** 53 - 1)]) {
    const error = refused(parts, 'OutOfRange');
    assert.deepEqual(error.limits, { least: 2, greatest: 10_000 });
    assert.match(error.message, /from 2 to 10,000/);
  }
  const index = (k) => refusal(() => step({ parts: 64, head: owned }, ways({ parts: 64, head: owned })[0].way, k));
  assert.deepEqual([index(64).field, index(64).limits], ['index', { least: 0, greatest: 63 }]);
  assert.equal(index(-1).cause, 'OutOfRange');
  assert.equal(index(0.5).cause, 'NotWhole');
});

test('everything else that is wrong is a refusal too', () => {
  const row = (call, field, cause, message) => {
    const error = refusal(call);
    assert.deepEqual([error.field, error.cause], [field, cause]);
    assert.match(error.message, message);
  };
  const itself = {};
  itself.head = itself;
  row(() => divide(), '', 'Empty', /object/);
  row(() => divide({}), 'question', 'WrongKind', /parts, angle, list or marks/);
  row(() => divide({ part: 5 }), 'part', 'Unknown', /not known/);
  row(() => divide(itself), 'request', 'WrongKind', /too deep/);
  row(() => divide({ parts: 64, head: { ratio: 0 } }), 'head.ratio', 'OutOfRange', /above 0/);
  row(() => divide({ parts: 64, head: { plates: '' , gears: '7' } }), 'head.gears', 'OutOfRange', /8 to 250/);
  row(() => divide({ parts: 64, head: { plates: [[15, 15]] } }), 'head.plates', 'Twice', /15 circle/);
  row(() => divide({ parts: 64, head: { plates: [[]] } }), 'head.plates', 'Empty', /circles/);
  row(() => divide({ parts: 64, head: { plates: [[15, NaN]] } }), 'head.plates.0.1', 'WrongKind', /NaN/);
  row(() => divide({ parts: 64, head: { plateStop: 'gone' } }), 'head.plateStop', 'WrongKind', /withdraws or fixed/);
  row(() => divide({ parts: 64, head: { colour: 'grey' } }), 'head.colour', 'Unknown', /not known/);
  row(() => divide({ angle: "7°60'" }), 'angle', 'SixtyOrMore', /below 60/);
  row(() => divide({ angle: 361 }), 'angle', 'OutOfRange', /0 and 360/);
  row(() => divide({ angle: [1, 0] }), 'angle', 'Zero', /0/);
  row(() => divide({ list: Array(10_000).fill(1) }), 'list', 'TooMany', /400/);
  row(() => divide({ list: '1' }), 'list', 'Empty', /two angles/);
  row(() => ways({ parts: 64 }, 'fastest'), 'order', 'WrongKind', /closest or quickest/);
  row(() => place({ parts: 64 }, { Plain: {} }, 0), 'way', 'WrongKind', /out of an answer/);
  row(() => place({ parts: 64 }, { Direct: { notches: -1, sense: 'Clockwise' } }, 0), 'way', 'WrongKind', /way/);
  row(() => handturn.readAngle('x'), 'text', 'NotANumber', /number/);
  row(() => handturn.readNumber(5), 'text', 'WrongKind', /text/);
  row(() => handturn.readNumber('9007199254740993'), 'answer', 'Overflow', /2\^53/);
  row(() => handturn.nearest(1, 0, 5), 'den', 'Zero', /0/);
  row(() => handturn.nearest(1.5, 1, 5), 'num', 'NotWhole', /1\.5/);
});

test('texts are read as people type them', () => {
  assert.deepEqual(handturn.readNumber('1 3/8'), [11, 8]);
  assert.deepEqual(handturn.readRatio('40.5 : 1'), [81, 2]);
  assert.deepEqual(handturn.readAngle("17°30'"), [7, 144]);
  assert.deepEqual(handturn.readAngles('0; 90; 1/3 turn'), [[0, 1], [1, 4], [1, 3]]);
  assert.deepEqual(handturn.readLength('1/4 in'), [127, 20]);
  assert.deepEqual(handturn.readPlates('49(51.5) / 20'), [
    { circles: [{ holes: 49, radius: [103, 2] }] }, { circles: [{ holes: 20, radius: null }] }]);
  assert.deepEqual(handturn.readGears('24x2 28'), [{ teeth: 24, count: 2 }, { teeth: 28, count: 1 }]);
  for (const n of [2 ** 31, 2 ** 32 + 1, 2 ** 53 - 1]) assert.deepEqual(handturn.nearest(n, 1, 1).fraction, [n, 1]);
});

test('every function is described, and every description is a function', () => {
  const described = readFileSync(join(built, 'handturn.d.ts'), 'utf8').matchAll(/^export (?:function|class) (\w+)/gm);
  const there = Object.keys(handturn).filter((name) => name !== 'wasm');
  assert.deepEqual([...described].map(([, name]) => name).sort(), there.sort());
});

test('the README shows what really comes out', () => {
  const readme = readFileSync(join(built, 'README.md'), 'utf8');
  for (const [first, consts, least] of [
    ['const head = { ratio', 3, 9], ['const head = { plates', 3, 7], ['const arbor', 2, 12], ['const wheel', 2, 14],
    ['const slanted', 3, 14], ['const marks', 1, 9],
  ]) {
    const [, set] = readme.match(new RegExp(`\`\`\`js\n(${first}[\\s\\S]+?)\`\`\``));
    const lines = set.split('\n').filter((line) => line.startsWith('const '));
    const rows = [...set.matchAll(/console\.log\((.+)\); \/\/ (.+)/g)];
    assert.ok(lines.length === consts && rows.length >= least, first);
    const run = (text) => new Function(...Object.keys(handturn), `{ ${lines.join('\n')}\nreturn (${text}); }`)(...Object.values(handturn));
    for (const [, call, shown] of rows) assert.deepEqual(run(call), run(shown), call);
  }
  const error = refusal(() => divide({ parts: 127.5 }));
  for (const key of ['field', 'cause', 'message']) {
    assert.ok(readme.includes(`// error.${key}${' '.repeat(9 - key.length)}'${error[key]}'`), error[key]);
  }
});
