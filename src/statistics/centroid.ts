import { type Covariance, crossProducts, type Ellipse, ellipse, isDegenerate, squaredDistance } from './ellipse.js';
import { type EstimateNote, fewestPatients, patientNotes } from './estimate.js';
import { expectConfidence, expectFinite, expectParallel } from './expectations.js';
import { f2UpperQuantile, type Hotelling, hotellingOf, hotellingScale } from './hotelling.js';
import { meanOf } from './moments.js';
import { type PatientIndex, type Patients, patientSums, patientsOf } from './patients.js';

/** Mean of points in a plane over eyes, with the regions of the mean and of the eyes. */
export interface Centroid {
  /** Undefined without eyes. */
  x: number | undefined;
  y: number | undefined;
  /** With divisor n − 1; undefined below two eyes. */
  sdX: number | undefined;
  sdY: number | undefined;
  /** Of x and y, divisor n − 1. */
  covariance: number | undefined;
  /** V, the covariance of the centroid from patient sums; undefined below 5 patients. */
  ofCentroid: Covariance | undefined;
  /** Confidence region of the centroid, about it. */
  region: Ellipse | undefined;
  /** Hotelling's test against zero. */
  test: Hotelling | undefined;
  /** Region expected to hold the next eye if the cloud is normal, about the centroid. */
  eyesRegion: Ellipse | undefined;
  /** Eyes really inside `eyesRegion`; the share is this over n. */
  inside: number | undefined;
  n: number;
  patients: number;
  method: 'hotelling-patient';
  notes: readonly EstimateNote[];
}

/**
 * Centroid of eyes in the doubled-angle plane (or any other), both eyes of a patient counting as one piece.
 *
 * V = G/(G − 1)·Σuu′, u = Σ(v − c)/n over the eyes of each of the G patients; region of the centroid
 * 2(G − 1)/(G − 2)·F(2, G − 2); region of the eyes in the prediction form 2(n − 1)(n + 1)/(n(n − 2))·F(2, n − 2).
 * Eyes without cylinder are the point (0, 0) and belong in.
 *
 * @param x, y       one point an eye, dioptres
 * @param patients   code of each eye's patient
 * @param confidence such as 0.95, of both regions
 * @throws {RangeError} at a value not finite, columns of two lengths, or a confidence outside 0 to 1
 * @source Hotelling H. Ann Math Stat 1931;2:360–378, with the covariance of Liang & Zeger 1986; Johnson & Wichern,
 * chapter 5
 * @example centroid(x, y, patients, 0.95).region?.tilt // degrees in the plot plane
 */
export function centroid(x: Float64Array, y: Float64Array, patients: Patients, confidence: number): Centroid {
  expectConfidence('centroid', confidence);
  expectParallel('centroid', x, y);
  expectFinite('centroid', x);
  expectFinite('centroid', y);
  const index = patientsOf('centroid', x, patients);
  const n = x.length;
  const meanX = meanOf(x);
  const meanY = meanOf(y);
  const notes: EstimateNote[] = n === 0 ? ['not-estimable:no-eyes'] : [...patientNotes(index.count)];
  const about = { x: meanX, y: meanY, n, patients: index.count, method: 'hotelling-patient' as const, notes };
  if (meanX === undefined || meanY === undefined || n < 2) return { ...about, ...nothing };
  const spread = crossProducts(x, y, meanX, meanY, n - 1);
  const sds = { sdX: Math.sqrt(spread.xx), sdY: Math.sqrt(spread.yy), covariance: spread.xy };
  if (index.count < fewestPatients) return { ...about, ...nothing, ...sds };
  if (isDegenerate(spread)) notes.push(degeneracy(spread));
  const k = eyesScale(confidence, n);
  const eyesRegion = ellipse(spread, k);
  const inside = countInside(x, y, meanX, meanY, spread, k);
  const mean = ofMean(x, y, meanX, meanY, index, confidence);
  if (mean.test === undefined && !isDegenerate(spread)) notes.push('degenerate:patient-sums');
  return { ...about, ...sds, ...mean, eyesRegion, inside };
}

const nothing = {
  sdX: undefined,
  sdY: undefined,
  covariance: undefined,
  ofCentroid: undefined,
  region: undefined,
  test: undefined,
  eyesRegion: undefined,
  inside: undefined,
};

/** Covariance of the centroid, its region, and its test against zero where the covariance has an inverse. */
function ofMean(
  x: Float64Array,
  y: Float64Array,
  meanX: number,
  meanY: number,
  patients: PatientIndex,
  confidence: number,
): Pick<Centroid, 'ofCentroid' | 'region' | 'test'> {
  const G = patients.count;
  const perEye = (G - 1) / G;
  const divisor = perEye * patients.eyes * patients.eyes;
  const ofCentroid = crossProducts(patientSums(x, patients, meanX), patientSums(y, patients, meanY), 0, 0, divisor);
  const region = ellipse(ofCentroid, hotellingScale(confidence, G - 1));
  if (isDegenerate(ofCentroid)) return { ofCentroid, region, test: undefined };
  return { ofCentroid, region, test: hotellingOf(squaredDistance(meanX, meanY, ofCentroid), G - 1) };
}

/** k of the region of the next eye. */
function eyesScale(confidence: number, n: number): number {
  return ((2 * (n - 1) * (n + 1)) / (n * (n - 2))) * f2UpperQuantile(1 - confidence, n - 2);
}

function countInside(
  x: Float64Array,
  y: Float64Array,
  meanX: number,
  meanY: number,
  spread: Covariance,
  k: number,
): number {
  // Points on one line: their squared distance is measured along it alone.
  const flat = isDegenerate(spread);
  const along = spread.xx + spread.yy;
  let inside = 0;
  for (let i = 0; i < x.length; i++) {
    const dx = (x[i] as number) - meanX;
    const dy = (y[i] as number) - meanY;
    const square = flat ? (dx * dx + dy * dy) / (along || 1) : squaredDistance(dx, dy, spread);
    if (square <= k) inside += 1;
  }
  return inside;
}

function degeneracy({ xx, yy }: Covariance): EstimateNote {
  return xx + yy > 0 ? 'degenerate:points-on-a-line' : 'degenerate:identical-points';
}
