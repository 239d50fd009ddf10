import { pick } from '../../src/analysis/sample.js';
import { hitsOf } from '../../src/analysis/shares.js';
import { categoriesOf, hasColumn, integersOf, numbersOf } from '../../src/columns/table.js';
import { comparedBy } from '../../src/comparison/compared.js';
import { noDay } from '../../src/records/canonical.js';
import type { Derived } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';
import type { Plan } from '../../src/records/plan.js';
import { groupPair } from '../../src/results/index.js';
import { columnsOf } from './columns.js';

/** A share that is followed over time, of the eyes that have it, in the order of surgery. */
export interface Monitored {
  measure: Measure;
  statistic: string;
  eyes: Int32Array;
  /** 1 where the eye counts in the share. */
  hits: Uint8Array;
  patient: Int32Array;
  /** Whether an eye that counts is one that failed. */
  hitIsFailure: boolean;
  /** Eyes of the group without the outcome. */
  skipped: number;
}

/** Eyes whose operation was not dated come last. */
function orderOfSurgery({ eyes }: Derived): Int32Array {
  const day = integersOf(eyes, 'surgeryDay');
  const [year, order] = [numbersOf(eyes, 'year'), numbersOf(eyes, 'order')];
  const late = (value: number): number => (Number.isNaN(value) ? Number.POSITIVE_INFINITY : value);
  const rank = (eye: number): readonly [number, number] =>
    day[eye] === noDay ? [late(year[eye] as number), late(order[eye] as number)] : [day[eye] as number, 0];
  // Canonical order settles ties: patient code, then right before left.
  return Int32Array.from(day.keys()).sort((a, b) => {
    const [first, second] = [rank(a), rank(b)];
    return first[0] - second[0] || first[1] - second[1] || a - b;
  });
}

/** The share that is followed: the declared one, else eyes within half a dioptre. */
export function monitoredOutcome({ eyes }: Derived, plan: Plan): string {
  if (plan.monitoring) return plan.monitoring.outcome;
  const hasPrediction = numbersOf(eyes, 'prediction_error').some(Number.isFinite);
  return `${hasPrediction ? 'prediction_error' : 'target_error'}/share_within_0.50`;
}

/** Operators and sites that have enough eyes to be told apart. */
export function operatorsOf(derived: Derived, plan: Plan): readonly { key: string; eyes: Int32Array }[] {
  const all = Int32Array.from({ length: derived.eyes.numRows() }, (_, eye) => eye);
  return ['surgeon', 'site'].flatMap((field) => {
    if (!hasColumn(derived.tables.eyes, field)) return [];
    const column = categoriesOf(derived.tables.eyes, field);
    const names = column.names.slice(1).toSorted();
    const groups = names.map((name) => ({
      key: groupPair(field, name),
      eyes: all.filter((eye) => column.at(eye) === name),
    }));
    return groups.length < 2 ? [] : groups.filter(({ eyes }) => eyes.length >= plan.outputs.operator_min_eyes);
  });
}

/**
 * A share of a group over time.
 *
 * @param outcome  'measure/statistic', as audit.yaml names it
 * @returns undefined where the registry has no such share
 */
export function monitoredIn(derived: Derived, outcome: string, group: Int32Array): Monitored | undefined {
  const at = outcome.indexOf('/');
  const [name, statistic] = [outcome.slice(0, at), outcome.slice(at + 1)];
  const measure = derived.registry.find((one) => one.name === name);
  const share = measure && comparedBy(measure).find(({ of, by }) => by === 'risk' && of === statistic);
  if (!measure || !share?.meets) return undefined;
  const { values, patient, analysed } = columnsOf(measure, derived);
  const inGroup = new Set(group);
  const hasValue = (eye: number): boolean => analysed[eye] === 1 && !Number.isNaN(values[eye] as number);
  const eyes = orderOfSurgery(derived).filter((eye) => inGroup.has(eye) && hasValue(eye));
  return {
    measure,
    statistic,
    eyes,
    hits: hitsOf(pick(values, eyes), share.meets),
    patient: eyes.map((eye) => patient[eye] as number),
    hitIsFailure: share.better === 'lower',
    skipped: group.length - eyes.length,
  };
}
