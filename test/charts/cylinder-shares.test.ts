import { describe, expect, it } from 'vitest';
import { draw } from '../../pipeline/6-draw.js';
import type { Figure } from '../../src/records/report.js';
import type { ResultRow } from '../../src/records/result.js';
import { indexResults } from '../../src/results/index.js';
import { en } from '../../src/words/index.js';
import { inventedEyes, inventedPlan, inventedPoints, inventedRows } from './synthetic.js';

const eyes = inventedEyes(60);
const rows = inventedRows(eyes);
const before = 'corneal_cylinder_magnitude_before';
const after = 'refractive_cylinder_after_recorded';

function figureOf(id: string, all: readonly ResultRow[]): Figure | undefined {
  return draw(indexResults(all), inventedPoints(eyes), inventedPlan(), en).find((figure) => figure.id === id);
}

interface Part {
  mark?: { type?: string; fill?: string; stroke?: string };
  data?: { values: readonly Record<string, number>[] };
}

function partsOf(value: unknown): readonly Part[] {
  if (typeof value !== 'object' || value === null) return [];
  const below = Object.values(value).flatMap(partsOf);
  return Array.isArray(value) ? below : [value as Part, ...below];
}

/** Cumulative shares of one measure. */
function withShares(measure: string, shares: readonly (number | undefined)[], all = rows): readonly ResultRow[] {
  const limits = ['0.25', '0.50', '0.75', '1.00', '1.50', '2.00'];
  return all.map((row) => {
    const at = limits.indexOf(row.statistic.replace('share_within_', ''));
    return row.measure === measure && at >= 0 ? { ...row, value: shares[at] } : row;
  });
}

describe('bands of cylinder', () => {
  const shares = [0.1, 0.3, 0.3, 0.6, 0.9, 1];
  const picture = figureOf(
    'cylinder-shares',
    withShares(after, shares, withShares(before, [0, 0.2, 0.4, 0.5, 0.8, 0.9])),
  );
  const width = 238;
  /** Both bars, band by band: boxes without an outline, as swatches have one. */
  const bands = partsOf(picture?.spec)
    .filter(({ mark }) => mark?.type === 'rect' && mark.stroke === undefined)
    .map(({ data }) =>
      (data?.values ?? []).map(({ x = 0, x2 = 0 }) => [Math.round((100 * x) / width), Math.round((100 * x2) / width)]),
    );

  it('reach from one cumulative share to the next, the last to the end of the bar', () => {
    expect(bands).toEqual([
      [
        [0, 0],
        [0, 10],
      ],
      [
        [0, 20],
        [10, 30],
      ],
      [
        [20, 40],
        [30, 30],
      ],
      [
        [40, 50],
        [30, 60],
      ],
      [
        [50, 80],
        [60, 90],
      ],
      [
        [80, 90],
        [90, 100],
      ],
      [
        [90, 100],
        [100, 100],
      ],
    ]);
  });

  it('join equal limits, and print the cumulative shares', () => {
    const joins = partsOf(picture?.spec).filter(({ mark, data }) => mark?.type === 'rule' && data?.values.length === 6);
    expect(joins[0]?.data?.values.map(({ x2 = 0 }) => Math.round((100 * x2) / width))).toEqual([
      10, 30, 30, 60, 90, 100,
    ]);
    const texts = JSON.stringify(picture?.spec);
    for (const text of ['"10"', '"30"', '"60"', '"90"', '"≤ 0.25"', '"> 2.00"']) expect(texts).toContain(text);
    expect(picture?.alt).toContain('refractive, after surgery: n = 60 eyes (60 patients); 10 % up to 0.25 dioptres');
  });

  it('name the plane of each bar, in the picture and in the legend', () => {
    expect(JSON.stringify(picture?.spec)).toContain('Corneal, before surgery (corneal plane): n = 60');
    expect(JSON.stringify(picture?.spec)).toContain('Refractive, after surgery (spectacle plane): n = 60');
    expect(picture?.legend).toContain('as recorded, spectacle plane');
  });

  it('are not drawn where a share is hidden', () => {
    const hidden = figureOf('cylinder-shares', withShares(after, [0.1, undefined, 0.3, 0.6, 0.9, 1]));
    const bars = partsOf(hidden?.spec).filter(({ mark }) => mark?.type === 'rect' && mark.stroke === undefined);
    for (const { data } of bars) expect(data?.values).toHaveLength(1);
  });

  it('need a cylinder after surgery, and do without one before it', () => {
    const none = (measure: string) =>
      rows.map((row) => (row.measure === measure && row.statistic === 'n' ? { ...row, value: 0, n: 0 } : row));
    expect(figureOf('cylinder-shares', none(after))).toBeUndefined();
    expect(figureOf('cylinder-shares', none(before))?.alt).not.toContain('before surgery:');
  });
});

describe('the angle of error', () => {
  const one = figureOf('angle-error', rows);

  it('has brackets at 5 and 15 degrees, its missing counted, and says which way is positive', () => {
    const texts = JSON.stringify(one?.spec);
    expect(texts).toMatch(/\d+ % within ±5°/);
    expect(texts).toMatch(/\d+ % within ±15°/);
    expect(texts).toContain('counter-clockwise →');
    const missing = rows.map((row) =>
      row.measure === 'angle_of_error' && row.statistic === 'missing' ? { ...row, value: 7 } : row,
    );
    expect(figureOf('angle-error', missing)?.legend).toContain('n = 60 eyes (60 patients), 7 missing');
    expect(one?.legend).toContain('Below 0.25 D of target');
    expect(one?.title).toContain('corneal plane');
  });

  it('reaches as far to the left as to the right, farther where eyes are', () => {
    const domain = (figure: Figure | undefined) =>
      /"domain":\[(-[\d.]+),([\d.]+)\]/.exec(JSON.stringify(figure?.spec))?.slice(1).map(Number);
    const bin = (edges: string) =>
      rows.map((row) => {
        if (row.measure !== 'angle_of_error' || !row.statistic.startsWith('count_from')) return row;
        return { ...row, value: row.statistic === `count_from_${edges}` ? 60 : 0 };
      });
    expect(domain(figureOf('angle-error', bin('-2.5_to_2.5')))).toEqual([-22.5, 22.5]);
    expect(domain(figureOf('angle-error', bin('-37.5_to_-32.5')))).toEqual([-37.5, 37.5]);
    // An open bin stands half a width apart: 42.5 + 2.5 + 5.
    expect(domain(figureOf('angle-error', bin('42.5_to_inf')))).toEqual([-50, 50]);
  });
});
