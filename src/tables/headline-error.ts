import type { Results } from '../results/index.js';

/** The error that headlines and subgroups count. */
export type HeadlineError = 'prediction_error' | 'target_error';

/** Of the eyes whose refraction at the outcome visit is known, so many need a prediction. */
const enough = 0.9;

/**
 * Which error stands in the headlines: the prediction error where at least 90 % of the eyes with an outcome have a
 * prediction, else the error against the surgeon's target.
 *
 * @returns undefined where no eye has either
 * @throws {RangeError} when the flow of the refraction family has no rows
 * @source settled rule of this project
 */
export function headlineError(results: Results): HeadlineError | undefined {
  const eyes = (measure: string) => results.find(measure, 'all', 'n')?.value ?? 0;
  const flow = (step: string) => results.get('flow:refraction', 'all', step).value ?? 0;
  const withOutcome = flow('analysed') + flow('no_prediction');
  const predicted = eyes('prediction_error');
  if (predicted > 0 && predicted >= enough * withOutcome) return 'prediction_error';
  if (eyes('target_error') > 0) return 'target_error';
  return predicted > 0 ? 'prediction_error' : undefined;
}
