import { describe, expect, it } from 'vitest';
import { contrastVariance, patientContrasts, strataDegrees } from '../../../src/statistics/cohorts/contrast.js';
import { recogniseDesign } from '../../../src/statistics/cohorts/design.js';

const design = (a: number[], b: number[]) => recogniseDesign(Int32Array.from(a), Int32Array.from(b));

describe('patient contrasts, worked by hand', () => {
  // A: patients 1, 2, 3; B: patients 3, 4. k_A = √(3/2), k_B = √2.
  const cohorts = design([1, 2, 3], [3, 4]);
  const a = Float64Array.of(1, -2, 1);
  const b = Float64Array.of(3, -3);

  it('weigh each cohort and meet in the shared patient', () => {
    const kA = Math.sqrt(1.5);
    const kB = Math.sqrt(2);
    const expected = [kA, -2 * kA, kA - 3 * kB, 3 * kB];
    patientContrasts(cohorts, a, b).forEach((w, g) => {
      expect(w).toBeCloseTo(expected[g] as number, 14);
    });
  });

  it('split their variance and degrees by stratum', () => {
    const degrees = strataDegrees(cohorts);
    // 2(1 − 1/3), 1(1 − 1/2), 1(1 − 1/6 − 1/4).
    [4 / 3, 1 / 2, 7 / 12].forEach((f, s) => {
      expect(degrees[s]).toBeCloseTo(f, 14);
    });
    const parts = [1.5 * 5, 2 * 9, (Math.sqrt(1.5) - 3 * Math.sqrt(2)) ** 2] as const;
    const V = parts[0] + parts[1] + parts[2];
    const { variance, df } = contrastVariance(cohorts, a, b);
    expect(variance).toBeCloseTo(V, 12);
    expect(df).toBeCloseTo(V ** 2 / (parts[0] ** 2 / (4 / 3) + parts[1] ** 2 * 2 + (parts[2] ** 2 * 12) / 7), 12);
  });
});
