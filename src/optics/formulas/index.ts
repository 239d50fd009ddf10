import type { Dioptre, Millimetre } from '../../units.js';
import { type Biometry, type Formula, type FormulaName, meanPower } from './formula.js';
import { haigis } from './haigis.js';
import { hofferQ } from './hoffer-q.js';
import { holladay1 } from './holladay-1.js';
import { srkT } from './srk-t.js';
import { positionOf, powerOf, refractionOf } from './thin-lens.js';

/** Back of the spectacle lens to the cornea that all four formulas are printed with, millimetres. */
export const formulaVertex: Millimetre = 12;

const byName: Readonly<Record<FormulaName, Formula>> = {
  'SRK/T': srkT,
  'Holladay 1': holladay1,
  'Hoffer Q': hofferQ,
  Haigis: haigis,
};

/** A formula by its name. @example formulaNamed('SRK/T').constant // 'A' */
export function formulaNamed(name: FormulaName): Formula {
  return byName[name];
}

/** Why a formula does not predict an eye. */
export type Refusal =
  | `${'axial-length' | 'keratometry' | 'chamber-depth' | 'power'}-${'missing' | 'outside'}`
  | 'constant-missing'
  | 'no-image';

/** What a formula may be asked of: mm, D, mm, D. @source judgement of the project; beyond, the inputs are typing errors */
const domain = { axialLength: [18, 36], keratometry: [30, 60], chamberDepth: [1.5, 6], power: [-10, 45] } as const;
/** Eyes that formulas were made from: mm, D. Beyond, a prediction stands and is counted. @source judgement of the project */
const usual = { axialLength: [20, 31], keratometry: [38, 48] } as const;
/** Lens to retina, below which the position makes no sense, millimetres. */
const leastBehindLens = 8;

function outside(value: number, [low, high]: readonly [number, number]): 'missing' | 'outside' | undefined {
  if (Number.isNaN(value)) return 'missing';
  return value < low || value > high ? 'outside' : undefined;
}

/**
 * Why a formula cannot predict this eye; undefined where it can.
 *
 * @param power  of the lens implanted, dioptres
 * @param constant  of the lens for this formula; NaN where none is declared
 * @example refusalOf(formulaNamed('Haigis'), { axialLength: 23, k1: 43, k2: 44, chamberDepth: NaN }, 21, 1) // 'chamber-depth-missing'
 */
export function refusalOf(formula: Formula, biometry: Biometry, power: Dioptre, constant: number): Refusal | undefined {
  const length = outside(biometry.axialLength, domain.axialLength);
  if (length) return `axial-length-${length}`;
  const keratometry = outside(biometry.k1, domain.keratometry) ?? outside(biometry.k2, domain.keratometry);
  if (keratometry) return `keratometry-${keratometry}`;
  const depth = formula.needsChamberDepth ? outside(biometry.chamberDepth, domain.chamberDepth) : undefined;
  if (depth) return `chamber-depth-${depth}`;
  const lens = outside(power, domain.power);
  if (lens) return `power-${lens}`;
  if (Number.isNaN(constant)) return 'constant-missing';
  const { length: optical } = formula.eye(biometry);
  const behindLens = optical - lensPosition(formula, biometry, constant);
  return behindLens > leastBehindLens && 1336 / behindLens > power ? undefined : 'no-image';
}

/**
 * Whether an eye lies outside the lengths and corneas that formulas are made from, so that a prediction is a guess.
 *
 * @example isUnusual({ axialLength: 31.5, k1: 43, k2: 44, chamberDepth: 3.8 }) // true
 */
export function isUnusual(biometry: Biometry): boolean {
  return (
    outside(biometry.axialLength, usual.axialLength) !== undefined ||
    outside(meanPower(biometry), usual.keratometry) !== undefined
  );
}

/**
 * Effective lens position: cornea to the plane of the thin lens, millimetres, where the formula expects it.
 *
 * @example lensPosition(formulaNamed('Holladay 1'), biometry, 1.75)
 */
export function lensPosition(formula: Formula, biometry: Biometry, constant: number): Millimetre {
  return formula.eye(biometry).base + formula.shift(constant);
}

/**
 * Spectacle refraction that a formula predicts for the lens implanted. For looking back at finished operations only.
 *
 * @param power   SE power of the lens, dioptres
 * @param vertex  millimetres; 12 unless stated
 * @returns dioptres; NaN where `refusalOf` has a reason
 * @example predictedRefraction(formulaNamed('SRK/T'), biometry, 118.9, 21)
 */
export function predictedRefraction(
  formula: Formula,
  biometry: Biometry,
  constant: number,
  power: Dioptre,
  vertex: Millimetre = formulaVertex,
): Dioptre {
  if (refusalOf(formula, biometry, power, constant)) return Number.NaN;
  const { cornea, length, base } = formula.eye(biometry);
  return refractionOf({ cornea, length, position: base + formula.shift(constant) }, power, vertex);
}

/**
 * Lens power for which a formula predicts a refraction: the inverse of `predictedRefraction`, for checking it.
 *
 * @returns dioptres; NaN where the formula cannot be asked
 * @example powerForRefraction(formulaNamed('SRK/T'), biometry, 118.9, 0)
 */
export function powerForRefraction(
  formula: Formula,
  biometry: Biometry,
  constant: number,
  refraction: Dioptre,
  vertex: Millimetre = formulaVertex,
): Dioptre {
  const { cornea, length, base } = formula.eye(biometry);
  const power = powerOf({ cornea, length, position: base + formula.shift(constant) }, refraction, vertex);
  return refusalOf(formula, biometry, power, constant) ? Number.NaN : power;
}

/**
 * The constant with which a formula would have predicted one eye exactly. Eyes with weak lenses have wild ones: their
 * mean is not the constant of the lens.
 *
 * @returns NaN at a power of 0, or where no position gives the refraction
 * @example constantOfEye(formulaNamed('Holladay 1'), biometry, 21, -0.25)
 */
export function constantOfEye(formula: Formula, biometry: Biometry, power: Dioptre, achieved: Dioptre): number {
  const { cornea, length, base } = formula.eye(biometry);
  const position = positionOf(cornea, length, power, achieved, formulaVertex);
  return (position - base - formula.shift(0)) / formula.perConstant;
}
