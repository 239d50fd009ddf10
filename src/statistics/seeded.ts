/**
 * Uniform numbers in (0, 1), the same for one seed on every machine: a 32-bit counter, mixed twice.
 *
 * @param seed  whole number; taken modulo 2³²
 * @source Steele GL, Lea D, Flood CH. Fast splittable pseudorandom number generators. OOPSLA 2014 (family)
 * @example const next = seeded(1); next() !== next() // true
 */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32 + 2 ** -33;
  };
}
