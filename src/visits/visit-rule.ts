import { noDay } from '../records/canonical.js';
import type { Plan } from '../records/plan.js';

/** Label code of an examination that its export calls one before surgery. */
export const labelledBefore = -1;

/** Which examinations belong to one declared visit. */
export interface VisitRule {
  /** 1-based, as in the `visit` column of the measurement tables. */
  index: number;
  name: string;
  from: number;
  to: number;
  /** Day that the chosen examination should be nearest to. */
  aim: number;
  /** No window: rows belong by their label alone. */
  byLabelOnly: boolean;
}

/** The declared visits, in the order of audit.yaml. */
export function visitRules(plan: Plan): readonly VisitRule[] {
  return plan.follow_up.visits.map((visit, i) => ({
    index: i + 1,
    name: visit.name,
    from: visit.days?.[0] ?? 0,
    to: visit.days?.[1] ?? 0,
    aim: visit.aim ?? 0,
    byLabelOnly: visit.days === undefined,
  }));
}

/**
 * Whether a row belongs to a visit: by its day where it has one, by its label where it has not, or where labels
 * were declared to win. Day 0 belongs to no visit unless declared to be after surgery.
 *
 * @param day    days from surgery, `noDay` when only labelled
 * @param label  1-based visit of the row's label, 0 none, −1 before surgery
 */
export function belongsTo(visit: VisitRule, day: number, label: number, plan: Plan): boolean {
  const byDay = day !== noDay && !visit.byLabelOnly && (plan.follow_up.visit_by === 'date' || label === 0);
  if (!byDay) return label === visit.index;
  if (day === 0 && plan.follow_up.day_of_surgery !== 'after') return false;
  return day >= visit.from && day <= visit.to;
}

/** Whether a row is an examination before surgery, not older than declared. */
export function isBefore(day: number, label: number, plan: Plan): boolean {
  const { before, day_of_surgery: dayOfSurgery, visit_by: visitBy } = plan.follow_up;
  if (day === noDay || (visitBy === 'label' && label !== 0)) return label === labelledBefore;
  const latest = dayOfSurgery === 'before' ? 0 : -1;
  return day <= latest && day >= -before.within_days;
}
