import { expectConfidence } from '../expectations.js';
import { meanOf } from '../moments.js';
import { patientsOf } from '../patients.js';
import { shareInterval } from '../share.js';
import { bareComparison, type Comparison, comparable, tComparison } from './contrast.js';
import { type Cohorts, oneEyeEach } from './design.js';
import { meanDifference, meanInfluences } from './mean-difference.js';
import { fisherMidP, mcNemarMidP } from './mid-p.js';
import { newcombePaired, type PairedCounts, squareAndAdd } from './newcombe.js';

/** Correlations of fellow eyes that small cohorts borrow from the whole audit, from `auditCorrelation`. */
export interface RiskOptions {
  auditIcc?: number | undefined;
}

/** A risk difference names which test its p is of. */
export interface RiskDifference extends Comparison {
  test: 'fisher-mid-p' | 'mcnemar-mid-p' | 'difference-patient-t' | undefined;
}

/**
 * Difference of two shares, A − B: square-and-add of the two Wilson intervals with the correlation r of the patient
 * sums; Newcombe's paired interval with corrected φ where each patient has one eye in each cohort.
 *
 * @param a, b       1 where an eye has the property, 0 where not
 * @param cohorts    their patients, from `recogniseDesign`
 * @param confidence such as 0.95
 * @returns p by Fisher's mid-p with one eye a patient, McNemar's mid-p in a fellow-eye design, else the t of the means
 * @throws {RangeError} as `meanDifference`, and at a value other than 0 and 1
 * @source Newcombe RG. Stat Med 1998;17:873–890 and 2635–2650; correlation by this project's statistics page
 * @example riskDifference(a, b, recogniseDesign(patientsA, patientsB), 0.95).value // share of A − share of B
 */
export function riskDifference(
  a: Uint8Array,
  b: Uint8Array,
  cohorts: Cohorts,
  confidence: number,
  { auditIcc }: RiskOptions = {},
): RiskDifference {
  const fellow = cohorts.design === 'fellow-eye';
  const method = fellow ? 'newcombe-paired-phi-corrected' : 'square-and-add';
  const t = meanDifference(a, b, cohorts, confidence);
  const bare = { ...bareComparison(cohorts, method), test: undefined };
  if (!comparable(cohorts)) return bare;
  const options = { method: 'wilson' as const, auditIcc };
  const shareA = shareInterval(a, cohorts.a, confidence, options);
  const shareB = shareInterval(b, cohorts.b, confidence, options);
  const [low, high] = fellow
    ? newcombePaired(pairedCounts(a, b, cohorts), confidence)
    : squareAndAdd(limitsOf(shareA), limitsOf(shareB), patientCorrelation(a, b, cohorts));
  const value = (shareA.value as number) - (shareB.value as number);
  return { ...bare, ...testOf(a, b, cohorts, t), value, low, high, standardError: t.standardError };
}

function limitsOf({
  value,
  low,
  high,
}: {
  value?: number | undefined;
  low?: number | undefined;
  high?: number | undefined;
}) {
  return { share: value as number, low: low as number, high: high as number };
}

function testOf(
  a: Uint8Array,
  b: Uint8Array,
  cohorts: Cohorts,
  t: Comparison,
): Pick<RiskDifference, 'p' | 'df' | 'test'> {
  if (cohorts.design === 'fellow-eye') {
    const { onlyA, onlyB } = pairedCounts(a, b, cohorts);
    return { p: mcNemarMidP(onlyA, onlyB), df: undefined, test: 'mcnemar-mid-p' };
  }
  if (!oneEyeEach(cohorts)) return { p: t.p, df: t.df, test: 'difference-patient-t' };
  return { p: fisherMidP(events(a), a.length, events(b), b.length), df: undefined, test: 'fisher-mid-p' };
}

function events(hits: Uint8Array): number {
  return hits.reduce((sum, hit) => sum + hit, 0);
}

/** Pairs of a fellow-eye design by what A and B show. */
function pairedCounts(a: Uint8Array, b: Uint8Array, { a: patientsA, b: patientsB, ...joint }: Cohorts): PairedCounts {
  const ofB = new Uint8Array(joint.patients);
  for (let i = 0; i < b.length; i++) ofB[joint.jointOfB[patientsB.of[i] as number] as number] = b[i] as number;
  const counts = [0, 0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    const cell = 2 * (a[i] as number) + (ofB[joint.jointOfA[patientsA.of[i] as number] as number] as number);
    counts[cell] = (counts[cell] as number) + 1;
  }
  const [neither, onlyB, onlyA, both] = counts as [number, number, number, number];
  return { both, onlyA, onlyB, neither };
}

/** r = Σ a·b/√(Σa²·Σb²) over patients; 0 where cohorts share none, or one of them does not vary. */
function patientCorrelation(a: Uint8Array, b: Uint8Array, cohorts: Cohorts): number {
  const influencesA = meanInfluences(a, cohorts.a);
  const influencesB = meanInfluences(b, cohorts.b);
  const ofA = new Float64Array(cohorts.patients);
  influencesA.forEach((influence, g) => {
    ofA[cohorts.jointOfA[g] as number] = influence;
  });
  let product = 0;
  influencesB.forEach((influence, g) => {
    product += influence * (ofA[cohorts.jointOfB[g] as number] as number);
  });
  const squares = sumOfSquares(influencesA) * sumOfSquares(influencesB);
  return squares > 0 ? product / Math.sqrt(squares) : 0;
}

function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}

/**
 * Ratio of two shares, A/B, only where both are above zero: the logarithm by patient sums, t with f degrees.
 *
 * @throws {RangeError} as `riskDifference`
 * @source delta method on the logarithm; Katz D et al. Biometrics 1978;34:469–474 with independent eyes and large n
 * @example riskRatio(a, b, recogniseDesign(patientsA, patientsB), 0.95).value // share of A / share of B
 */
export function riskRatio(a: Uint8Array, b: Uint8Array, cohorts: Cohorts, confidence: number): Comparison {
  expectConfidence('riskRatio', confidence);
  patientsOf('riskRatio', a, cohorts.a);
  patientsOf('riskRatio', b, cohorts.b);
  const method = 'log-ratio-patient-t';
  const bare = bareComparison(cohorts, method);
  if (!comparable(cohorts)) return bare;
  const shareA = meanOf(a) as number;
  const shareB = meanOf(b) as number;
  if (!(shareA > 0 && shareB > 0)) return { ...bare, notes: [...bare.notes, 'not-estimable:zero-share'] };
  const relativeA = meanInfluences(a, cohorts.a).map((influence) => influence / shareA);
  const relativeB = meanInfluences(b, cohorts.b).map((influence) => influence / shareB);
  const about = { method, confidence, scale: Math.exp } as const;
  return tComparison(cohorts, about, Math.log(shareA / shareB), relativeA, relativeB);
}
