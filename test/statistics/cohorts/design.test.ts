import { describe, expect, it } from 'vitest';
import { oneEyeEach, recogniseDesign } from '../../../src/statistics/cohorts/design.js';

const design = (a: number[], b: number[]) => recogniseDesign(Int32Array.from(a), Int32Array.from(b));

describe('recogniseDesign', () => {
  it('says independent where no patient is in both', () => {
    expect(design([1, 1, 2], [3, 4])).toMatchObject({ design: 'independent', patients: 4, sizes: [2, 2, 0] });
  });

  it('says fellow-eye where each patient has one eye in each, in any order', () => {
    expect(design([1, 2, 3], [3, 1, 2])).toMatchObject({ design: 'fellow-eye', patients: 3, sizes: [0, 0, 3] });
  });

  it('says mixed as soon as one patient breaks the pairs', () => {
    expect(design([1, 2, 3], [1, 2, 4])).toMatchObject({ design: 'mixed', patients: 4, sizes: [1, 1, 2] });
    expect(design([1, 1, 2], [1, 2]).design).toBe('mixed');
  });

  it('knows whether every patient has one eye in all', () => {
    expect(oneEyeEach(design([1, 2], [3, 4]))).toBe(true);
    expect(oneEyeEach(design([1, 1], [3, 4]))).toBe(false);
    expect(oneEyeEach(design([1, 2], [1, 2]))).toBe(false);
  });
});
