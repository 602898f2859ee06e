// The engine: the core as wasm. It keeps nothing between calls, so when a call
// traps, a fresh instance of the module that is already compiled takes over and
// what the page remembers is untouched.
import start, { clear, turn as call, __wbg_reset_state as fresh } from 'glue';

/** Starts the engine from the bytes of its wasm. */
export const ready = (bytes) => start({ module_or_path: bytes });

/** One event in, its outcome out; null after an internal fault. */
export function turn(state, event) {
  try {
    clear();
    return call(state, event);
  } catch (fault) {
    if (!(fault instanceof WebAssembly.RuntimeError || fault instanceof RangeError)) throw fault;
    console.error('internal fault', fault);
    fresh();
    return null;
  }
}
