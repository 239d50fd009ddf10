import { describe, expect, it } from 'vitest';
import { excessKurtosis } from '../../src/statistics/moments.js';
import { referencePresent } from '../shared-reference.js';
import { agrees, example } from './reference-examples.js';

describe('excessKurtosis', () => {
  it.skipIf(!referencePresent).each(['shapiro-weights', 'shapiro-women-height-ozone'])(
    'is the moment form of R e1071 1.7.13, type 1: %s',
    (id) => {
      const { input, expected, tolerance } = example(id);
      expect(agrees(excessKurtosis(Float64Array.from(input.x)), expected.kurt_type1, tolerance)).toBe(true);
    },
  );

  it('does not exist where values do not vary', () => {
    expect(excessKurtosis(Float64Array.of(2, 2, 2))).toBeUndefined();
    expect(excessKurtosis(new Float64Array())).toBeUndefined();
  });
});
