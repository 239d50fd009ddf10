import { codesOf, type EyeGroup, pick } from '../../src/analysis/sample.js';
import { hitsOf } from '../../src/analysis/shares.js';
import { categoriesOf, hasColumn, numbersOf } from '../../src/columns/table.js';
import { comparedBy } from '../../src/comparison/compared.js';
import { byOperation, eyeOrderOf } from '../../src/eligibility/one-eye.js';
import { noDay } from '../../src/records/canonical.js';
import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import { groupPair } from '../../src/results/index.js';
import { columnsOf, valuesOn } from './columns.js';

/** A share that is followed over time in one group, of the eyes that have it, in the order of surgery. */
export interface Monitored {
  eyes: Int32Array;
  /** 1 where the eye counts in the share. */
  hits: Uint8Array;
  patient: Int32Array;
  /** Whether an eye that counts is one that failed. */
  hitIsFailure: boolean;
  /** Eyes of the group without the outcome. */
  skipped: number;
}

/** The share that an audit follows, and how it runs in any group of its eyes. */
export interface Monitor {
  /** 'measure/statistic', as audit.yaml names it. */
  outcome: string;
  seriesOf(group: EyeGroup): Monitored;
}

/** Eyes in the order of surgery, by the order of the one-eye rule; those whose operation was not dated come last. */
function orderOfSurgery({ tables }: Derived): Int32Array {
  const of = eyeOrderOf(tables);
  const undated = (eye: number): number => (of.surgeryDay[eye] === noDay ? 1 : 0);
  return Int32Array.from(of.surgeryDay.keys()).sort(
    (a, b) => undated(a) - undated(b) || byOperation(of, a, b) || a - b,
  );
}

/** The share that is followed: the declared one, else eyes within half a dioptre. */
function outcomeOf({ eyes }: Derived, plan: Plan): string {
  if (plan.monitoring) return plan.monitoring.outcome;
  const hasPrediction = numbersOf(eyes, 'prediction_error').some(Number.isFinite);
  return `${hasPrediction ? 'prediction_error' : 'target_error'}/share_within_0.50`;
}

/** Operators and sites that have enough eyes to be told apart. */
export function operatorsOf({ tables }: Derived, all: EyeGroup, plan: Plan): readonly EyeGroup[] {
  return ['surgeon', 'site'].flatMap((field) => {
    if (!hasColumn(tables.eyes, field)) return [];
    const column = categoriesOf(tables.eyes, field);
    const names = column.names.slice(1).toSorted();
    const groups = names.map((name) => ({
      key: groupPair(field, name),
      eyes: all.eyes.filter((eye) => column.at(eye) === name),
    }));
    return groups.length < 2 ? [] : groups.filter(({ eyes }) => eyes.length >= plan.outputs.operator_min_eyes);
  });
}

/** @returns undefined where the registry has no such share */
export function monitorOf(derived: Derived, plan: Plan): Monitor | undefined {
  const outcome = outcomeOf(derived, plan);
  const at = outcome.indexOf('/');
  const [name, statistic] = [outcome.slice(0, at), outcome.slice(at + 1)];
  const measure = derived.registry.find((one) => one.name === name);
  const share = measure && comparedBy(measure).find(({ of, by }) => by === 'risk' && of === statistic);
  if (!measure || !share?.meets) return undefined;
  const { better, meets, on } = share;
  const columns = columnsOf(measure, derived);
  const values = valuesOn(on, columns);
  const known = orderOfSurgery(derived).filter(
    (eye) => columns.analysed[eye] === 1 && !Number.isNaN(values[eye] as number),
  );
  const seriesOf = (group: EyeGroup): Monitored => {
    const inGroup = new Set(group.eyes);
    const eyes = known.filter((eye) => inGroup.has(eye));
    return {
      eyes,
      hits: hitsOf(pick(values, eyes), meets),
      patient: codesOf(columns.patient, eyes),
      hitIsFailure: better === 'lower',
      skipped: group.eyes.length - eyes.length,
    };
  };
  return { outcome, seriesOf };
}
