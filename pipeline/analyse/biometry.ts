import { numbersOf } from '../../src/columns/table.js';
import type { Biometry } from '../../src/optics/formulas/formula.js';
import type { Derived } from '../../src/records/derived.js';

/** The biometry of an eye as the formulas take it; only where an audit recomputes predictions are its columns there. */
export function biometryIn({ eyes }: Derived): (eye: number) => Biometry {
  const [length, flat, steep, depth] = ['axial_length', 'flat@before', 'steep@before', 'acd@front'].map((name) =>
    numbersOf(eyes, name),
  );
  return (eye) => ({
    axialLength: length?.[eye] as number,
    k1: flat?.[eye] as number,
    k2: steep?.[eye] as number,
    chamberDepth: depth?.[eye] as number,
  });
}
