// Whole runs, each position confirmed with one press; the other side of approach.
import { test } from 'node:test';
import { whole } from './whole.mjs';

for (const settings of [
  '365 40 1 2400 cw 10 2 one',
  '64 40 1 2400 acw 10 2 one',
]) {
  test(`a whole run: ${settings}`, async (t) => {
    t.diagnostic(`${await whole(t, settings)} screens`);
  });
}
