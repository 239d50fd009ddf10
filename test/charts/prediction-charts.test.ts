import { describe, expect, it } from 'vitest';
import { draw } from '../../pipeline/6-draw.js';
import { renderSvg } from '../../pipeline/artwork/svg.js';
import { axisAround, pointAt } from '../../src/charts/scatter.js';
import { artworks } from '../../src/charts/theme.js';
import type { Plan } from '../../src/records/plan.js';
import type { Figure } from '../../src/records/report.js';
import { indexResults } from '../../src/results/index.js';
import { en } from '../../src/words/index.js';
import { outside, overlapping, pictureOf } from './svg-texts.js';
import { inventedEyes, inventedPlan, inventedRows } from './synthetic.js';
import { inventedPredictions } from './synthetic-predictions.js';
import type { InventedEye } from './synthetic-rows.js';

const names = ['manual', 'laser-assisted', 'mini-incision, second surgeon, after the change of lens', 'trainee'];

function figures(
  eyes: readonly InventedEye[],
  {
    cohorts = 1,
    alike = false,
    outputs = {} as Partial<Plan['outputs']>,
    mark = undefined as ((eye: number) => string) | undefined,
  } = {},
): readonly Figure[] {
  const own = cohorts < 2 ? [] : names.slice(0, cohorts);
  const { rows, points } = inventedPredictions(eyes, own, alike);
  const results = indexResults([...inventedRows(eyes, own), ...rows]);
  return draw(results, points, inventedPlan(outputs), en, mark).filter(({ id }) =>
    /^(planned-achieved|error-trend)$/.test(id),
  );
}

const audits: readonly { name: string; eyes: readonly InventedEye[]; cohorts: number; alike?: boolean }[] = [
  ...[1, 2, 30, 400, 3000].map((eyes) => ({ name: `${eyes} eyes`, eyes: inventedEyes(eyes), cohorts: 1 })),
  { name: 'eyes all alike', eyes: inventedEyes(30), cohorts: 1, alike: true },
  { name: 'two cohorts', eyes: inventedEyes(120, 2), cohorts: 2 },
  { name: 'three cohorts', eyes: inventedEyes(30, 3), cohorts: 3 },
  { name: 'four cohorts', eyes: inventedEyes(700, 4), cohorts: 4 },
  { name: 'blunders', eyes: inventedEyes(40).map((eye, i) => (i % 20 ? eye : { ...eye, error: 7.5 })), cohorts: 1 },
];

describe.each(Object.keys(artworks))('figures of predictions for %s', (artwork) => {
  it.each(audits)('have the width asked for, texts that neither overlap nor leave them: $name', async (audit) => {
    const drawn = figures(audit.eyes, { ...audit, outputs: { artwork } });
    expect(drawn.map(({ id }) => id)).toEqual(['planned-achieved', 'error-trend']);
    for (const figure of drawn) {
      const picture = await pictureOf(await renderSvg(figure, { identified: false }));
      const told = { figure: figure.id, overlapping: overlapping(picture), outside: outside(picture) };
      expect(told).toEqual({ figure: figure.id, overlapping: [], outside: [] });
      // Two panels beside one another take both columns of a journal.
      const isWide = figure.id === 'error-trend' && artwork === 'journal-single';
      expect(picture.width).toBeCloseTo(artworks[isWide ? 'journal-double' : artwork]?.width ?? 0, 2);
    }
  });
});

/** Every layer of a figure. */
function layersOf({ spec }: Figure): readonly Record<string, unknown>[] {
  return (spec as { concat: { layer: Record<string, unknown>[] }[] }).concat.flatMap(({ layer }) => layer);
}
const valuesOf = (layer: Record<string, unknown>) =>
  (layer.data as { values: readonly Record<string, number>[] }).values;
const marked = (figure: Figure, wanted: Readonly<Record<string, unknown>>) =>
  layersOf(figure).filter(({ mark }) =>
    Object.entries(wanted).every(([key, value]) => (mark as Record<string, unknown>)[key] === value),
  );

