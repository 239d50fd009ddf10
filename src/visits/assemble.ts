import { integersOf, numbersOf } from '../columns/table.js';
import { type CanonicalTables, type Kind, kinds, noDay } from '../records/canonical.js';
import type { Plan } from '../records/plan.js';
import { type Admits, type Candidates, candidatesOf, nearestRow } from './candidates.js';
import { belongsTo, isBefore, type VisitRule, visitRules } from './visit-rule.js';

/** The row chosen for each eye, by kind of measurement; −1 where there is none. */
export type ChosenRows = Readonly<Record<Kind, Int32Array>>;

/** The examination that an input names: before surgery, before by the device of the outcome, or the outcome. */
export function rowsAt(at: string | undefined, kind: Kind, assembly: Assembly): Int32Array {
  if (at === 'before_same_device') return assembly.beforeSameDevice;
  return (at === 'before' ? assembly.before : assembly.outcome)[kind];
}

export interface VisitRows {
  rule: VisitRule;
  rows: ChosenRows;
  /** Day of the examination that the others were chosen around; `noDay` without one. */
  anchorDay: Int32Array;
  /** 1 where the visit has any usable examination, 0 where not. */
  seen: Uint8Array;
}

export interface Assembly {
  before: ChosenRows;
  /** Keratometry before surgery by the device of the outcome's keratometry: what induced astigmatism is taken from. */
  beforeSameDevice: Int32Array;
  /** Every declared visit, in the order of audit.yaml. */
  visits: readonly VisitRows[];
  outcome: ChosenRows;
  /** 1-based declared visit that the outcome of each eye comes from; 0 none. */
  outcomeVisit: Int32Array;
}

const kindNames = Object.keys(kinds) as Kind[];

/** Rows that hold all that their kind needs; a refraction needs its spherical equivalent. */
function completeness(tables: CanonicalTables, kind: Kind): (row: number) => boolean {
  const table = tables.measurements[kind];
  const needed: Partial<Record<Kind, readonly string[]>> = {
    refractions: ['sphere', 'cylinder'],
    keratometries: ['flat', 'steep'],
  };
  const columns = (needed[kind] ?? kinds[kind].slice(0, 1)).map((name) => numbersOf(table, name));
  return (row) => columns.every((values) => !Number.isNaN(values[row] as number));
}

/**
 * Day of the first operation that ends an eye's follow-up, from its lens operation; a day beyond every other where
 * there is none. What was done before, or on the same day, is part of what is audited; an operation of another kind
 * changes no refraction.
 */
function secondOperations(tables: CanonicalTables, eyes: number, plan: Plan): Int32Array {
  const first = new Int32Array(eyes).fill(2 ** 31 - 1);
  if (plan.follow_up.after_second_operation === 'keep') return first;
  const eye = integersOf(tables.events, 'eye');
  const day = integersOf(tables.events, 'day');
  const procedure = tables.events.column('procedure') as { at(row: number): string };
  for (let i = 0; i < eye.length; i++) {
    const [of, on] = [eye[i] as number, day[i] as number];
    if (on > 0 && procedure.at(i) !== 'other') first[of] = Math.min(first[of] as number, on);
  }
  return first;
}

function emptyRows(eyes: number): Record<Kind, Int32Array> {
  return Object.fromEntries(kindNames.map((kind) => [kind, new Int32Array(eyes).fill(-1)])) as Record<Kind, Int32Array>;
}

/**
 * The examinations of every eye before surgery, at each declared visit, and at the outcome visit.
 *
 * A visit is anchored at its complete refraction nearest the aim; every other kind takes the row nearest that day in
 * the same window. Without a refraction the other measurement nearest the aim is the anchor. Rows that rules set
 * aside are passed over, so that a slip on one day does not lose an eye that has another good day. Examinations
 * after a second operation are left out unless declared. The outcome is the first visit of the declared list that
 * has a refraction, else the first that has any examination.
 */
export function assembleVisits(tables: CanonicalTables, plan: Plan): Assembly {
  const eyes = tables.eyes.numRows();
  const candidates = new Map(
    kindNames
      .filter((kind) => tables.measurements[kind].numRows() > 0)
      .map((kind) => [kind, candidatesOf(tables.measurements[kind], eyes, completeness(tables, kind))] as const),
  );
  const preference = sourcePreference(tables.files, plan);
  const until = secondOperations(tables, eyes, plan);
  const choice = { candidates, preference, until, plan, eyes };
  const visits = visitRules(plan).map((rule) => assembleVisit(rule, choice));
  const chosen = chooseOutcome(visits, plan, eyes);
  const beforeSameDevice = sameDeviceBefore(chosen.outcome.keratometries, choice);
  return { before: assembleBefore(choice), beforeSameDevice, visits, ...chosen };
}

interface Choice {
  candidates: ReadonlyMap<Kind, Candidates>;
  preference: (source: number) => number;
  until: Int32Array;
  plan: Plan;
  eyes: number;
}

