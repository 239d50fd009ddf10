/** A stream of random numbers; the same seed and name give the same stream on any machine. */
export interface Random {
  /** Between 0 and 1, ends excluded. */
  uniform(): number;
  /** A normal deviate of mean 0 and standard deviation 1. */
  normal(): number;
  /** True with this probability. */
  chance(probability: number): boolean;
  /** A whole number from `from` to `to`, both included. */
  whole(from: number, to: number): number;
}

const HASH_START = 0x811c9dc5;
const HASH_FACTOR = 0x01000193;

/** FNV-1a, 32 bits: spreads seed and name over the generator's state. */
function hash(text: string): number {
  let value = HASH_START;
  for (let i = 0; i < text.length; i++) value = Math.imul(value ^ text.charCodeAt(i), HASH_FACTOR) >>> 0;
  return value;
}

/**
 * Raw 32-bit numbers, period 2^128 − 1.
 *
 * @param start four 32-bit words, not all zero; by default those printed in the paper
 * @source Marsaglia G. Xorshift RNGs. J Stat Softw 2003;8(14), function `xor128`
 * @example xorshift128()() // 3701687786
 */
export function xorshift128(start: readonly [number, number, number, number] = PRINTED_START): () => number {
  let [x, y, z, w] = start;
  return () => {
    const t = (x ^ (x << 11)) >>> 0;
    x = y;
    y = z;
    z = w;
    w = (w ^ (w >>> 19) ^ (t ^ (t >>> 8))) >>> 0;
    return w;
  };
}

const PRINTED_START = [123456789, 362436069, 521288629, 88675123] as const;
/** Draws thrown away so that streams whose names differ by one letter have nothing in common. */
const WARM_UP = 40;

/** One named stream of a seed. Normal deviates by the polar method (Marsaglia and Bray 1964), one pair kept for two calls. */
export function stream(seed: number, name: string): Random {
  const [x, y, z, w] = PRINTED_START;
  const next = xorshift128([x, y, (z ^ hash(name)) >>> 0, (w ^ hash(`${seed}/${name}`)) >>> 0]);
  for (let i = 0; i < WARM_UP; i++) next();
  const uniform = () => (next() + 0.5) / 2 ** 32;
  let spare: number | undefined;
  const normal = () => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const s = u * u + v * v;
      if (s >= 1 || s === 0) continue;
      const length = Math.sqrt((-2 * Math.log(s)) / s);
      spare = v * length;
      return u * length;
    }
  };
  return {
    uniform,
    normal,
    chance: (probability) => uniform() < probability,
    whole: (from, to) => from + Math.floor(uniform() * (to - from + 1)),
  };
}
