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

test('starts from bytes, and starting twice does no harm', async () => {
  const bytes = readFileSync(fileURLToPath(handturn.wasm));
  await handturn.init(bytes);
  handturn.initSync(bytes);
});

test('answers are plain objects of plain numbers', () => {
  assert.deepEqual(handturn.nearest(40, 127, 50), { fraction: { num: 11, den: 35 }, residual: { num: 3, den: 4445 } });
  assert.deepEqual(handturn.nearest(-3, 6, 9), { fraction: { num: -1, den: 2 }, residual: { num: 0, den: 1 } });
});

test('numbers at the border are refused by name, never wrapped', () => {
  const refused = (given, reason) => assert.throws(() => handturn.nearest(...given), (error) => String(error).includes(reason));
  refused([1.5, 2, 3], '1.5');
  refused([NaN, 2, 3], 'NaN');
  refused([2 ** 53, 2, 3], '9007199254740992');
  refused(['12', 2, 3], '12');
  refused([1, 0, 3], 'Zero');
  for (const n of [2 ** 31, 2 ** 32 + 1, 2 ** 53 - 1]) {
    assert.equal(handturn.nearest(n, 1, 1).fraction.num, n);
  }
});

test('the README shows what really comes out', () => {
  const readme = readFileSync(join(built, 'README.md'), 'utf8');
  const rows = [...readme.matchAll(/console\.log\((.+)\); \/\/ (.+)/g)];
  assert.ok(rows.length > 0);
  const run = (text) => new Function(...Object.keys(handturn), `return (${text})`)(...Object.values(handturn));
  for (const [, call, shown] of rows) assert.deepEqual(run(call), run(shown));
});
