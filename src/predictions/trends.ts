import type { Measure } from '../records/measure.js';

/** What the error is followed over: a measure of the eye before surgery, and the field that bands of it are called by. */
export const trendFields = [
  { field: 'axial_length', measure: 'axial_length', unit: 'mm' },
  { field: 'k_mean', measure: 'k_mean_before', unit: 'D' },
] as const;
export type TrendField = (typeof trendFields)[number];

const primary = 'prediction_error';
const further = 'prediction_error:';

/**
 * The errors that are followed: the prediction error, else the error against the target, then those of further
 * formulas.
 *
 * @param hasPrediction  whether any eye has a prediction error
 */
export function trendErrors(registry: readonly Measure[], hasPrediction: boolean): readonly Measure[] {
  const first = hasPrediction ? primary : 'target_error';
  return registry.filter(({ name }) => name === first || name.startsWith(further));
}

/** The name under which the trend of one error over one field stands in the results, and its marks in the figure. */
export function trendName({ field }: TrendField, error: string): string {
  return `trend:${field}:${error}`;
}
