import { describe, expect, it } from 'vitest';
import { draw } from '../../pipeline/6-draw.js';
import { labelTurnOf, planeAround, planeLabels } from '../../src/charts/plane.js';
import { artworks } from '../../src/charts/theme.js';
import { vectorFigures } from '../../src/charts/vector-figures.js';
import { measureRegistry } from '../../src/measures/index.js';
import type { Figure } from '../../src/records/report.js';
import type { ResultRow } from '../../src/records/result.js';
import { indexResults } from '../../src/results/index.js';
import { vectorGroup, vectorOf, vectorsShown } from '../../src/tables/vectors.js';
import { en } from '../../src/words/index.js';
import { inventedEyes, inventedPlan, inventedPoints, inventedRows } from './synthetic.js';

const names = ['manual', 'laser-assisted'];
const eyes = inventedEyes(60, 2);
const rows = inventedRows(eyes, names);

function figureOf(id: string, all: readonly ResultRow[] = rows): Figure {
  const drawn = draw(indexResults(all), inventedPoints(eyes, names), inventedPlan(), en);
  return drawn.find((figure) => figure.id === id) as Figure;
}

/** Texts inside a picture. */
function textsOf(value: unknown): readonly string[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = 'text' in value && typeof value.text === 'string' ? [value.text] : [];
  return [...own, ...Object.values(value).flatMap(textsOf)];
}

describe('the vectors that are shown', () => {
  const registry = measureRegistry([]);

  it('are vectors of the registry, in the corneal plane, of the family that the registry names', () => {
    for (const id of new Set(vectorFigures.flatMap(({ panels }) => panels))) {
      const { measure, family } = vectorOf(id);
      const known = registry.find(({ name }) => name === `${measure}_x`);
      expect({ id, plane: known?.plane, family: known?.family }).toEqual({ id, plane: 'cornea', family });
    }
  });

  // Settled rule: induced vectors are pooled in the frame of the incision only.
  it('are never pooled over right and left eyes where the registry forbids it', () => {
    const unpooled = new Set(registry.filter((measure) => measure.unpooled).map(({ vector }) => vector?.name));
    expect(unpooled).toEqual(new Set(['induced_corneal_cylinder']));
    for (const id of vectorFigures.flatMap(({ panels }) => panels)) {
      const vector = vectorOf(id);
      expect([id, vector.stratum?.field]).toEqual([id, unpooled.has(vector.measure) ? 'eye' : undefined]);
    }
  });

  it('have the results group of their stratum within a cohort, its pairs in alphabetical order', () => {
    expect(vectorGroup(vectorOf('induced_left'), 'all')).toBe('eye=left');
    expect(vectorGroup(vectorOf('induced_left'), 'technique=manual')).toBe('eye=left;technique=manual');
    expect(vectorGroup(vectorOf('induced_left'), 'cohort=late')).toBe('cohort=late;eye=left');
    expect(vectorGroup(vectorOf('corneal_cylinder_before'), 'technique=manual')).toBe('technique=manual');
  });

  it('of toric eyes are left out where every eye is one', () => {
    const both = ['cylinder_prediction_error', 'cylinder_prediction_error:toric'] as const;
    const toric = (eyeCount: number) =>
      rows.map((row) =>
        row.measure === both[1] && row.group === 'all' && row.statistic === 'n' ? { ...row, value: eyeCount } : row,
      );
    const shown = (all: readonly ResultRow[]) => vectorsShown(indexResults(all), both).map(({ id }) => id);
    expect(shown(toric(120))).toEqual([both[0]]);
    expect(shown(toric(119))).toEqual(both);
    expect(shown(toric(0))).toEqual([both[0]]);
  });
});

