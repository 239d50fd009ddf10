import type { EyeGroup } from '../../src/analysis/sample.js';
import { integersOf } from '../../src/columns/table.js';
import { withPair } from '../../src/comparison/group.js';
import { dueBy } from '../../src/eligibility/due.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Derived, Flow } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { groupPair } from '../../src/results/index.js';
import { indexPatients } from '../../src/statistics/patients.js';
import { shareInterval } from '../../src/statistics/share.js';
import { type PlainParts, plainRow } from './plain-row.js';

/** Which eyes of a group were to be seen, which of them were, and how many were not yet to be. */
interface Seen {
  due: Int32Array;
  isKnown: (eye: number) => boolean;
  early: number;
}

/** Eyes of a group that are eligible in a family and whose outcome window has closed. */
export function dueIn({ steps, code }: Flow, { eyes }: EyeGroup): { due: Int32Array; early: number } {
  const early = steps.indexOf('not_yet_due');
  const stepOf = (eye: number): number => code[eye] as number;
  return {
    due: eyes.filter((eye) => stepOf(eye) > early),
    early: eyes.filter((eye) => stepOf(eye) === early).length,
  };
}

function rowsOf({ due, isKnown, early }: Seen, key: string, eyes: number, patient: Int32Array, plan: Plan) {
  const patients = indexPatients(due.map((eye) => patient[eye] as number));
  const hits = Uint8Array.from(due, (eye) => (isKnown(eye) ? 1 : 0));
  const share = shareInterval(hits, patients, plan.statistics.confidence, { method: 'wilson' });
  const about = { measure: 'completeness', n: due.length, patients: patients.count };
  const row = (parts: Omit<PlainParts, 'measure'>): ResultRow => plainRow({ ...about, ...parts }, key, eyes);
  const [ci_low, ci_high] = [share.low, share.high];
  const note = share.notes.join(';');
  return [
    row({ statistic: 'share', value: share.value, ci_low, ci_high, unit: 'share', method: share.method, note }),
    row({ statistic: 'count', value: share.count }),
    row({ statistic: 'due', value: due.length }),
    row({ statistic: 'not_yet_due', value: early, n: early }),
  ];
}

/** The outcome, whichever visit it comes from: eyes that have it, of the eligible ones that are due. */
export function outcomeCompleteness(derived: Derived, group: EyeGroup, plan: Plan): readonly ResultRow[] {
  const { membership, assembly, eyes } = derived;
  const isKnown = (eye: number): boolean => (assembly.outcomeVisit[eye] as number) > 0;
  const seen = { ...dueIn(membership.refraction, group), isKnown };
  return rowsOf(seen, group.key, group.eyes.length, integersOf(eyes, 'patient'), plan);
}

/** The same for every declared visit by itself: an eye is due when the window of that visit has closed. */
export function visitCompleteness(derived: Derived, group: EyeGroup, plan: Plan): readonly ResultRow[] {
  const { membership, assembly, eyes, tables } = derived;
  const isEligible = analysedIn(membership.eligible);
  const eligible = group.eyes.filter((eye) => isEligible[eye] === 1);
  return plan.follow_up.visits.flatMap(({ name, days }, visit) => {
    const isDue = dueBy(tables, days?.[1] ?? 0);
    const due = eligible.filter((eye) => isDue[eye] === 1);
    const isKnown = (eye: number): boolean => assembly.visits[visit]?.seen[eye] === 1;
    const key = withPair(group.key, groupPair('visit', name));
    const seen = { due, isKnown, early: eligible.length - due.length };
    return rowsOf(seen, key, group.eyes.length, integersOf(eyes, 'patient'), plan);
  });
}