describe('planned against achieved', () => {
  const eyes = inventedEyes(100, 2);
  const [figure] = figures(eyes, { cohorts: 2 }) as [Figure];

  it('shows every eye of each cohort, the line of no error, four beside it, and the regression', () => {
    const dots = marked(figure, { type: 'point', shape: 'circle' }).map(valuesOf);
    expect(dots).toHaveLength(2);
    expect(dots.map((values) => values.reduce((sum, { size = 0 }) => sum + size, 0) / (0.3 * 7.5) ** 2)).toEqual([
      100, 100,
    ]);
    expect(marked(figure, { type: 'line' })).toHaveLength(2 * 6);
  });

  it('says slope, interval and r², and which eyes are left out', () => {
    expect(figure.alt).toMatch(/manual: n = 100 eyes \(100 patients\); slope \d\.\d\d \(95 % CI .* to .*\), r² 0\.9\d/);
    expect(figure.legend).toContain(
      'planned is the refraction predicted for the lens implanted less the refraction before',
    );
    expect(figure.legend).toContain('Eyes without a refraction before surgery, or without a prediction, are left out');
  });

  it('draws both axes alike, so that the line of no error is the diagonal', () => {
    const identity = layersOf(figure).find(({ encoding }) => JSON.stringify(encoding).includes('domain'));
    const encoding = identity?.encoding as { x: { scale: unknown }; y: { scale: unknown } };
    expect(encoding.x.scale).toEqual(encoding.y.scale);
  });

  it('names eyes on the internal page only', () => {
    const [named] = figures(eyes, { cohorts: 2, mark: (eye) => `P${eye} right` }) as [Figure];
    const told = marked(named, { aria: true })
      .flatMap(valuesOf)
      .map(({ eye }) => String(eye));
    expect(new Set(told).size).toBe(eyes.length);
    expect(JSON.stringify(figure)).not.toMatch(/P\d+ right/);
  });

  it('is not drawn where no eye has both changes', () => {
    const results = indexResults(inventedRows(eyes));
    expect(draw(results, [], inventedPlan(), en).map(({ id }) => id)).not.toContain('planned-achieved');
  });
});

describe('error over axial length and keratometry', () => {
  const eyes = inventedEyes(100);
  const figure = figures(eyes)[1] as Figure;

  it('has a row an error, a curve with a band in each panel, and the slope in words', () => {
    const { concat, columns } = figure.spec as { concat: unknown[]; columns: number };
    expect([concat.length, columns]).toEqual([4, 2]);
    expect(marked(figure, { type: 'area' })).toHaveLength(4);
    expect(figure.alt).toMatch(/Prediction error, Haigis over keratometry: n = 100 eyes .* slope .* D per D \(95 % CI/);
    expect(figure.legend).toContain('natural cubic spline with 3 degrees of freedom');
  });

  it('keeps eyes with a blunder at the edge, and says so', () => {
    const blunder = eyes.map((eye, i) => (i === 3 ? { ...eye, error: -6 } : eye));
    const held = figures(blunder)[1] as Figure;
    expect(held.legend).toContain('beyond ±3 D stand at the edge');
    expect(figure.legend).not.toContain('stand at the edge');
    const height = (held.spec as { concat: { height: number }[] }).concat[0]?.height;
    const lowest = Math.max(
      ...marked(held, { type: 'point', shape: 'circle' })
        .flatMap(valuesOf)
        .map(({ y = 0 }) => y),
    );
    expect(lowest).toBeCloseTo(height as number, 6);
  });

  it('counts eyes in cells above 2,000 a panel', () => {
    const many = figures(inventedEyes(2001))[1] as Figure;
    expect(marked(many, { type: 'point', shape: 'circle' })).toEqual([]);
    expect(marked(many, { type: 'point', shape: 'square' })).toHaveLength(4);
    expect(many.legend).toContain('squares stand for the eyes of one cell');
  });
});

describe('axes', () => {
  it('go from step to step around the values', () => {
    expect(axisAround(20.7, 27.4, 6)).toEqual({ from: 20, to: 28, ticks: [20, 22, 24, 26, 28] });
    expect(axisAround(-0.9, 1.2, 5)).toEqual({ from: -1, to: 1.5, ticks: [-1, -0.5, 0, 0.5, 1, 1.5] });
    expect(axisAround(23, 23, 6)).toEqual({ from: 23, to: 23.5, ticks: [23, 23.5] });
  });

  it('put a value where its part of the axis is, up for more', () => {
    const x = axisAround(20, 30, 5);
    const axes = { x, y: axisAround(-1, 1, 4), width: 100, height: 50 };
    expect(pointAt(axes, 22, 0.5)).toEqual({ x: 20, y: 12.5 });
  });
});
