// The package's own answers, as JSON text, are what this computer finds natively: every number of parts with both sets
// of plates, every thread of every series, wheels of 4 to 200 teeth.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const SETS = {
  A: '15 16 17 18 19 20 / 21 23 27 29 31 33 / 37 39 41 43 47 49',
  B: '24 25 28 30 34 37 38 39 41 42 43 / 46 47 49 51 53 54 57 58 59 62 66',
};
const GEARS = '24 24 28 32 40 44 48 56 64 72 86 100';

/** What a cargo command prints, line by line. */
function printed(command) {
  const options = { cwd: root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'], maxBuffer: 1 << 28 };
  return execFileSync('bash', ['-c', `. web/tool/ground.sh && host_cargo ${command}`], options).split('\n');
}

const handturn = await import('../../web/dist/npm/handturn.js');
handturn.initSync(readFileSync(new URL('../../web/dist/npm/handturn.wasm', import.meta.url)));
const hashed = (lines) => lines.reduce((hash, line) => hash.update(`${line}\n`), createHash('sha256')).digest('hex');

test('the JSON text of 2 to 10000 parts is the native core\'s', () => {
  const found = [];
  for (const [set, plates] of Object.entries(SETS)) {
    const owned = { plates, gears: GEARS };
    for (let from = 0; from <= 10_000; from += 1000) {
      const hash = createHash('sha256');
      for (let parts = Math.max(from, 2); parts <= Math.min(from + 999, 10_000); parts += 1) {
        hash.update(JSON.stringify(handturn.divide({ parts, head: owned })) + '\n');
      }
      found.push(`${set} ${from} ${hash.digest('hex')}`);
    }
  }
  const lines = printed('test --quiet --locked --workspace --test digest');
  const wanted = lines.filter((line) => /^[AB] \d+ [0-9a-f]{64}$/.test(line));
  assert.equal(wanted.length, 22);
  assert.deepEqual(found, wanted);
});

/** An answer or a refusal as JSON text. */
function told(call) {
  try {
    return JSON.stringify(call());
  } catch (error) {
    const { field, cause, limits, message } = error;
    return JSON.stringify({ field, cause, limits, message });
  }
}

/** Sizes, limits, blank, drills, passes, wires, and what the best wire reads, of all that a name stands for. */
function ofName(name) {
  const lines = [told(() => handturn.readThread(name))];
  for (const pick of handturn.readThread(name).keys()) {
    const asked = { thread: { name, pick } };
    for (const about of ['threadSizes', 'threadBlank', 'tappingDrills', 'passes', 'wires']) {
      lines.push(told(() => handturn[about](asked)));
    }
    const { best } = JSON.parse(lines.at(-1));
    if (best) lines.push(told(() => handturn.overWires({ ...asked, wire: Math.round(best.mm * 100) / 100 })));
  }
  return lines;
}

test('the JSON text of every thread of every series is what is found natively', () => {
  const native = new Map();
  for (const line of printed('run --quiet --locked -p handturn-web --example threads')) {
    const [series, text] = line.split('\t');
    if (text !== undefined) native.set(series, [...(native.get(series) ?? []), text]);
  }
  const all = handturn.threads();
  assert.deepEqual(all.map(({ series }) => series), [...native.keys()]);
  assert.ok(all.length >= 22);
  let over = 0;
  for (const { series, names } of all) {
    const [found, wanted] = [names.flatMap(ofName), native.get(series)];
    over += found.filter((line) => line.startsWith('{"wire"')).length;
    if (hashed(found) === hashed(wanted)) continue;
    const k = found.findIndex((line, place) => line !== wanted[place]);
    assert.equal(found[k], wanted[k], `${series}, line ${k + 1}`);
    assert.equal(found.length, wanted.length, series);
  }
  assert.ok(over > 500, `${over} read over wires`);
});

/** Sizes as web/examples/wheels.rs asks for them. */
const WHEELS = ['"module":1', '"module":"0.5"', '"diametralPitch":8,"pressureAngle":"14.5"', '"module":2,"pressureAngle":25,"shift":[1,5],"thinned":"0.02"'];

/** All that is asked of one wheel there, in the same order. */
function ofWheel(size, teeth) {
  const wheel = { ...JSON.parse(`{${size}}`), teeth };
  const { shift, thinned, teeth: first, ...rack } = wheel;
  const outside = `${teeth + 1}.9`;
  const pair = { ...rack, first: { teeth: first }, second: { teeth: 38 } };
  return [
    () => handturn.wheelSizes(wheel), () => handturn.wheelCutter({ teeth, halves: true }), () => handturn.wheelCutter({ teeth, numbering: 'module' }),
    () => handturn.wheelBlank({ ...wheel, outside }), () => handturn.whichWheel({ outside, teeth }), () => handturn.wheelPitch({ chord: '2.5', teeth }),
    () => handturn.toothCaliper(wheel), () => handturn.toothSpan(wheel), () => handturn.toothPins({ ...wheel, owned: [0.9, 1.7, 3, '0.216 in'] }),
    () => handturn.trialGaps({ ...wheel, reading: outside }), () => handturn.meshWheels({ ...pair, backlash: '0.05' }),
    () => handturn.meshWheels({ ...pair, centres: `${Math.floor((teeth + 39) / 2)}` }),
    () => handturn.openCentres({ ...pair, centres: 60, measured: '0.02', wanted: '0.05' }),
  ].map(told);
}

test('the JSON text of wheels of 4 to 200 teeth is what is found natively', () => {
  const lines = printed('run --quiet --locked -p handturn-web --example wheels').filter((line) => line.includes('\t'));
  let [at, refused] = [0, 0];
  for (const size of WHEELS) {
    for (let teeth = 4; teeth <= 200; teeth += 1) {
      for (const found of ofWheel(size, teeth)) {
        assert.equal(`${size}\t${found}`, lines[at], `${teeth} teeth`);
        at += 1;
        refused += found.startsWith('{"field"') ? 1 : 0;
      }
    }
  }
  assert.equal(at, lines.length);
  assert.ok(at > 10_000 && refused > 100 && refused < at / 2, `${at} answers, ${refused} of them refusals`);
});
