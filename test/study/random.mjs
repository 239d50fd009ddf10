// Seeded numbers for the study: a 32-bit generator of the splitmix family (Steele, Lea, Flood 2014), and what follows.

/** Uniform numbers in (0, 1). @param {number} seed */
export function uniform(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let z = state;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return ((z ^ (z >>> 15)) >>> 0) / 2 ** 32 + 2 ** -33;
  };
}

/** Standard normal numbers by the polar method. @param {() => number} next */
export function normal(next) {
  let spare;
  return () => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    for (;;) {
      const u = 2 * next() - 1;
      const v = 2 * next() - 1;
      const s = u * u + v * v;
      if (s >= 1 || s === 0) continue;
      const scale = Math.sqrt((-2 * Math.log(s)) / s);
      spare = v * scale;
      return u * scale;
    }
  };
}

/** Errors of unit scale: normal; t with 5 degrees; normal of which 5 % have three times the spread. */
export const errorShapes = {
  normal: (_next, z) => z(),
  t5: (next, z) => {
    let square = 0;
    for (let i = 0; i < 5; i++) square += z() ** 2;
    return z() / Math.sqrt(square / 5);
  },
  contaminated: (next, z) => (next() < 0.05 ? 3 * z() : z()),
};
