import { fromPrincipal, matrix, movedForward, type PowerMatrix, plus, principal } from './power-matrix.js';
import type { Random } from './random.js';

/** A refraction as written: cylinder of one sign, axis 1 to 180, absent without a cylinder. */
export interface Refraction {
  readonly sphere: number;
  readonly cylinder: number;
  readonly axis: number | undefined;
}

/** Spherical equivalent of a written refraction, dioptres. */
export function equivalent({ sphere, cylinder }: Refraction): number {
  return sphere + cylinder / 2;
}

/** Two powers (dioptres at index 1.3375) and the meridians they were read along. */
export interface Keratometry {
  readonly first: { readonly power: number; readonly meridian: number };
  readonly second: { readonly power: number; readonly meridian: number };
}

export const KERATOMETRIC = 337.5;

/** Nearest step, so that 0.25 means quarters. */
export function toStep(value: number, step: number): number {
  return Math.round(value / step) * step + 0;
}

function toAxis(meridian: number, step: number): number {
  const rounded = toStep(meridian, step) % 180;
  return rounded === 0 ? 180 : rounded;
}

function noisy(random: Random, f: PowerMatrix, mean: number, each: number): PowerMatrix {
  return plus(f, matrix(mean * random.normal(), each * random.normal(), each * random.normal()));
}

/** A refraction in quarters. A minus cylinder has its axis along the greatest power, a plus cylinder along the least. */
export function refract(
  random: Random,
  correction: PowerMatrix,
  notation: 'minus' | 'plus',
  axisStep: number,
): Refraction {
  const { least, greatest, meridianOfGreatest } = principal(noisy(random, correction, 0.08, 0.12));
  const cylinder = toStep(greatest - least, 0.25);
  const minus = notation === 'minus';
  const axis = minus ? meridianOfGreatest : meridianOfGreatest + 90;
  return {
    sphere: toStep(minus ? greatest : least, 0.25),
    cylinder: (minus ? -cylinder : cylinder) + 0,
    axis: cylinder === 0 ? undefined : toAxis(axis, axisStep),
  };
}

/** The matrix of a written refraction: its sphere along the axis, sphere + cylinder at right angles to it. */
function correctionOf({ sphere, cylinder, axis }: Refraction): PowerMatrix {
  return axis === undefined ? matrix(sphere) : fromPrincipal(sphere, sphere + cylinder, axis + 90);
}

/** A written refraction, worn `vertex` mm in front of the eye, as the correction at the cornea. */
export function atCornea(refraction: Refraction, vertex: number): PowerMatrix {
  return movedForward(correctionOf(refraction), -vertex);
}

/** The keratometer writes the meridian nearer the horizontal first, whichever is the flatter, and radii in steps of 0.01 mm. */
export function keratometer(random: Random, cornea: PowerMatrix): Keratometry {
  const { least, greatest, meridianOfGreatest } = principal(noisy(random, cornea, 0.08, 0.12));
  const steepAxis = toAxis(meridianOfGreatest, 1);
  const steep = { power: radius(greatest), meridian: steepAxis };
  const flat = { power: radius(least), meridian: toAxis(steepAxis + 90, 1) };
  const steepIsHorizontal = steepAxis <= 45 || steepAxis > 135;
  return steepIsHorizontal ? { first: steep, second: flat } : { first: flat, second: steep };
}

function radius(power: number): number {
  return KERATOMETRIC / toStep(KERATOMETRIC / power, 0.01);
}

/** The biometer writes the flatter power first, in steps of 0.01 D. */
export function biometer(random: Random, cornea: PowerMatrix): Keratometry {
  const { least, greatest, meridianOfGreatest } = principal(noisy(random, cornea, 0.06, 0.1));
  const steepAxis = toAxis(meridianOfGreatest, 1);
  return {
    first: { power: toStep(least, 0.01), meridian: toAxis(steepAxis + 90, 1) },
    second: { power: toStep(greatest, 0.01), meridian: steepAxis },
  };
}
