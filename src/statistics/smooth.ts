import type { Estimate } from './estimate.js';
import { meanOf } from './moments.js';
import { indexPatients, type Patients } from './patients.js';
import { quantile, sorted } from './quantile.js';
import { type Regression, regression } from './regression.js';

/** Patients below which a curve would follow chance: a straight line is drawn. @source settled rule of this project */
const patientsForCurve = 60;

/** A curve through eyes. */
export interface Smooth {
  kind: 'natural-spline' | 'straight-line';
  /** The curve at x with its interval, in the unit of y. */
  at(x: number, confidence: number): Estimate;
}

/** A straight line through eyes. */
export interface Line extends Smooth {
  kind: 'straight-line';
  /** Change of y for a change of 1 in x. */
  slope(confidence: number): Estimate;
  rSquared: number | undefined;
}

const ones = (length: number): Float64Array => new Float64Array(length).fill(1);

/**
 * Least-squares line of y on x over eyes; intervals count both eyes of a patient as one independent piece.
 *
 * @param x         one an eye
 * @param y         one an eye
 * @param patients  code of each eye's patient
 * @returns undefined without eyes, or where all have one x
 * @source `regression`
 * @example straightLine(x, y, patients)?.slope(0.95).value
 */
export function straightLine(x: Float64Array, y: Float64Array, patients: Patients): Line | undefined {
  const centre = meanOf(x) ?? 0;
  const away = x.map((value) => value - centre);
  const fit = regression([ones(x.length), away], y, patients, 'straight-line-patient-t');
  return (
    fit && {
      kind: 'straight-line',
      at: (place, confidence) => fit.at([1, place - centre], confidence),
      slope: (confidence) => fit.at([0, 1], confidence),
      rSquared: fit.rSquared,
    }
  );
}

/** What a value adds to each column of a natural cubic spline with four knots, the outermost at the ends of the data. */
function splineRow(knots: readonly number[], x: number): readonly number[] {
  const [first, second, third, last] = knots as [number, number, number, number];
  const bent = (knot: number): number => (Math.max(0, x - knot) ** 3 - Math.max(0, x - last) ** 3) / (last - knot);
  return [1, x, bent(first) - bent(third), bent(second) - bent(third)];
}

/** The fit of a natural cubic spline; x from 0 to 1 between the ends of the data, so that its cubes keep their digits. */
function splineFit(x: Float64Array, y: Float64Array, patients: Patients): Smooth | undefined {
  const ordered = sorted(x);
  const [low, high] = [ordered[0] as number, ordered.at(-1) as number];
  const scaled = (value: number): number => (value - low) / (high - low);
  const knots = [0, 1 / 3, 2 / 3, 1].map((part) => scaled(quantile(ordered, part)));
  if (!knots.every((knot, i) => i === 0 || knot > (knots[i - 1] as number))) return undefined;
  const rows = Array.from(x, (value) => splineRow(knots, scaled(value)));
  const columns = [0, 1, 2, 3].map((j) => Float64Array.from(rows, (row) => row[j] as number));
  const fit: Regression | undefined = regression(columns, y, patients, 'natural-spline-patient-t');
  return (
    fit && { kind: 'natural-spline', at: (place, confidence) => fit.at(splineRow(knots, scaled(place)), confidence) }
  );
}

/**
 * A smooth of y over x: a natural cubic spline with 3 degrees of freedom, knots at the terciles of x and at its ends;
 * a straight line below 60 patients, or where so many eyes share an x that knots fall together.
 *
 * @param x         one an eye
 * @param y         one an eye
 * @param patients  code of each eye's patient
 * @returns undefined without eyes, or where all have one x
 * @source Hastie T, Tibshirani R, Friedman J. The elements of statistical learning, section 5.2.1 (basis); the fit is
 * that of R's splines::ns(x, df = 3); intervals as in `regression`
 * @example smoothOf(axialLength, error, patients)?.at(23.5, 0.95)
 */
export function smoothOf(x: Float64Array, y: Float64Array, patients: Patients): Smooth | undefined {
  const index = patients instanceof Int32Array ? indexPatients(patients) : patients;
  const curve = index.count < patientsForCurve ? undefined : splineFit(x, y, index);
  return curve ?? straightLine(x, y, index);
}
