import { decimalOfLogMAR } from '../../src/acuity/log-mar.js';
import { type EyeGroup, rowOf, type Sample } from '../../src/analysis/sample.js';
import { numbersOf } from '../../src/columns/table.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Derived } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';
import type { ResultRow } from '../../src/records/result.js';

/** The classic form of an index: mean decimal acuity over mean decimal acuity, of the eyes that have the ratio. */
export function ratioOfMeans(
  sample: Sample,
  group: EyeGroup,
  measure: Measure,
  [numerator, denominator]: NonNullable<Measure['ratioOf']>,
  { eyes, membership }: Derived,
): ResultRow {
  const analysed = analysedIn(membership[measure.family]);
  const ratio = numbersOf(eyes, measure.name);
  const counted = group.eyes.filter((eye) => analysed[eye] === 1 && !Number.isNaN(ratio[eye] as number));
  const sumOf = (name: string): number => {
    const logMAR = numbersOf(eyes, name);
    return counted.reduce((sum, eye) => sum + decimalOfLogMAR(logMAR[eye] as number), 0);
  };
  const value = counted.length === 0 ? undefined : sumOf(numerator) / sumOf(denominator);
  const note = value === undefined ? 'not-estimable:no-eyes' : '';
  return rowOf(sample, { statistic: 'ratio_of_means', value, method: 'ratio-of-means', note });
}
