import { magnitudesOf } from '../../src/analysis/vector.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Grouping, Membership } from '../../src/records/derived.js';
import type { Points } from '../../src/records/report.js';
import { lensTurns } from '../../src/tables/lens-turns.js';
import { figurePoints } from './figure-points.js';

/** Marks of magnitudes: surgically induced over target-induced, and what is left over how far a toric lens turned. */
export function magnitudePoints(
  columns: ReadonlyMap<string, Float64Array>,
  membership: Membership,
  cohorts: Grouping | undefined,
): readonly Points[] {
  const column = (name: string) => columns.get(name) as Float64Array;
  const magnitudes = (vector: string) => magnitudesOf(column(`${vector}_x`), column(`${vector}_y`));
  const [astigmatism, toric] = [analysedIn(membership.astigmatism), analysedIn(membership.toric)];
  const residual = magnitudes('refractive_cylinder_after');
  const turns = lensTurns.map((name) => {
    return { name, x: column(name), y: residual, holds: (eye: number): boolean => toric[eye] === 1 };
  });
  const treatment = {
    name: 'target-induced',
    x: magnitudes('target_induced'),
    y: magnitudes('surgically_induced'),
    holds: (eye: number): boolean => astigmatism[eye] === 1,
  };
  return [figurePoints('target-induced', [treatment], cohorts), figurePoints('toric-rotation', turns, cohorts)];
}
