// Handturn for JavaScript: one glue for browsers and Node, the wasm's bytes handed in.
import start, { initSync as startSync, __wbg_reset_state as fresh } from 'glue';
import * as glue from 'glue';

/**
 * Starts the engine from the bytes of handturn.wasm, a compiled module, or a
 * Response or a promise of one. Call it once, before any other function.
 */
export async function init(wasm) {
  await start({ module_or_path: wasm });
}

/** Starts the engine at once, from bytes or a compiled module. */
export function initSync(wasm) {
  startSync({ module: wasm });
}

/** Calls into the engine; after a trap a fresh instance takes over, so later answers are right. */
function call(name, ...given) {
  try {
    return glue[name](...given);
  } catch (fault) {
    if (!(fault instanceof WebAssembly.RuntimeError || fault instanceof RangeError)) throw fault;
    fresh();
    throw new Error('handturn: internal fault; the engine has been started afresh', { cause: fault });
  }
}

/** The fraction nearest to `num / den` with a denominator of at most `most`, and what is left over. */
export const nearest = (num, den, most) => call('nearest', num, den, most);
