/** What the engine is started from. */
export type Wasm = BufferSource | WebAssembly.Module;

/**
 * Starts the engine from the bytes of handturn.wasm, a compiled module, or a
 * Response or a promise of one. Call it once, before any other function.
 */
export function init(wasm: Wasm | Response | Promise<Wasm | Response>): Promise<void>;

/** Starts the engine at once, from bytes or a compiled module. */
export function initSync(wasm: Wasm): void;

/** An exact fraction, reduced, its denominator above zero. */
export interface Fraction {
  num: number;
  den: number;
}

/** A near fraction, and the fraction sought less the near one. */
export interface Near {
  fraction: Fraction;
  residual: Fraction;
}

/**
 * The fraction nearest to `num / den` with a denominator of at most `most`.
 * Throws where a number is not whole, lies beyond 2^53, or is zero where it divides.
 */
export function nearest(num: number, den: number, most: number): Near;
