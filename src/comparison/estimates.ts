import { hitsOf } from '../analysis/shares.js';
import type { Comparison } from '../statistics/cohorts/contrast.js';
import { oneEyeEach } from '../statistics/cohorts/design.js';
import { meanDifference } from '../statistics/cohorts/mean-difference.js';
import { relativeEffect } from '../statistics/cohorts/relative-effect.js';
import { riskDifference, riskRatio } from '../statistics/cohorts/risk.js';
import { shift } from '../statistics/cohorts/shift.js';
import { spreadRatio } from '../statistics/cohorts/spread-ratio.js';
import { tQuantile } from '../statistics/distributions.js';
import { fewestPatients } from '../statistics/estimate.js';
import type { PatientIndex } from '../statistics/patients.js';
import type { Compared } from './compared.js';
import type { Pair } from './pair.js';

/** A comparison by one number; differences and ratios are of the compared cohort to the reference. */
export interface Found extends Comparison {
  /** Method code of the test behind p; undefined where there is none. */
  test: string | undefined;
}

/** What an estimate is made with. */
export interface EstimateSettings {
  /** Level of the interval. */
  level: number;
  /** Correlation of fellow eyes over the whole audit in a share, worked out where a small cohort borrows it. */
  auditIcc: (meets: (value: number) => boolean) => number | undefined;
}

const byItsOwn = (found: Comparison): Found => ({ ...found, test: found.p === undefined ? undefined : found.method });

/** The relative effect; one eye a patient makes its test that of Brunner and Munzel. */
function effectOf({ compared, reference, cohorts }: Pair, level: number): Found {
  const found = byItsOwn(relativeEffect(compared, reference, cohorts, level));
  const isTextbook = found.p !== undefined && oneEyeEach(cohorts);
  return isTextbook ? { ...found, notes: [...found.notes, 'textbook:brunner-munzel'] } : found;
}

/**
 * The shift has its limits from the relative effect, and its test too: a shift of 0 is an effect of one half. Its
 * standard error is that of the interval, half of it over t.
 */
function shiftOf(pair: Pair, level: number): Found {
  const found = shift(pair.compared, pair.reference, pair.cohorts, level);
  const { p, df, test } = effectOf(pair, level);
  const { low, high } = found;
  const isKnown = low !== undefined && high !== undefined && found.df !== undefined;
  const standardError = isKnown ? (high - low) / 2 / tQuantile((1 + level) / 2, found.df as number) : undefined;
  return { ...found, standardError, p, df, test };
}

function hits(pair: Pair, meets: (value: number) => boolean): readonly [Uint8Array, Uint8Array] {
  return [hitsOf(pair.compared, meets), hitsOf(pair.reference, meets)];
}

/** Only a group in which some patients, but too few, have both eyes borrows a correlation from the whole audit. */
export function borrows({ bilateral }: PatientIndex): boolean {
  return bilateral > 0 && bilateral < fewestPatients;
}

/**
 * One statistic of two cohorts, by its estimator.
 *
 * @throws {RangeError} for a centroid, which is a vector
 */
export function estimateOf(one: Compared, pair: Pair, { level, auditIcc }: EstimateSettings): Found {
  const { compared, reference, cohorts } = pair;
  const meets = one.meets ?? (() => false);
  switch (one.by) {
    case 'mean':
      return byItsOwn(meanDifference(compared, reference, cohorts, level));
    case 'spread':
      return byItsOwn(spreadRatio(compared, reference, cohorts, level));
    case 'effect':
      return effectOf(pair, level);
    case 'shift':
      return shiftOf(pair, level);
    case 'risk':
      return riskDifference(...hits(pair, meets), cohorts, level, {
        auditIcc: borrows(cohorts.a) || borrows(cohorts.b) ? auditIcc(meets) : undefined,
      });
    case 'risk-ratio':
      return byItsOwn(riskRatio(...hits(pair, meets), cohorts, level));
    case 'centroid':
      throw new RangeError('estimateOf: a centroid is a vector; expected a statistic that is one number');
  }
}
