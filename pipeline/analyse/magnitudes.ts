import { magnitudesOf } from '../../src/analysis/vector.js';
import { numbersOf } from '../../src/columns/table.js';
import { rowAbout } from '../../src/comparison/rows.js';
import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { lensTurns } from '../../src/tables/lens-turns.js';
import type { Groups } from './groups.js';
import { lineRows, pairsOf } from './trends.js';

/**
 * What figures of magnitudes say in numbers: the line of the surgically induced on the target-induced magnitude, and of
 * how many toric eyes both the turn of the lens and the cylinder left are known.
 */
export function magnitudeRows(derived: Derived, { all, cohorts }: Groups, plan: Plan): readonly ResultRow[] {
  const column = (name: string) => numbersOf(derived.eyes, name);
  const magnitudes = (vector: string) => magnitudesOf(column(`${vector}_x`), column(`${vector}_y`));
  const [target, induced] = [magnitudes('target_induced'), magnitudes('surgically_induced')];
  const left = magnitudes('refractive_cylinder_after');
  const treatment = { measure: 'surgically_induced', family: 'astigmatism' } as const;
  return [all, ...cohorts].flatMap((group) => [
    ...lineRows(pairsOf(derived, treatment, group, target, induced), '_on_target_induced', plan.statistics.confidence),
    ...lensTurns.map((measure) => {
      const { about, x, patients } = pairsOf(derived, { measure, family: 'toric' }, group, column(measure), left);
      const of = { n: x.length, patients: patients.count };
      return rowAbout(about, of, {
        statistic: 'count_with_cylinder_after',
        value: x.length,
        unit: 'eyes',
        method: 'count',
      });
    }),
  ]);
}
