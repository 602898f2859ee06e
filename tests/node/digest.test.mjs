// The package's own answers, as JSON text, are those of the native core: every number of parts, both sets of plates.
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

/** One hash a set and a thousand, as the native core prints them. */
function native() {
  const command = '. web/tool/ground.sh && host_cargo test --quiet --locked --workspace --test digest';
  const printed = execFileSync('bash', ['-c', command], { cwd: root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] });
  return printed.split('\n').filter((line) => /^[AB] \d+ [0-9a-f]{64}$/.test(line));
}

test('the JSON text of 2 to 10000 parts is the native core\'s', async () => {
  const { initSync, divide } = await import('../../web/dist/npm/handturn.js');
  initSync(readFileSync(new URL('../../web/dist/npm/handturn.wasm', import.meta.url)));
  const hashed = [];
  for (const [set, plates] of Object.entries(SETS)) {
    const owned = { plates, gears: GEARS };
    for (let from = 0; from <= 10_000; from += 1000) {
      const hash = createHash('sha256');
      for (let parts = Math.max(from, 2); parts <= Math.min(from + 999, 10_000); parts += 1) {
        hash.update(JSON.stringify(divide({ parts, head: owned })) + '\n');
      }
      hashed.push(`${set} ${from} ${hash.digest('hex')}`);
    }
  }
  const wanted = native();
  assert.equal(wanted.length, 22);
  assert.deepEqual(hashed, wanted);
});
