import { normalQuantile } from './distributions.js';
import { expectConfidence, expectPositive, expectProbability } from './expectations.js';

/** How sure a planned comparison is to be: two-sided confidence of its interval, and power. */
export interface Certainty {
  confidence: number;
  power: number;
}

/** z of the confidence plus z of the power: 1.959964 + 0.841621 at 95 % and 80 %. */
function multiplier({ confidence, power }: Certainty): number {
  expectConfidence('size', confidence);
  expectConfidence('size', power);
  return normalQuantile((1 + confidence) / 2) + normalQuantile(power);
}

/**
 * Independent eyes per cohort to see a difference of shares: z²[p_A(1 − p_A) + p_B(1 − p_B)]/(p_A − p_B)². Not rounded.
 *
 * @throws {RangeError} unless both lie from 0 to 1 and differ
 * @source textbook form; 65 against 75 % gives 325.7
 * @example sizeForShares(0.65, 0.75, { confidence: 0.95, power: 0.8 }) // 325.7
 */
export function sizeForShares(shareA: number, shareB: number, certainty: Certainty): number {
  expectProbability('sizeForShares', 'shareA', shareA);
  expectProbability('sizeForShares', 'shareB', shareB);
  expectPositive('sizeForShares', '|shareA − shareB|', Math.abs(shareA - shareB));
  const variance = shareA * (1 - shareA) + shareB * (1 - shareB);
  return (multiplier(certainty) ** 2 * variance) / (shareA - shareB) ** 2;
}

/**
 * Independent eyes per cohort to see a difference of means: 2z²s²/δ². Not rounded.
 *
 * @throws {RangeError} unless SD and difference are above 0
 * @source textbook form; 0.10 D at an SD of 0.45 D gives 317.9
 * @example sizeForMeans(0.1, 0.45, { confidence: 0.95, power: 0.8 }) // 317.9
 */
export function sizeForMeans(difference: number, sd: number, certainty: Certainty): number {
  expectPositive('sizeForMeans', 'difference', difference);
  expectPositive('sizeForMeans', 'sd', sd);
  return (2 * multiplier(certainty) ** 2 * sd * sd) / (difference * difference);
}

/**
 * Independent eyes per cohort to see a ratio of SDs: z²(κ − 1)/(2 ln²r). Not rounded.
 *
 * @param kurtosis κ, 3 for normal values
 * @throws {RangeError} unless the ratio is above 0 and not 1, and κ above 1
 * @source variance of ln s, (κ − 1)/(4n), in each cohort; a ratio of 1.2 gives 236.1
 * @example sizeForSpread(1.2, 3, { confidence: 0.95, power: 0.8 }) // 236.1
 */
export function sizeForSpread(ratio: number, kurtosis: number, certainty: Certainty): number {
  expectPositive('sizeForSpread', 'ratio', ratio);
  expectPositive('sizeForSpread', '|ln ratio|', Math.abs(Math.log(ratio)));
  expectPositive('sizeForSpread', 'kurtosis − 1', kurtosis - 1);
  return (multiplier(certainty) ** 2 * (kurtosis - 1)) / (2 * Math.log(ratio) ** 2);
}

/**
 * Independent eyes per cohort to show that a share is not worse by more than a margin: z²·2p(1 − p)/M². Not rounded.
 *
 * @throws {RangeError} unless the share lies from 0 to 1 and the margin is above 0
 * @source textbook form; 75 % with 10 points gives 294.3
 * @example sizeForNonInferiority(0.75, 0.1, { confidence: 0.95, power: 0.8 }) // 294.3
 */
export function sizeForNonInferiority(share: number, margin: number, certainty: Certainty): number {
  expectProbability('sizeForNonInferiority', 'share', share);
  expectPositive('sizeForNonInferiority', 'margin', margin);
  return (multiplier(certainty) ** 2 * 2 * share * (1 - share)) / (margin * margin);
}

/**
 * Eyes per cohort that independent eyes become: times the design effect, divided by those not lost, rounded up.
 *
 * @param independent from one of the functions above
 * @param bilateral   share of patients with both eyes, from 0 to 1: Σm²/n = (1 + 3b)/(1 + b)
 * @param icc         correlation of fellow eyes, from 0 to 1
 * @param loss        share of eyes without outcome, from 0 to below 1
 * @throws {RangeError} outside these ranges
 * @source design effect of unequal clusters: Donner A, Klar N 2000
 * @example eyesNeeded(325.7, { bilateral: 0.6, icc: 0.3, loss: 0 }) // 399
 */
export function eyesNeeded(
  independent: number,
  { bilateral, icc, loss }: { bilateral: number; icc: number; loss: number },
): number {
  expectPositive('eyesNeeded', 'independent', independent);
  expectProbability('eyesNeeded', 'bilateral', bilateral);
  expectProbability('eyesNeeded', 'icc', icc);
  expectProbability('eyesNeeded', 'loss', loss);
  expectPositive('eyesNeeded', '1 − loss', 1 - loss);
  const meanSize = (1 + 3 * bilateral) / (1 + bilateral);
  return Math.ceil((independent * (1 + (meanSize - 1) * icc)) / (1 - loss));
}

/**
 * Smallest difference that a comparison of this standard error detects at this power: 2.80·√V at 95 % and 80 %.
 *
 * @source textbook form
 * @example detectableDifference(0.1, { confidence: 0.95, power: 0.8 }) // 0.2802
 */
export function detectableDifference(standardError: number, certainty: Certainty): number {
  return multiplier(certainty) * standardError;
}
