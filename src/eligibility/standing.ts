import { numbersOf, statesOf } from '../columns/table.js';
import type { CanonicalTables, Kind } from '../records/canonical.js';
import type { Plan } from '../records/plan.js';
import type { Assembly } from '../visits/assemble.js';
import { candidatesOf } from '../visits/candidates.js';
import { belongsTo, type VisitRule } from '../visits/visit-rule.js';

/** Why the outcome visit of an eye gives no value of one kind: nobody wrote one, or what was written cannot serve. */
export type Absence = 'not_recorded' | 'set_aside';

/**
 * Tells, for eyes that have no usable measurement of a kind, whether one was never recorded or was recorded and set
 * aside. Refractions are looked for at every visit of the outcome list, because a good one would have made that visit
 * the outcome; the other kinds at the outcome visit alone, where the eye has one.
 */
export function absenceOf(
  tables: CanonicalTables,
  assembly: Assembly,
  plan: Plan,
  kind: Kind,
): (eye: number) => Absence {
  const table = tables.measurements[kind];
  const unread = statesOf(table, 'unread');
  const of = candidatesOf(table, tables.eyes.numRows(), () => true);
  const listed = assembly.visits
    .filter(({ rule }) => plan.follow_up.outcome.includes(rule.name))
    .map(({ rule }) => rule);
  const rulesFor = (eye: number): readonly VisitRule[] => {
    const own = listed.filter(({ index }) => index === assembly.outcomeVisit[eye]);
    return kind === 'refractions' || own.length === 0 ? listed : own;
  };
  return (eye) => {
    const rules = rulesFor(eye);
    for (let row = of.start[eye] as number; row < (of.start[eye + 1] as number); row++) {
      if (of.state[row] !== 2 && !unread[row]) continue;
      if (rules.some((rule) => belongsTo(rule, of.day[row] as number, of.label[row] as number, plan)))
        return 'set_aside';
    }
    return 'not_recorded';
  };
}

/** Whether the vector of the chosen refraction is lost: its axis was never recorded, or was no axis. */
export function vectorAbsence(tables: CanonicalTables, assembly: Assembly): (eye: number) => Absence | undefined {
  const table = tables.measurements.refractions;
  const axis = numbersOf(table, 'axis');
  const cylinder = numbersOf(table, 'cylinder');
  const given = statesOf(table, 'axisGiven');
  const rows = assembly.outcome.refractions;
  return (eye) => {
    const row = rows[eye] as number;
    if (row < 0 || !Number.isNaN(axis[row] as number) || (cylinder[row] as number) < 0.01) return undefined;
    return given[row] ? 'set_aside' : 'not_recorded';
  };
}
