import type { Dioptre, Millimetre } from '../../units.js';
import { cornealPlanePower, spectaclePlanePower } from '../vertex.js';

/** 1000 times the index of aqueous and vitreous: the vergence of a length in millimetres is this over the length. */
const index = 1336;

/** An eye as a formula sees it: a thin cornea, a thin lens behind it, a retina. */
export interface ReducedEye {
  /** Power of the cornea at the formula's own index, dioptres. */
  cornea: Dioptre;
  /** Cornea to retina, with what the formula adds to the measured length, millimetres. */
  length: Millimetre;
  /** Cornea to the principal plane of the lens: the effective lens position, millimetres. */
  position: Millimetre;
}

/**
 * Spectacle refraction that a lens leaves: q = N/(L − d) − P, z = N/(N/q + d), Rc = z − K, taken to the spectacles.
 *
 * @param power   of the lens, dioptres
 * @param vertex  back of the spectacle lens to the cornea, millimetres
 * @returns dioptres; NaN where no light from the retina reaches the cornea with a vergence that a spectacle lens meets
 * @source vergence; the four published expressions reduce to it
 * @example refractionOf({ cornea: 43.5, length: 23.5, position: 5.25 }, 20, 12)
 */
export function refractionOf({ cornea, length, position }: ReducedEye, power: Dioptre, vertex: Millimetre): Dioptre {
  const behindLens = index / (length - position) - power;
  const atCornea = index / (index / behindLens + position) - cornea;
  return spectaclePlanePower(atCornea, vertex);
}

/**
 * Lens power that leaves a spectacle refraction: P = N/(L − d) − N/(N/z − d), z = K + the refraction at the cornea.
 *
 * @param refraction  dioptres in the spectacle plane
 * @param vertex      millimetres
 * @returns dioptres; NaN where the refraction cannot be moved to the cornea
 * @source vergence; the inverse of `refractionOf`
 * @example powerOf({ cornea: 43.5, length: 23.5, position: 5.25 }, 0, 12)
 */
export function powerOf({ cornea, length, position }: ReducedEye, refraction: Dioptre, vertex: Millimetre): Dioptre {
  const atCornea = cornea + cornealPlanePower(refraction, vertex);
  return index / (length - position) - index / (index / atCornea - position);
}

/**
 * How fast the refraction at the cornea changes as the lens lies deeper: (1 − d z/N)²·P (P + 2w)/N, w = z/(1 − d z/N).
 *
 * Positive for lenses above 0 D: deeper is more hyperopic. Zero without power: such a lens tells nothing of its place.
 *
 * @param refraction  at the spectacles, that the lens leaves, dioptres
 * @returns dioptres a millimetre, at the spectacles
 * @source derivative of `refractionOf`
 * @example positionSlope({ cornea: 43.5, length: 23.5, position: 5.25 }, 20, 0.2, 12)
 */
export function positionSlope(
  { cornea, position }: Pick<ReducedEye, 'cornea' | 'position'>,
  power: Dioptre,
  refraction: Dioptre,
  vertex: Millimetre,
): number {
  const corneal = cornealPlanePower(refraction, vertex);
  const arriving = cornea + corneal;
  const share = 1 - (position * arriving) / index;
  const atCornea = (share ** 2 * power * (power + (2 * arriving) / share)) / index;
  return atCornea / (1 + (vertex / 1000) * corneal) ** 2;
}

/**
 * Lens position from which a lens of known power leaves a known refraction: the smaller root of a quadratic.
 *
 * @returns millimetres; NaN at a power of 0, or where no position does it
 * @source vergence; d = ((L + b) − √((L − b)² + 4N(b − L)/P))/2 with b = N/z
 * @example positionOf(43.5, 23.5, 20, 0.2, 12)
 */
export function positionOf(
  cornea: Dioptre,
  length: Millimetre,
  power: Dioptre,
  refraction: Dioptre,
  vertex: Millimetre,
): Millimetre {
  const focus = index / (cornea + cornealPlanePower(refraction, vertex));
  const root = Math.sqrt((length - focus) ** 2 + (4 * index * (focus - length)) / power);
  const position = (length + focus - root) / 2;
  return power === 0 ? Number.NaN : position;
}
