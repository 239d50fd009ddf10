import { type ColumnTable, table } from 'arquero';
import type { FindingsBuilder } from '../../src/findings/builder.js';
import { type Kind, kinds, noDay } from '../../src/records/canonical.js';
import type { Effect } from '../../src/records/finding.js';
import type { Plan } from '../../src/records/plan.js';
import type { RawTable } from '../../src/records/raw-table.js';
import { agree, differs, tolerances } from './join.js';
import type { MeasurementRows } from './measurement-rows.js';

/** How far two records of one column may differ, and whether it is an axis. */
const columnTolerance: Readonly<Record<string, readonly [number, boolean]>> = {
  sphere: [tolerances.D, false],
  cylinder: [tolerances.D, false],
  recordedCylinder: [tolerances.D, false],
  axis: [tolerances.deg, true],
  flat: [tolerances.keratometry, false],
  steep: [tolerances.keratometry, false],
  steepAxis: [tolerances.deg, true],
  logMAR: [tolerances.logMAR, false],
};

const effects: Readonly<Partial<Record<Kind, Effect>>> = {
  refractions: 'refraction left out',
  keratometries: 'keratometry left out',
  uncorrected: 'acuity left out',
  corrected: 'acuity left out',
  near: 'acuity left out',
  intermediate: 'acuity left out',
};

/** What must be there for a row to serve at all: without it the row is set aside. */
const essential: Readonly<Partial<Record<Kind, number>>> = { refractions: 2, keratometries: 2 };

export interface JoinContext {
  kind: Kind;
  raw: readonly RawTable[];
  plan: Plan;
  findings: FindingsBuilder;
  /** Called for every measurement that was one with another's. */
  repeats(source: number, row: number, eye: number): void;
}

function rankOf(source: number, { raw, plan }: JoinContext): number {
  const rank = plan.prefer.indexOf(raw[source]?.file ?? '');
  return rank < 0 ? plan.prefer.length : rank;
}

/**
 * Joins row b into row a, field by field: a blank takes the other's value, values that agree are one, values that
 * differ are left out unless audit.yaml prefers one file.
 *
 * @returns whether the two said the same wherever both spoke
 */
function joinRows(rows: MeasurementRows, a: number, b: number, context: JoinContext): boolean {
  const rank = rankOf(rows.source[b] as number, context) - rankOf(rows.source[a] as number, context);
  let same = true;
  kinds[context.kind].forEach((column, i) => {
    const values = rows.own[i] as number[];
    const [mine, other] = [values[a] as number, values[b] as number];
    const [tolerance, circular] = columnTolerance[column] ?? [tolerances.exact, false];
    if (Number.isNaN(other)) return;
    if (Number.isNaN(mine)) values[a] = rows.state[a] === 2 ? Number.NaN : other;
    else if (!agree(mine, other, tolerance, circular)) {
      same = false;
      if (rank < 0) values[a] = other;
      if (rank === 0) leaveOut(rows, a, i, context.kind);
    }
  });
  if (rows.axisGiven[b]) rows.axisGiven[a] = 1;
  return same || rank !== 0;
}

function leaveOut(rows: MeasurementRows, row: number, column: number, kind: Kind): void {
  (rows.own[column] as number[])[row] = Number.NaN;
  if (column < (essential[kind] ?? 1)) rows.state[row] = 2;
}

function tellDifference(rows: MeasurementRows, b: number, { kind, raw, findings }: JoinContext): void {
  const source = rows.source[b] as number;
  findings.add({
    ...differs,
    source,
    row: raw[source]?.rowNumber(rows.row[b] as number) ?? 0,
    eye: rows.eye[b] as number,
    day: rows.day[b] as number,
    field: kind,
    effect: effects[kind] ?? 'value left out',
  });
}

/** Order in which rows of one measurement lie side by side: eye, day, label, device; then source, block, row. */
function comparator(rows: MeasurementRows, keys: readonly (keyof MeasurementRows)[]): (a: number, b: number) => number {
  const columns = keys.map((key) => rows[key] as number[]);
  return (a, b) => {
    for (const column of columns) {
      const apart = (column[a] as number) - (column[b] as number);
      if (apart !== 0) return apart;
    }
    return 0;
  };
}

function isOneMeasurement(rows: MeasurementRows, a: number, b: number): boolean {
  return (
    (rows.eye[a] as number) >= 0 &&
    rows.eye[a] === rows.eye[b] &&
    rows.day[a] === rows.day[b] &&
    rows.device[a] === rows.device[b] &&
    (rows.day[a] !== noDay || rows.visit[a] === rows.visit[b])
  );
}

/**
 * One kind of measurement as a canonical table: rows of one eye, day and device joined, in the order of eye, day,
 * source, row.
 */
export function joinedTable(rows: MeasurementRows, context: JoinContext): ColumnTable {
  const side = Uint32Array.from(rows.eye.keys()).sort(
    comparator(rows, ['eye', 'day', 'visit', 'device', 'source', 'block', 'row']),
  );
  const kept: number[] = [];
  for (const row of side) {
    const last = kept.at(-1);
    if (last === undefined || !isOneMeasurement(rows, last, row)) {
      kept.push(row);
      continue;
    }
    if (joinRows(rows, last, row, context)) {
      context.repeats(rows.source[row] as number, rows.row[row] as number, rows.eye[row] as number);
    } else tellDifference(rows, row, context);
  }
  kept.sort(comparator(rows, ['eye', 'day', 'source', 'row', 'block']));
  return tableOf(rows, kept, context.kind);
}

function tableOf(rows: MeasurementRows, order: readonly number[], kind: Kind): ColumnTable {
  const whole = (column: readonly number[]): Int32Array => Int32Array.from(order, (row) => column[row] as number);
  const own = kinds[kind].map((name, i) => {
    return [name, Float64Array.from(order, (row) => rows.own[i]?.[row] as number)] as const;
  });
  return table({
    eye: whole(rows.eye),
    day: whole(rows.day),
    visit: whole(rows.visit),
    device: whole(rows.device),
    source: whole(rows.source),
    block: whole(rows.block),
    row: whole(rows.row),
    state: Uint8Array.from(order, (row) => rows.state[row] as number),
    axisGiven: Uint8Array.from(order, (row) => rows.axisGiven[row] as number),
    ...Object.fromEntries(own),
  });
}
