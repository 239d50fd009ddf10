import { describe, expect, it } from 'vitest';
import { geometricMean } from '../../src/statistics/geometric.js';
import { meanInterval } from '../../src/statistics/mean.js';
import { single } from './made-up-eyes.js';

describe('geometricMean', () => {
  // Standards page, check 15: 0.5 and 2.0 average to 1.25, geometrically to 1.
  it('finds no over-correction in 0.5 and 2.0', () => {
    expect(geometricMean(Float64Array.of(0.5, 2), single(2), 0.95).value).toBeCloseTo(1, 15);
  });

  it('is the exponential of the mean interval of the logarithms', () => {
    const logs = Float64Array.of(-0.2, 0.1, 0.3, 0, 0.4);
    const plain = meanInterval(logs, single(5), 0.95);
    const found = geometricMean(logs.map(Math.exp), single(5), 0.95);
    expect(found.value).toBeCloseTo(Math.exp(plain.value as number), 12);
    expect(found.low).toBeCloseTo(Math.exp(plain.low as number), 12);
    expect(found.high).toBeCloseTo(Math.exp(plain.high as number), 12);
    expect(found.method).toBe('geometric-patient-t');
  });

  it('has neither value nor limits without eyes, and refuses zero', () => {
    expect(geometricMean(new Float64Array(), single(0), 0.95)).toMatchObject({ value: undefined, low: undefined });
    expect(() => geometricMean(Float64Array.of(1, 0), single(2), 0.95)).toThrow(
      'geometricMean: value 1 is 0; expected above 0',
    );
  });
});
