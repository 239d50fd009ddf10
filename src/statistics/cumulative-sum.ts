import { seeded } from './seeded.js';

/**
 * What one eye adds to the cumulative sum: the logarithm of how much more likely what happened is at the alternative.
 *
 * @param event      whether the eye failed
 * @param risk       its probability of failing at the acceptable state
 * @param oddsRatio  odds of failing at the alternative over those at the acceptable state
 * @throws {RangeError} unless 0 < risk < 1 and the ratio is above 0
 * @source Steiner SH, Cook RJ, Farewell VT, Treasure T. Biostatistics 2000;1:441–452
 * @example scoreWeight(true, 0.1, 2) // log(2/1.1) = 0.5978
 */
export function scoreWeight(event: boolean, risk: number, oddsRatio: number): number {
  if (!(risk > 0 && risk < 1 && oddsRatio > 0)) {
    throw new RangeError(`scoreWeight: risk ${risk}, ratio ${oddsRatio}; expected 0 < risk < 1 and a ratio above 0`);
  }
  return (event ? Math.log(oddsRatio) : 0) - Math.log(1 - risk + oddsRatio * risk);
}

/** Odds of one probability over those of another. */
export function oddsRatioOf(alternative: number, risk: number): number {
  return alternative / (1 - alternative) / (risk / (1 - risk));
}

/** The course of a cumulative sum, and the places at which it passed its limit. */
export interface Course {
  /** After each eye. */
  sums: Float64Array;
  /** Index of each eye with a signal; the sum starts again at 0 behind it. */
  signals: readonly number[];
}

/** Cumulative sum of weights, never below 0. @param limit  a signal is a sum above it; infinite: none is looked for */
export function cumulativeSum(weights: Float64Array, limit = Number.POSITIVE_INFINITY): Course {
  const sums = new Float64Array(weights.length);
  const signals: number[] = [];
  let sum = 0;
  for (let i = 0; i < weights.length; i++) {
    sum = Math.max(0, sum + (weights[i] as number));
    sums[i] = sum;
    if (sum <= limit) continue;
    signals.push(i);
    sum = 0;
  }
  return { sums, signals };
}

/** A series of eyes as it is simulated. */
export interface Series {
  /** Patient of each eye, in the order of surgery. */
  patients: Int32Array;
  /** Probability of failing at the acceptable state. */
  risk: number;
  oddsRatio: number;
  /** Correlation of fellow eyes in failing; negative counts as 0. */
  icc: number;
}

/** Greatest sum of one simulated series: a fellow eye repeats the first with the probability of the correlation. */
function greatest({ patients, risk, oddsRatio, icc }: Series, next: () => number, seen: Map<number, boolean>): number {
  const [failed, passed] = [scoreWeight(true, risk, oddsRatio), scoreWeight(false, risk, oddsRatio)];
  seen.clear();
  let [sum, most] = [0, 0];
  for (const patient of patients) {
    const fellow = seen.get(patient);
    const event = fellow !== undefined && next() < icc ? fellow : next() < risk;
    seen.set(patient, event);
    sum = Math.max(0, sum + (event ? failed : passed));
    if (sum > most) most = sum;
  }
  return most;
}

/** Runs of a simulation: enough for a stable limit, fewer where the series is long. */
const mostEyes = 2e7;
const runsFor = (eyes: number): number => Math.min(10_000, Math.max(1000, Math.floor(mostEyes / Math.max(1, eyes))));

/**
 * The limit that a series of this length, with these fellow eyes and at the acceptable state, passes at all with at most
 * the declared probability: simulated, seeded.
 *
 * @param falseAlarm  probability of one signal or more in the whole series
 * @throws {RangeError} unless 0 < falseAlarm < 1
 * @source definition; checked by simulation in test/statistics/cumulative-sum.test.ts
 */
export function simulatedLimit(series: Series, falseAlarm: number, seed: number): number {
  if (!(falseAlarm > 0 && falseAlarm < 1)) {
    throw new RangeError(`simulatedLimit: false alarm ${falseAlarm}; expected between 0 and 1`);
  }
  const [runs, next, seen] = [runsFor(series.patients.length), seeded(seed), new Map<number, boolean>()];
  const maxima = Float64Array.from({ length: runs }, () => greatest(series, next, seen)).sort();
  return maxima[runs - 1 - Math.floor(falseAlarm * runs)] as number;
}