/** Rank of a source where audit.yaml orders them; files not named come last, alike. */
function sourcePreference(files: readonly string[], plan: Plan): (source: number) => number {
  if (plan.prefer.length === 0) return () => 0;
  const ranks = files.map((file) => (plan.prefer.includes(file) ? plan.prefer.indexOf(file) : plan.prefer.length));
  return (source) => ranks[source] as number;
}

function usable(of: Candidates, row: number): boolean {
  return (of.state[row] as number) < 2 && of.complete(row);
}

function assembleVisit(rule: VisitRule, { candidates, preference, until, plan, eyes }: Choice): VisitRows {
  const rows = emptyRows(eyes);
  const anchorDay = new Int32Array(eyes).fill(noDay);
  const seen = new Uint8Array(eyes);
  const admitted = (of: Candidates, eye: number): Admits => {
    const last = until[eye] as number;
    return (row) =>
      usable(of, row) &&
      (of.day[row] as number) <= last &&
      belongsTo(rule, of.day[row] as number, of.label[row] as number, plan);
  };
  const nearest = (kind: Kind, eye: number, aim: number): number => {
    const of = candidates.get(kind);
    return of ? nearestRow(of, eye, aim, admitted(of, eye), preference) : -1;
  };
  for (let eye = 0; eye < eyes; eye++) {
    const anchor = findAnchor(candidates, rule, eye, nearest);
    if (!anchor) continue;
    seen[eye] = 1;
    anchorDay[eye] = anchor.day;
    const aim = anchor.day === noDay ? rule.aim : anchor.day;
    for (const kind of candidates.keys()) {
      rows[kind][eye] = kind === anchor.kind ? anchor.row : nearest(kind, eye, aim);
    }
  }
  return { rule, rows, anchorDay, seen };
}

interface Anchor {
  kind: Kind;
  row: number;
  day: number;
}

/** The refraction nearest the aim; without one, the nearest measurement of any other kind, of two the later. */
function findAnchor(
  candidates: ReadonlyMap<Kind, Candidates>,
  rule: VisitRule,
  eye: number,
  nearest: (kind: Kind, eye: number, aim: number) => number,
): Anchor | undefined {
  const anchorOf = (kind: Kind): Anchor | undefined => {
    const row = candidates.has(kind) ? nearest(kind, eye, rule.aim) : -1;
    return row < 0 ? undefined : { kind, row, day: candidates.get(kind)?.day[row] as number };
  };
  const isBetter = (one: Anchor, best: Anchor): boolean => {
    const apart = Math.abs(one.day - rule.aim) - Math.abs(best.day - rule.aim);
    return apart < 0 || (apart === 0 && one.day > best.day);
  };
  let best = anchorOf('refractions');
  if (best) return best;
  for (const kind of candidates.keys()) {
    const one = anchorOf(kind);
    if (one && (!best || isBetter(one, best))) best = one;
  }
  return best;
}

/** For each kind the last usable row before surgery; rows without a day only where none has one. */
function assembleBefore({ candidates, preference, plan, eyes }: Choice): ChosenRows {
  const rows = emptyRows(eyes);
  for (const [kind, of] of candidates) {
    const admits: Admits = (row) => usable(of, row) && isBefore(of.day[row] as number, of.label[row] as number, plan);
    for (let eye = 0; eye < eyes; eye++) rows[kind][eye] = nearestRow(of, eye, 0, admits, preference);
  }
  return rows;
}

/** For each eye the last usable keratometry before surgery of the device that measured it at the outcome. */
function sameDeviceBefore(after: Int32Array, { candidates, preference, plan, eyes }: Choice): Int32Array {
  const rows = new Int32Array(eyes).fill(-1);
  const of = candidates.get('keratometries');
  if (!of) return rows;
  for (let eye = 0; eye < eyes; eye++) {
    const device = after[eye] === -1 ? -1 : (of.device[after[eye] as number] as number);
    const admits: Admits = (row) =>
      of.device[row] === device && usable(of, row) && isBefore(of.day[row] as number, of.label[row] as number, plan);
    rows[eye] = nearestRow(of, eye, 0, admits, preference);
  }
  return rows;
}

function chooseOutcome(
  visits: readonly VisitRows[],
  plan: Plan,
  eyes: number,
): { outcome: ChosenRows; outcomeVisit: Int32Array } {
  const outcome = emptyRows(eyes);
  const outcomeVisit = new Int32Array(eyes);
  const listed = plan.follow_up.outcome.map((name) => visits.find((visit) => visit.rule.name === name) as VisitRows);
  for (let eye = 0; eye < eyes; eye++) {
    const chosen =
      listed.find((visit) => (visit.rows.refractions[eye] as number) >= 0) ??
      listed.find((visit) => visit.seen[eye] === 1);
    if (!chosen) continue;
    outcomeVisit[eye] = chosen.rule.index;
    for (const kind of kindNames) outcome[kind][eye] = chosen.rows[kind][eye] as number;
  }
  return { outcome, outcomeVisit };
}
