import { numbersOf } from '../../src/columns/table.js';
import { eyeNumbers } from '../../src/eligibility/lookup.js';
import type { Biometry } from '../../src/optics/formulas/formula.js';
import type { Derived } from '../../src/records/derived.js';

/** The biometry of an eye as the formulas take it; only where an audit recomputes predictions are its columns there. */
export function biometryIn({ eyes }: Derived): (eye: number) => Biometry {
  const length = eyeNumbers(eyes, 'axial_length') as Float64Array;
  const [flat, steep, depth] = ['flat@before', 'steep@before', 'acd@front'].map((name) => numbersOf(eyes, name));
  return (eye) => ({
    axialLength: length[eye] as number,
    k1: flat?.[eye] as number,
    k2: steep?.[eye] as number,
    chamberDepth: depth?.[eye] as number,
  });
}

/** Power of the lens implanted in each eye, dioptres; NaN where it is missing or was set aside. */
export function lensPowers({ eyes }: Derived): Float64Array {
  return eyeNumbers(eyes, 'lens_power') as Float64Array;
}
