// The package as it is built, ready to be asked, and what its tests share.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import * as handturn from '../../web/dist/npm/handturn.js';

handturn.initSync(readFileSync(new URL('../../web/dist/npm/handturn.wasm', import.meta.url)));
export { handturn };

export const near = (found, wanted, within = 1e-9) => assert.ok(Math.abs(found - wanted) <= within, `${found}, not ${wanted}`);

/** The refusal that a call meets; where they are given, of just this field and cause. */
export function refusal(call, ...fieldAndCause) {
  try {
    call();
  } catch (error) {
    assert.ok(error instanceof handturn.HandturnError, String(error));
    if (fieldAndCause.length > 0) assert.deepEqual([error.field, error.cause], fieldAndCause, error.message);
    return error;
  }
  return assert.fail('nothing was refused');
}
