// Whole runs, each position confirmed with two presses.
import { test } from 'node:test';
import { whole } from './whole.mjs';

for (const settings of [
  '127 40 1 2400 cw 10 2 two',
  '7 40 1 2400 cw 10 2 two',
]) {
  test(`a whole run: ${settings}`, async (t) => {
    t.diagnostic(`${await whole(t, settings)} screens`);
  });
}
