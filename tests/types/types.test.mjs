// The package's types: what uses the package as they allow compiles, what they forbid
// does not, and they name what the built package exports.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const compiler = here('../browser/node_modules/typescript/bin/tsc');

/** What the compiler says of a project: line number and message each. */
function faults(project) {
  const { status, stdout, error } = spawnSync(process.execPath, [compiler, '--pretty', 'false', '-p', here(project)], { encoding: 'utf8' });
  assert.equal(error, undefined);
  const found = stdout.split('\n').filter((line) => line.includes('error TS'));
  assert.equal(found.length > 0, status !== 0, stdout);
  return found.map((line) => ({ line: Number(line.match(/\((\d+),/)?.[1]), text: line }));
}

test('whatever the package gives can be used by its types', () => {
  assert.deepEqual(faults('tsconfig.json'), []);
});

test('what the types forbid is refused, line by line', () => {
  const lines = readFileSync(here('refused.ts'), 'utf8').split('\n');
  const wanted = lines.flatMap((line, k) => (line.startsWith('// expected: ') ? [k + 2] : []));
  assert.ok(wanted.length >= 22);
  const found = [...new Set(faults('refused.json').map(({ line }) => line))];
  assert.deepEqual(found, wanted);
});

test('the types name what the built package exports', async () => {
  const built = Object.keys(await import('../../web/dist/npm/handturn.js')).sort();
  const uses = readFileSync(here('uses.ts'), 'utf8').match(/export const all[^{]*\{([^}]*)\}/)[1];
  assert.deepEqual(uses.match(/\w+/g).sort(), built);
});
