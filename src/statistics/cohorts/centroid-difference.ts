import { type Covariance, determinant, type Ellipse, ellipse, isDegenerate, squaredDistance } from '../ellipse.js';
import type { EstimateNote } from '../estimate.js';
import { expectConfidence, expectFinite, expectParallel } from '../expectations.js';
import { type Hotelling, hotellingOf, hotellingScale } from '../hotelling.js';
import { meanOf } from '../moments.js';
import { patientsOf } from '../patients.js';
import { bareComparison, comparable, patientContrasts, strataDegrees } from './contrast.js';
import type { Cohorts, Stratum } from './design.js';
import { meanInfluences } from './mean-difference.js';

/** Points of one cohort. */
export interface Cloud {
  x: Float64Array;
  y: Float64Array;
}

/** Difference of two centroids, A − B. */
export interface CentroidDifference {
  /** Undefined where a cohort has fewer than 5 patients. */
  x: number | undefined;
  y: number | undefined;
  /** V of the difference. */
  ofDifference: Covariance | undefined;
  region: Ellipse | undefined;
  test: Hotelling | undefined;
  n: number;
  patients: number;
  method: 'centroid-difference';
  notes: readonly EstimateNote[];
}

/**
 * Difference of the centroids of two cohorts with its region and test. The paired Hotelling test with one eye in each
 * cohort; the test of unequal covariances with one eye a patient.
 *
 * V = Σww′; T² = d′V⁻¹d; ν by `krishnamoorthyYu`; F = (ν − 1)/(2ν)·T² on (2, ν − 1).
 *
 * @param a, b       points of the eyes of A and of B, dioptres in the doubled-angle plane
 * @param cohorts    their patients, from `recogniseDesign`
 * @param confidence such as 0.95
 * @throws {RangeError} at a value not finite, columns of unequal lengths, or a bad confidence
 * @source Krishnamoorthy K, Yu J. Stat Probab Lett 2004;66:161–169; patient sums by this project's statistics page
 * @example centroidDifference(a, b, recogniseDesign(patientsA, patientsB), 0.95).test?.p
 */
export function centroidDifference(a: Cloud, b: Cloud, cohorts: Cohorts, confidence: number): CentroidDifference {
  expectConfidence('centroidDifference', confidence);
  expectCloud(a, cohorts.a);
  expectCloud(b, cohorts.b);
  const { n, patients, notes } = bareComparison(cohorts, 'centroid-difference');
  const about = { n, patients, method: 'centroid-difference' as const, notes };
  const nothing = { ofDifference: undefined, region: undefined, test: undefined };
  if (!comparable(cohorts)) return { ...about, ...nothing, x: undefined, y: undefined };
  const x = (meanOf(a.x) as number) - (meanOf(b.x) as number);
  const y = (meanOf(a.y) as number) - (meanOf(b.y) as number);
  const strata = strataCovariances(a, b, cohorts);
  const ofDifference = total(strata);
  if (isDegenerate(ofDifference)) {
    return { ...about, ...nothing, x, y, ofDifference, notes: [...notes, 'degenerate:patient-sums'] };
  }
  const nu = krishnamoorthyYu(strata);
  const region = ellipse(ofDifference, hotellingScale(confidence, nu));
  return { ...about, x, y, ofDifference, region, test: hotellingOf(squaredDistance(x, y, ofDifference), nu) };
}

function expectCloud({ x, y }: Cloud, patients: Cohorts['a']): void {
  expectFinite('centroidDifference', x);
  expectFinite('centroidDifference', y);
  expectParallel('centroidDifference', x, y);
  patientsOf('centroidDifference', x, patients);
}

/** Part of a covariance that independent patients share, with its degrees of freedom. */
export interface StratumCovariance extends Covariance {
  df: number;
}

/** Σww′ over the patients only in A, only in B, in both; empty strata left out. */
function strataCovariances(a: Cloud, b: Cloud, cohorts: Cohorts): StratumCovariance[] {
  const wx = patientContrasts(cohorts, meanInfluences(a.x, cohorts.a), meanInfluences(b.x, cohorts.b));
  const wy = patientContrasts(cohorts, meanInfluences(a.y, cohorts.a), meanInfluences(b.y, cohorts.b));
  const parts = strataDegrees(cohorts).map((df) => ({ xx: 0, xy: 0, yy: 0, df }));
  for (let g = 0; g < cohorts.patients; g++) {
    const part = parts[cohorts.strata[g] as Stratum] as StratumCovariance & { xx: number; xy: number; yy: number };
    part.xx += (wx[g] as number) ** 2;
    part.xy += (wx[g] as number) * (wy[g] as number);
    part.yy += (wy[g] as number) ** 2;
  }
  return parts.filter((_, s) => (cohorts.sizes[s] as number) > 0);
}

function total(strata: readonly StratumCovariance[]): Covariance {
  return strata.reduce((sum, { xx, xy, yy }) => ({ xx: sum.xx + xx, xy: sum.xy + xy, yy: sum.yy + yy }), {
    xx: 0,
    xy: 0,
    yy: 0,
  });
}

/**
 * Degrees of freedom of T² whose covariance is a sum of independent parts in the plane:
 * ν = 6/Σ[(tr(M²) + (tr M)²)/f], M = V_s·V⁻¹ of each part.
 *
 * @throws {RangeError} where the sum has no inverse
 * @source Krishnamoorthy K, Yu J. Stat Probab Lett 2004;66:161–169, for p = 2
 */
export function krishnamoorthyYu(strata: readonly StratumCovariance[]): number {
  const sum = total(strata);
  if (isDegenerate(sum)) throw new RangeError('krishnamoorthyYu: the summed covariance has no inverse');
  let spent = 0;
  for (const part of strata) {
    const trace = (part.xx * sum.yy - 2 * part.xy * sum.xy + part.yy * sum.xx) / determinant(sum);
    // tr(M²) = (tr M)² − 2·det M in the plane.
    const traceOfSquare = trace * trace - (2 * determinant(part)) / determinant(sum);
    spent += (traceOfSquare + trace * trace) / part.df;
  }
  return 6 / spent;
}
