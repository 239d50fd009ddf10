import { type Compared, comparedBy } from '../../src/comparison/compared.js';
import { comparisonGroup } from '../../src/comparison/group.js';
import { measureRegistry } from '../../src/measures/index.js';
import type { ResultRow } from '../../src/records/result.js';
import type { InventedEye } from './synthetic-rows.js';

/** The measures of an invented eye that cohorts are compared by. */
const valuesOf: Readonly<Record<string, (eye: InventedEye) => number>> = {
  prediction_error: ({ error }) => error,
  target_error: ({ error }) => error,
  cdva: ({ cdva }) => cdva,
  udva: ({ udva }) => udva,
};

interface Found {
  value: number;
  low: number;
  high: number;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function variance(values: readonly number[]): number {
  const middle = mean(values);
  return values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1);
}

/** Difference of two means with the plainest interval; of 0 and 1 it is that of two shares. */
function difference(b: readonly number[], a: readonly number[]): Found {
  const value = mean(b) - mean(a);
  const half = 1.96 * Math.sqrt(variance(b) / b.length + variance(a) / a.length);
  return { value, low: value - half, high: value + half };
}

function ratio(b: readonly number[], a: readonly number[]): Found {
  const value = Math.sqrt(variance(b) / variance(a));
  const half = Math.exp(1.96 * Math.sqrt(0.5 / b.length + 0.5 / a.length));
  return { value, low: value / half, high: value * half };
}

/** What charts draw of a statistic; the rest stands in tables alone. */
function foundBy({ by, on, meets }: Compared, b: readonly number[], a: readonly number[]): Found | undefined {
  const sized = (values: readonly number[]): readonly number[] => (on === 'magnitudes' ? values.map(Math.abs) : values);
  if (by === 'mean' || by === 'shift') return difference(sized(b), sized(a));
  if (by === 'spread') return ratio(b, a);
  if (by !== 'risk' || !meets) return undefined;
  const hits = (values: readonly number[]): readonly number[] => values.map((value) => (meets(value) ? 1 : 0));
  return difference(hits(b), hits(a));
}

/** Rows of every comparison of invented cohorts, the first of them the reference; one primary, without a margin. */
export function inventedComparison(eyes: readonly InventedEye[], cohorts: readonly string[]): readonly ResultRow[] {
  const [reference, ...others] = cohorts;
  if (reference === undefined || others.length === 0) return [];
  const own = (cohort: number): readonly InventedEye[] => eyes.filter((eye) => eye.cohort === cohort);
  const pairs = others.flatMap((name, i) => {
    return pairRows(comparisonGroup('technique', name, reference), own(i + 1), own(0), others.length);
  });
  const bare = { group: 'all', ci_low: undefined, ci_high: undefined, n: eyes.length, eyes: eyes.length, patients: 0 };
  const row = { measure: 'primaries', ...bare, unit: '', method: 'bonferroni', note: '' };
  return [
    { ...row, statistic: 'count', value: others.length },
    { ...row, statistic: 'confidence', value: 1 - 0.05 / others.length },
    ...pairs,
  ];
}

function pairRows(
  group: string,
  b: readonly InventedEye[],
  a: readonly InventedEye[],
  k: number,
): readonly ResultRow[] {
  const n = a.length + b.length;
  const bare = { group, ci_low: undefined, ci_high: undefined, n, eyes: n, patients: n, method: '' };
  const design = { ...bare, measure: 'design', statistic: 'patients_both', value: 0, unit: 'patients' };
  const outcomes = measureRegistry([]).flatMap((measure) => {
    const value = valuesOf[measure.name];
    return comparedBy(measure).flatMap((one): readonly ResultRow[] => {
      const found = value && foundBy(one, b.map(value), a.map(value));
      if (!found) return [];
      const isPrimary = measure.name === 'prediction_error' && one.statistic === 'difference_share_within_0.50';
      const estimate = { value: found.value, ci_low: found.low, ci_high: found.high };
      const unit = one.by === 'risk' ? 'share' : one.by === 'spread' ? '' : measure.unit;
      const note = isPrimary ? `design:independent;primary:k=${k};verdict:no-difference-shown` : 'design:independent';
      return [{ ...bare, measure: measure.name, statistic: one.statistic, ...estimate, unit, note }];
    });
  });
  return [{ ...design, note: 'design:independent' }, ...outcomes];
}
