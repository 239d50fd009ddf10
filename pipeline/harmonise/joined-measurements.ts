import { type ColumnTable, table } from 'arquero';
import { type Kind, kinds, noDay } from '../../src/records/canonical.js';
import type { Effect } from '../../src/records/finding.js';
import { type JoinContext, type RowPlace, rankOf, tellContradiction } from './join.js';
import { type Joined, type Joining, joinRow, startJoining } from './joining.js';
import type { MeasurementRows } from './measurement-rows.js';

/** What is lost when rows contradict each other in what a kind needs. */
const effects: Readonly<Partial<Record<Kind, Effect>>> = {
  refractions: 'refraction left out',
  keratometries: 'keratometry left out',
  uncorrected: 'acuity left out',
  corrected: 'acuity left out',
  near: 'acuity left out',
  intermediate: 'acuity left out',
};

function effectOf(leftOut: Joined['leftOut'], kind: Kind): Effect {
  if (leftOut === 'value' && kind === 'refractions') return 'vector left out';
  return (leftOut === 'measurement' && effects[kind]) || 'value left out';
}

export interface MeasurementContext extends JoinContext {
  kind: Kind;
  /** Called for every measurement that said nothing that another had not said. */
  repeats(source: number, row: number, eye: number): void;
}

type Compare = (a: number, b: number) => number;

/** Order by several columns, ascending; what is missing comes last. */
function comparator(columns: readonly ArrayLike<number>[]): Compare {
  return (a, b) => {
    for (const column of columns) {
      const [left, right] = [column[a] as number, column[b] as number];
      if (left < right) return -1;
      if (left > right) return 1;
      const missing = Number(Number.isNaN(left)) - Number(Number.isNaN(right));
      if (missing !== 0) return missing;
    }
    return 0;
  };
}

/**
 * Rows of one measurement side by side: eye, day, label, device; then preferred files first, then files in their
 * order. Inside a file values decide and not row numbers, so that shuffled rows give the same bits.
 */
function joinOrder(rows: MeasurementRows, ranks: readonly number[]): Compare {
  const rank = rows.source.map((source) => ranks[source] as number);
  const { eye, day, visit, device, source, block, row, own } = rows;
  return comparator([eye, day, visit, device, rank, source, block, ...own, row]);
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

/** Tells of a row that contradicts its measurement, or said nothing new. */
function tellJoined(rows: MeasurementRows, row: number, joined: Joined, context: MeasurementContext): void {
  const { against, leftOut, adds } = joined;
  const at = (of: number): RowPlace => ({
    source: rows.source[of] as number,
    block: rows.block[of] as number,
    row: rows.row[of] as number,
  });
  const eye = rows.eye[row] as number;
  if (against !== undefined) {
    tellContradiction(at(row), at(against), context.kind, context, {
      severity: leftOut === 'nothing' ? 'note' : 'set aside',
      effect: effectOf(leftOut, context.kind),
      eye,
      day: rows.day[row] as number,
    });
  } else if (!adds) context.repeats(at(row).source, at(row).row, eye);
}

/**
 * One kind of measurement as a canonical table: rows of one eye, day and device joined, in the order of eye, day,
 * source, row.
 */
export function joinedTable(rows: MeasurementRows, context: MeasurementContext): ColumnTable {
  const { kind } = context;
  const ranks = context.raw.map(({ file }) => rankOf(file, context.plan));
  const side = Uint32Array.from(rows.eye.keys()).sort(joinOrder(rows, ranks));
  const kept: number[] = [];
  let joining: Joining | undefined;
  for (const row of side) {
    if (joining && isOneMeasurement(rows, joining.first, row)) {
      tellJoined(rows, row, joinRow(rows, joining, row, { kind, ranks }), context);
      continue;
    }
    joining = startJoining(rows, row);
    kept.push(row);
  }
  kept.sort(comparator([rows.eye, rows.day, rows.source, rows.row, rows.block]));
  return tableOf(rows, kept, kind);
}

function tableOf(rows: MeasurementRows, order: readonly number[], kind: Kind): ColumnTable {
  const whole = (column: readonly number[]): Int32Array => Int32Array.from(order, (row) => column[row] as number);
  const bytes = (column: readonly number[]): Uint8Array => Uint8Array.from(order, (row) => column[row] as number);
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
    state: bytes(rows.state),
    axisGiven: bytes(rows.axisGiven),
    unread: bytes(rows.unread),
    ...Object.fromEntries(own),
  });
}
