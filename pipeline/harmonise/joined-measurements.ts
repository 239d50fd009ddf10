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
  const further = comparator([visit, device, rank, source, block, ...own, row]);
  return (a, b) => (eye[a] as number) - (eye[b] as number) || (day[a] as number) - (day[b] as number) || further(a, b);
}

/** Sorts row numbers; exports are mostly in order already, and to see that costs less than to sort. */
function sortRows(order: Uint32Array, compare: Compare): Uint32Array {
  for (let i = 1; i < order.length; i++) {
    if (compare(order[i - 1] as number, order[i] as number) > 0) return order.sort(compare);
  }
  return order;
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
  const all = new Uint32Array(rows.eye.length).map((_, row) => row);
  const kept = new Uint32Array(all.length);
  let count = 0;
  let joining: Joining | undefined;
  for (const row of sortRows(all, joinOrder(rows, ranks))) {
    if (joining && isOneMeasurement(rows, joining.first, row)) {
      tellJoined(rows, row, joinRow(rows, joining, row, { kind, ranks }), context);
      continue;
    }
    joining = startJoining(rows, row);
    kept[count++] = row;
  }
  const order = sortRows(kept.slice(0, count), comparator([rows.eye, rows.day, rows.source, rows.row, rows.block]));
  return tableOf(rows, order, kind);
}

/** The values of a column in the order of rows. */
function taken<A extends Int32Array | Uint8Array | Float64Array>(column: A, order: Uint32Array, into: A): A {
  for (let i = 0; i < order.length; i++) into[i] = column[order[i] as number] as number;
  return into;
}

function tableOf(rows: MeasurementRows, order: Uint32Array, kind: Kind): ColumnTable {
  const whole = (column: Int32Array): Int32Array => taken(column, order, new Int32Array(order.length));
  const bytes = (column: Uint8Array): Uint8Array => taken(column, order, new Uint8Array(order.length));
  const own = kinds[kind].map((name, i) => {
    return [name, taken(rows.own[i] as Float64Array, order, new Float64Array(order.length))] as const;
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
