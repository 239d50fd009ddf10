import type { ResultRow } from '../records/result.js';
import { auditCorrelation, designEffect, intraclassCorrelation } from '../statistics/icc.js';
import { meanInterval } from '../statistics/mean.js';
import { atOrBelow, median } from '../statistics/median.js';
import { standardDeviation } from '../statistics/spread.js';
import { summary } from '../statistics/summary.js';
import { countRow, estimateRow, rowOf, type Sample } from './sample.js';

/** The correlation a subgroup may borrow: worked out in the whole audit, remembered for its groups. */
export function borrowed(
  sample: Sample,
  statistic: string,
  hits: Uint8Array,
  patients = sample.patients,
): number | undefined {
  if (sample.group === 'all') sample.auditIcc.set(statistic, auditCorrelation(hits, patients));
  return sample.auditIcc.get(statistic);
}

/** Eyes in the estimate, and eyes of the group without the value. */
export function presence(sample: Sample): readonly ResultRow[] {
  const n = sample.values.length;
  return [countRow(sample, 'n', n), countRow(sample, 'missing', sample.eyes - n)];
}

/** Mean, spread, median, quartiles and range, each with its interval where it has one. */
export function locationRows(sample: Sample): readonly ResultRow[] {
  const { values, patients, confidence } = sample;
  const { q25, q75, min, max, median: middle } = summary(values);
  const icc = middle === undefined ? undefined : borrowed(sample, 'median', atOrBelow(values, middle));
  const plain = (statistic: string, value: number | undefined): ResultRow =>
    rowOf(sample, {
      statistic,
      value,
      method: 'quantile-type-7',
      note: value === undefined ? 'not-estimable:no-eyes' : '',
    });
  return [
    estimateRow(sample, 'mean', meanInterval(values, patients, confidence)),
    estimateRow(sample, 'sd', standardDeviation(values, patients, confidence)),
    estimateRow(sample, 'median', median(values, patients, confidence, icc)),
    plain('q25', q25),
    plain('q75', q75),
    plain('min', min),
    plain('max', max),
  ];
}

/** How alike the eyes of a patient are, and what that costs in precision of the mean. */
export function correlationRows(sample: Sample): readonly ResultRow[] {
  const icc = intraclassCorrelation(sample.values, sample.patients);
  const deff = icc === undefined ? undefined : designEffect(sample.patients, icc);
  const note = icc === undefined ? 'not-estimable:no-pairs' : '';
  const about = { unit: '', method: 'anova', note };
  return [
    rowOf(sample, { statistic: 'icc', value: icc, ...about }),
    rowOf(sample, { statistic: 'design_effect', value: deff, ...about }),
  ];
}