describe('each double-angle figure', () => {
  it.each(vectorFigures.map(({ id }) => id))('%s names its plane, eyes and missing, cohorts and visit', (id) => {
    const { title, legend, alt } = figureOf(id);
    expect(title).toContain('corneal plane');
    for (const name of names)
      expect(legend).toMatch(new RegExp(`${name}, [^:]+: n = \\d+ eyes \\(\\d+ patients\\), \\d+ missing`));
    expect(legend).toContain('Outcome visit: 1 month.');
    for (const name of names) expect(alt).toMatch(new RegExp(`${name}, [^:]+: n = \\d+ eyes`));
  });

  it('counts refractions without an axis, which no plane can show', () => {
    expect(figureOf('double-angle').legend).toContain('no usable axis, not drawn: 3 eyes.');
    expect(figureOf('double-angle-induced').legend).not.toContain('no usable axis');
  });

  it('tells the centroid as magnitude at its meridian, in the frame of the incision as along and torque', () => {
    const set = (measure: string, values: Readonly<Record<string, number>>) =>
      rows.map((row) =>
        row.measure === measure && row.group === 'technique=manual' && row.statistic in values
          ? { ...row, value: values[row.statistic] }
          : row,
      );
    const centroid = { centroid_magnitude: 0.4269, centroid_axis: 92.42 };
    const plane = figureOf('double-angle', set('refractive_cylinder_after', centroid));
    expect(textsOf(plane.spec)).toContain('centroid 0.43 D @ 92° (95 % region)');
    expect(plane.alt).toContain('centroid 0.43 D @ 92°');
    const incision = figureOf(
      'induced-incision',
      set('induced_in_incision_frame', { centroid_x: -0.214, centroid_y: 0.031 }),
    );
    expect(textsOf(incision.spec).join(' ')).toContain('centroid −0.21 D along, 0.03 D torque');
    expect(textsOf(incision.spec)).toEqual(expect.arrayContaining(['← flattened', 'steepened →', '0°', '90°']));
    expect(textsOf(incision.spec)).not.toContain('180°');
  });

  it('passes over a side of which a cohort has no eye', () => {
    const without = rows.filter(({ group }) => group !== 'eye=left;technique=manual');
    const { legend } = figureOf('double-angle-induced', without);
    expect(legend).not.toContain('manual, induced, left eyes');
    expect(legend).toContain('laser-assisted, induced, left eyes');
  });
});

describe('dioptres on the rings', () => {
  const artwork = artworks['journal-single'];
  const plane = planeAround(3, 150);
  /** A cloud of marks around a direction of the picture, degrees. */
  const cloud = (degrees: number) => {
    const turn = (degrees * Math.PI) / 180;
    const reach = Array.from({ length: 60 }, (_, i) => (i + 1) / 20);
    return { x: reach.map((r) => r * Math.cos(turn)), y: reach.map((r) => r * Math.sin(turn)) };
  };
  const turnOf = (marks: readonly ReturnType<typeof cloud>[]): number =>
    artwork ? Math.round(((labelTurnOf(plane, artwork, marks) * 180) / Math.PI) * 10) / 10 : Number.NaN;

  it('stand down and to the right, and elsewhere where marks would hide them', () => {
    expect(turnOf([])).toBe(-67.5);
    expect(turnOf([cloud(-67.5)])).toBe(67.5);
    expect(turnOf([cloud(-67.5), cloud(67.5)])).toBe(-112.5);
  });

  it('are left out of a panel where three marks and more hide them, but for the outermost', () => {
    const ringsAmong = (marks: readonly ReturnType<typeof cloud>[]): readonly string[] => {
      const turn = (-67.5 * Math.PI) / 180;
      const layers = artwork ? planeLabels(plane, artwork, en, { frame: 'eye', turn, marks }) : [];
      return [...new Set(textsOf(layers).filter((text) => text.endsWith(' D')))];
    };
    const two = cloud(-67.5);
    expect(ringsAmong([])).toEqual(['1 D', '2 D', '3 D']);
    expect(ringsAmong([{ x: two.x.slice(19, 21), y: two.y.slice(19, 21) }])).toEqual(['1 D', '2 D', '3 D']);
    expect(ringsAmong([{ x: two.x.slice(19, 22), y: two.y.slice(19, 22) }])).toEqual(['2 D', '3 D']);
    expect(ringsAmong([two])).toEqual(['3 D']);
  });
});
