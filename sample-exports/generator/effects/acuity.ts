import { type Acuity, rank } from '../acuity.js';
import type { Outcome } from '../outcomes.js';
import { mean } from '../sums.js';
import type { Effect } from './effect.js';

type Sample = readonly Outcome[];
type AcuityEffect = Effect<Sample>;

function meanLogMar(sample: Sample, of: (outcome: Outcome) => Acuity | undefined): number {
  return mean(
    sample.flatMap((outcome) => {
      const acuity = of(outcome);
      return acuity ? [rank(acuity)] : [];
    }),
  );
}

/** Eyes aimed at distance: the only ones whose uncorrected acuity counts. */
function distance(sample: Sample): Outcome[] {
  return sample.filter(({ eye }) => Math.abs(eye.operation.aim) <= 0.5);
}

const correctedAfter = ({ after }: Outcome) => after.corrected;
const uncorrectedAfter = ({ after }: Outcome) => after.uncorrected;
const correctedBefore = ({ before }: Outcome) => before.corrected;

export const ACUITY_EFFECTS: readonly AcuityEffect[] = [
  {
    measure: 'cdva',
    group: 'all',
    statistic: 'mean',
    of: (sample) => meanLogMar(sample, correctedAfter),
    mistakes: {
      'uncorrected and corrected exchanged': (sample) => meanLogMar(sample, uncorrectedAfter),
      'before and after exchanged': (sample) => meanLogMar(sample, correctedBefore),
    },
  },
  {
    measure: 'cdva_before',
    group: 'all',
    statistic: 'mean',
    of: (sample) => meanLogMar(sample, correctedBefore),
    mistakes: { 'before and after exchanged': (sample) => meanLogMar(sample, correctedAfter) },
  },
  {
    measure: 'udva',
    group: 'all',
    statistic: 'mean',
    of: (sample) => meanLogMar(distance(sample), uncorrectedAfter),
    mistakes: {
      'uncorrected and corrected exchanged': (sample) => meanLogMar(distance(sample), correctedAfter),
      'eyes aimed at near counted too': (sample) => meanLogMar(sample, uncorrectedAfter),
    },
  },
];
