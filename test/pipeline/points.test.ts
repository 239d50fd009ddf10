import { describe, expect, it } from 'vitest';
import { vectorFigures } from '../../src/charts/vector-figures.js';
import { integersOf } from '../../src/columns/table.js';
import type { Points } from '../../src/records/report.js';
import { groupPair } from '../../src/results/index.js';
import { vectorGroup, vectorOf } from '../../src/tables/vectors.js';
import { auditOf } from '../whole/audit.js';
import { auditText, committedFiles } from '../whole/sample.js';

const { derived, results } = await auditOf(auditText(), committedFiles());
const pointsOf = (figure: string): Points => derived.points.find((points) => points.figure === figure) as Points;

/** Rows of the marks of one panel, of one cohort or of all. */
function marksOf(points: Points, panel: string, cohort?: string): readonly number[] {
  return [...points.x.keys()].filter((row) => {
    return points.panel.at(row) === panel && (cohort === undefined || points.cohort.at(row) === cohort);
  });
}

describe('marks of the double-angle figures', () => {
  const panels = vectorFigures.flatMap(({ id, panels: ids }) => ids.map((panel) => ({ figure: id, panel })));

  it.each(panels)('are as many as the eyes that the panel states: $figure, $panel', ({ figure, panel }) => {
    const vector = vectorOf(panel);
    const eyesIn = (group: string) => results.get(vector.measure, vectorGroup(vector, group), 'n').value;
    const points = pointsOf(figure);
    expect(marksOf(points, panel).length).toBeGreaterThan(0);
    expect(marksOf(points, panel)).toHaveLength(eyesIn('all') as number);
    for (const name of derived.cohorts?.names ?? []) {
      expect(marksOf(points, panel, name)).toHaveLength(eyesIn(groupPair('technique', name)) as number);
    }
  });

  it('of induced astigmatism lie in the panel of their eye', () => {
    const points = pointsOf('double-angle-induced');
    const laterality = integersOf(derived.eyes, 'laterality');
    const sides = (panel: string) =>
      new Set(marksOf(points, panel).map((row) => laterality[points.eye[row] as number]));
    expect(sides('induced_right')).toEqual(new Set([0]));
    expect(sides('induced_left')).toEqual(new Set([1]));
  });

  // Centroids come from results rows, marks from points: their means must agree.
  it.each(panels)('have the centroid that is drawn among them: $figure, $panel', ({ figure, panel }) => {
    const vector = vectorOf(panel);
    const points = pointsOf(figure);
    const rows = marksOf(points, panel);
    for (const part of ['x', 'y'] as const) {
      const mean = rows.reduce((sum, row) => sum + (points[part][row] as number), 0) / rows.length;
      const centroid = results.get(vector.measure, vectorGroup(vector, 'all'), `centroid_${part}`).value;
      expect(mean).toBeCloseTo(centroid as number, 9);
    }
  });
});

describe('refractions without an axis', () => {
  it('are all that the recorded cylinder has and the vector has not', () => {
    const eyesIn = (measure: string) => results.get(measure, 'all', 'n').value as number;
    const missing = eyesIn('refractive_cylinder_after_recorded') - eyesIn('refractive_cylinder_after');
    expect(missing).toBeGreaterThan(0);
    expect(results.get('provenance', 'all', 'axis_missing').value).toBe(missing);
  });
});
