import { describe, expect, it } from 'vitest';
import { indexResults } from '../../src/results/index.js';
import { headlineError } from '../../src/tables/headline-error.js';
import { rowsOf } from './rows.js';

/** Eyes with a refraction after surgery, and how many of them have a prediction or a target. */
function choice(withOutcome: number, predicted: number, targeted: number): string | undefined {
  const analysed = Math.max(predicted, targeted);
  return headlineError(
    indexResults([
      ...rowsOf({ measure: 'flow:refraction', n: analysed }, { analysed, no_prediction: withOutcome - analysed }),
      ...rowsOf({ measure: 'prediction_error', n: predicted }, { n: predicted }),
      ...rowsOf({ measure: 'target_error', n: targeted }, { n: targeted }),
    ]),
  );
}

describe('headlineError', () => {
  it('is the prediction error where nine in ten eyes with an outcome have a prediction', () => {
    expect(choice(100, 90, 100)).toBe('prediction_error');
    expect(choice(100, 89, 100)).toBe('target_error');
  });

  it('counts eyes that have neither among those with an outcome', () => {
    expect(choice(101, 90, 90)).toBe('target_error'); // 90 of 101 is 89.1 %
  });

  it('is whichever exists', () => {
    expect(choice(100, 10, 0)).toBe('prediction_error');
    expect(choice(100, 0, 3)).toBe('target_error');
    expect(choice(100, 0, 0)).toBeUndefined();
  });

  it('fails where the flow of eyes has no rows', () => {
    expect(() => headlineError(indexResults([]))).toThrow('no row flow:refraction|all|analysed');
  });
});
