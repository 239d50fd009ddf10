import { describe, expect, it } from 'vitest';
import { tQuantile } from '../../src/statistics/distributions.js';
import { auditOfEyes, fellows, found, singles } from '../comparison/made-up-audit.js';

// With one eye a patient every number equals its textbook form, worked out here by other arithmetic. Only the t
// quantile is the project's own; it is checked against tables in test/statistics/distributions.test.ts.
const a = [0.31, -0.42, 0.05, 0.88, -0.17, 0.26, 0.26, -1.13, 0.6];
const b = [0.12, 0.47, -0.09, -0.33, 0.21, 0.02, 0.71, -0.26];

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const variance = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + (value - mean(values)) ** 2, 0) / (values.length - 1);

const independent = await auditOfEyes([...singles('A', a, 100), ...singles('B', b, 200)]);

describe('independent eyes', () => {
  it('means: Welch 1947', () => {
    const [vA, vB] = [variance(a) / a.length, variance(b) / b.length];
    const df = (vA + vB) ** 2 / (vA ** 2 / (a.length - 1) + vB ** 2 / (b.length - 1));
    const half = tQuantile(0.975, df) * Math.sqrt(vA + vB);
    const difference = found(independent, 'difference_mean');
    expect(difference.value).toBeCloseTo(mean(b) - mean(a), 12);
    expect(difference.df).toBeCloseTo(df, 10);
    expect(difference.low).toBeCloseTo(mean(b) - mean(a) - half, 12);
    expect(difference.high).toBeCloseTo(mean(b) - mean(a) + half, 12);
  });

  // Brunner & Munzel 2000 by their own route: ranks in the pooled sample less ranks within, not placements.
  it('relative effect: Brunner & Munzel 2000 by overall and internal ranks', () => {
    const [sizesA, sizesB] = [a.map(Math.abs), b.map(Math.abs)];
    const ranksIn = (pool: readonly number[]) => (value: number) =>
      pool.filter((one) => one < value).length + (pool.filter((one) => one === value).length + 1) / 2;
    const overall = ranksIn([...sizesA, ...sizesB]);
    const spread = (own: readonly number[], others: number): number =>
      variance(own.map((value) => (overall(value) - ranksIn(own)(value)) / others));
    const theta = (mean(sizesB.map(overall)) - (sizesB.length + 1) / 2) / sizesA.length;
    const [vA, vB] = [spread(sizesA, b.length) / a.length, spread(sizesB, a.length) / b.length];
    const df = (vA + vB) ** 2 / (vA ** 2 / (a.length - 1) + vB ** 2 / (b.length - 1));
    const effect = found(independent, 'relative_effect_absolute');
    expect(effect.value).toBeCloseTo(theta, 12);
    expect(effect.df).toBeCloseTo(df, 10);
    expect(effect.high).toBeCloseTo(theta + tQuantile(0.975, df) * Math.sqrt(vA + vB), 12);
    expect(effect.notes).toContain('textbook:brunner-munzel');
  });

  it('shift: the median of all differences', () => {
    const all = b.flatMap((one) => a.map((other) => Math.abs(one) - Math.abs(other))).sort((x, y) => x - y);
    const middle = ((all[all.length / 2 - 1] as number) + (all[all.length / 2] as number)) / 2;
    expect(found(independent, 'shift_absolute').value).toBeCloseTo(middle, 12);
  });

  it('spread: the ratio of two SDs', () => {
    expect(found(independent, 'ratio_sd').value).toBeCloseTo(Math.sqrt(variance(b) / variance(a)), 12);
  });

  it('shares: what was counted', () => {
    const within = (values: readonly number[]) =>
      values.filter((value) => Math.abs(value) <= 0.5).length / values.length;
    expect(found(independent, 'difference_share_within_0.50').value).toBeCloseTo(within(b) - within(a), 12);
    expect(found(independent, 'ratio_share_within_0.50').value).toBeCloseTo(within(b) / within(a), 12);
  });
});

describe('fellow eyes', () => {
  it('means: the paired t', async () => {
    const audit = await auditOfEyes(fellows(a.slice(0, 8), b));
    const differences = b.map((value, i) => value - (a[i] as number));
    const half = tQuantile(0.975, 7) * Math.sqrt(variance(differences) / 8);
    const difference = found(audit, 'difference_mean');
    expect(difference.value).toBeCloseTo(mean(differences), 12);
    expect(difference.low).toBeCloseTo(mean(differences) - half, 12);
    expect(difference.df).toBeCloseTo(7, 10);
  });
});

describe('one eye a patient in two centroids', () => {
  // V = S_A/n_A + S_B/n_B, T² = d′V⁻¹d: Johnson & Wichern, section 6.3, unequal covariances.
  it('gives T² with the covariances of both', async () => {
    const points = (technique: string, first: number, angles: readonly number[]) =>
      angles.map((axis, i) => {
        const made = { cylinder: 0.5 + 0.25 * (i % 3), axis, error: 0 };
        return { patient: first + i, side: 'R' as const, technique, ...made };
      });
    const eyes = [...points('A', 100, [10, 35, 80, 120, 150, 175]), ...points('B', 200, [5, 20, 60, 95, 170])];
    const planeOf = (technique: string) =>
      eyes
        .filter((eye) => eye.technique === technique)
        .map(({ cylinder, axis }) => [
          cylinder * Math.cos((axis * Math.PI) / 90),
          cylinder * Math.sin((axis * Math.PI) / 90),
        ]);
    const moments = (points: readonly number[][]) => {
      const [x, y] = [0, 1].map((k) => points.map((point) => point[k] as number)) as [number[], number[]];
      const xy = x.reduce((sum, value, i) => sum + (value - mean(x)) * ((y[i] as number) - mean(y)), 0);
      const n = points.length;
      return { x: mean(x), y: mean(y), xx: variance(x) / n, yy: variance(y) / n, xy: xy / (n - 1) / n };
    };
    const [ofA, ofB] = [moments(planeOf('A')), moments(planeOf('B'))];
    const [dx, dy] = [ofB.x - ofA.x, ofB.y - ofA.y];
    const [xx, yy, xy] = [ofA.xx + ofB.xx, ofA.yy + ofB.yy, ofA.xy + ofB.xy];
    const t2 = (yy * dx * dx - 2 * xy * dx * dy + xx * dy * dy) / (xx * yy - xy * xy);
    const { results } = await auditOfEyes(eyes);
    const row = (statistic: string) => results.get('refractive_cylinder_after', 'technique=B vs A', statistic);
    expect(row('difference_x').value).toBeCloseTo(dx, 12);
    expect(row('difference_y').value).toBeCloseTo(dy, 12);
    expect(row('t2:difference_centroid').value).toBeCloseTo(t2, 10);
    expect(row('difference_magnitude').note).toContain('textbook:krishnamoorthy-yu');
  });
});
