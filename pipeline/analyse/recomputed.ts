import { integersOf, numbersOf } from '../../src/columns/table.js';
import { rowAbout } from '../../src/comparison/rows.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import { formulaNamed, isUnusual, type Refusal, refusalOf } from '../../src/optics/formulas/index.js';
import { isPositionUnreliable } from '../../src/optics/formulas/srk-t.js';
import { recomputedFormulas } from '../../src/predictions/recomputed.js';
import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { indexPatients } from '../../src/statistics/patients.js';
import { biometryIn } from './biometry.js';
import type { Groups } from './groups.js';

/**
 * Of every recomputed formula: how many analysed eyes it predicts, how many it refuses and why, and how many of those
 * predicted lie where it is not to be relied on.
 */
export function recomputedRows(derived: Derived, { all }: Groups, plan: Plan): readonly ResultRow[] {
  const recomputed = recomputedFormulas(plan, derived.tables.formulas);
  if (recomputed.length === 0) return [];
  const analysed = analysedIn(derived.membership.refraction);
  const eyes = all.eyes.filter((eye) => analysed[eye] === 1);
  const patient = integersOf(derived.eyes, 'patient');
  const patients = indexPatients(eyes.map((eye) => patient[eye] as number)).count;
  const [biometryOf, powers] = [biometryIn(derived), numbersOf(derived.eyes, 'lens_power')];
  return recomputed.flatMap(({ label, formula: name }) => {
    const [formula, constants] = [formulaNamed(name), numbersOf(derived.eyes, `lens_constant:${name}`)];
    const refused = new Map<Refusal, number>();
    const predicted = eyes.filter((eye) => {
      const refusal = refusalOf(formula, biometryOf(eye), powers[eye] as number, constants[eye] as number);
      if (refusal) refused.set(refusal, (refused.get(refusal) ?? 0) + 1);
      return refusal === undefined;
    });
    const row = (statistic: string, value: number): ResultRow =>
      rowAbout(
        { measure: `recomputed:${label}`, group: all.key, eyes: eyes.length, unit: 'eyes' },
        { n: eyes.length, patients },
        { statistic, value, unit: 'eyes', method: 'count' },
      );
    const among = (is: (eye: number) => boolean): number => predicted.filter(is).length;
    return [
      row('count_predicted', predicted.length),
      ...[...refused].sort().map(([reason, count]) => row(`count_refused:${reason}`, count)),
      row(
        'count_unusual_biometry',
        among((eye) => isUnusual(biometryOf(eye))),
      ),
      ...(name === 'SRK/T'
        ? [
            row(
              'count_unreliable_position',
              among((eye) => isPositionUnreliable(biometryOf(eye))),
            ),
          ]
        : []),
    ];
  });
}
