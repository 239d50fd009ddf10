import type { Anatomy } from './anatomy.js';
import { biometer, type Keratometry, toStep } from './devices.js';
import type { Operation, Patient } from './people.js';
import { fromPrincipal, matrix, type PowerMatrix, plus, principal, turned } from './power-matrix.js';
import type { Random } from './random.js';
import { AIM_BELOW, SECOND_FORMULA, VERTEX } from './truth.js';

/** The biometer's sheet. */
export interface Biometry {
  readonly axialLength: number;
  readonly chamberDepth: number;
  readonly keratometry: Keratometry;
}

/** What the theatre list says of the lens, and what was expected of it. */
export interface LensPlan {
  readonly model: string;
  readonly power: number;
  /** Cylinder in the lens plane, dioptres, 0 for a lens without. */
  readonly cylinder: number;
  readonly axis: number | undefined;
  readonly predicted: number;
  /** Expected residual cylinder as plus cylinder at the cornea; only for toric lenses. */
  readonly residual: { readonly cylinder: number; readonly axis: number } | undefined;
  /** Astigmatism of the lens at the cornea when it lies as planned. */
  readonly effect: PowerMatrix;
  /** What the second formula predicts for the same lens. */
  readonly second: number;
}

const INDEX = 1336;
const TORIC_STEPS = [1.5, 2.25, 3, 3.75, 4.5, 5.25, 6];
/** The planners count on this flattening along every incision. */
const PLANNED_FLATTENING = -0.3;
const TORIC_FROM = 0.9;
const RARE_LENS = 0.015;

/** Where the planners' formula expects the lens, millimetres behind the cornea. */
function lensPosition(axialLength: number): number {
  return 5.25 + 0.25 * (axialLength - 23.5);
}

/** Vergence of the eye that a lens of this power must complete, followed from the retina to the spectacles. */
function refractionOf(biometry: Biometry, power: number): number {
  const { first, second } = biometry.keratometry;
  const k = (first.power + second.power) / 2;
  const position = lensPosition(biometry.axialLength);
  const behindLens = INDEX / (biometry.axialLength - position);
  const atCornea = INDEX / (INDEX / (behindLens - power) + position) - k;
  return atCornea / (1 + (VERTEX / 1000) * atCornea);
}

/** The power, in half dioptres, nearest to the one that would leave the aim less the surgeons' margin. */
function choosePower(biometry: Biometry, aim: number): number {
  const { first, second } = biometry.keratometry;
  const wanted = aim - AIM_BELOW;
  const atCornea = (first.power + second.power) / 2 + wanted / (1 - (VERTEX / 1000) * wanted);
  const position = lensPosition(biometry.axialLength);
  const arriving = INDEX / (INDEX / atCornea - position);
  return toStep(INDEX / (biometry.axialLength - position) - arriving, 0.5);
}

/** Cylinder of the lens as it works at the cornea. */
function atCornea(cylinder: number, biometry: Biometry): number {
  const { first, second } = biometry.keratometry;
  const k = (first.power + second.power) / 2;
  return cylinder * (1 - (lensPosition(biometry.axialLength) * k) / INDEX) ** 2;
}

/** A toric lens is weakest along its mark, and the mark lies along the steep meridian. */
export function toricEffect(cylinderAtCornea: number, axis: number): PowerMatrix {
  return plus(fromPrincipal(0, -cylinderAtCornea, axis), matrix(cylinderAtCornea / 2));
}

/** The cornea that the planners expect after surgery: the biometer's, flattened along the incision. */
function expectedCornea(biometry: Biometry, incision: number): PowerMatrix {
  const { first, second } = biometry.keratometry;
  const before = fromPrincipal(first.power, second.power, second.meridian);
  return plus(before, turned(matrix(0, PLANNED_FLATTENING), incision));
}

function residualOf(expected: PowerMatrix, effect: PowerMatrix): { cylinder: number; axis: number } {
  const { least, greatest, meridianOfGreatest } = principal(plus(expected, effect));
  const axis = Math.round(meridianOfGreatest) % 180;
  return { cylinder: toStep(greatest - least, 0.01), axis: axis === 0 ? 180 : axis };
}

/** The step that leaves least cylinder, and the mark along the expected steep meridian. */
function toricPlan(biometry: Biometry, expected: PowerMatrix) {
  const { least, greatest, meridianOfGreatest } = principal(expected);
  const left = (cylinder: number) => Math.abs(greatest - least - atCornea(cylinder, biometry));
  const cylinder = TORIC_STEPS.reduce((best, step) => (left(step) < left(best) ? step : best));
  const axis = Math.round(meridianOfGreatest) % 180 || 180;
  const effect = toricEffect(atCornea(cylinder, biometry), axis);
  return { cylinder, axis, effect, residual: residualOf(expected, effect) };
}

export function measureBiometry(random: Random, anatomy: Anatomy): Biometry {
  return {
    axialLength: toStep(anatomy.axialLength + 0.02 * random.normal(), 0.01),
    chamberDepth: toStep(anatomy.chamberDepth + 0.03 * random.normal(), 0.01),
    keratometry: biometer(random, anatomy.cornea),
  };
}

export function planLens(
  random: Random,
  patient: Patient,
  operation: Operation,
  biometry: Biometry,
  incision: number,
): LensPlan {
  const expected = expectedCornea(biometry, incision);
  const { least, greatest } = principal(expected);
  const rare = random.chance(RARE_LENS);
  const power = choosePower(biometry, operation.aim);
  const predicted = toStep(refractionOf(biometry, power), 0.01);
  const length = biometry.axialLength;
  const further = SECOND_FORMULA.offset + SECOND_FORMULA.perMillimetre * (length - 23.5);
  const second = toStep(predicted + further + 0.12 * random.normal(), 0.01);
  const common = { power, predicted, second };
  if (!rare && patient.wantsToric && greatest - least >= TORIC_FROM) {
    return { ...common, model: 'A1T', ...toricPlan(biometry, expected) };
  }
  const none = { cylinder: 0, axis: undefined, residual: undefined, effect: matrix(0) };
  return { ...common, model: rare ? 'C3' : patient.lens, ...none };
}
