import type { FindingsBuilder } from '../../src/findings/builder.js';
import { calendarFromDays } from '../../src/intake/calendar.js';
import { parseDate } from '../../src/intake/date.js';
import { noDay } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';
import { type Block, mappedColumn } from './blocks.js';
import { numberCells } from './cells.js';
import type { ReadContext } from './read-context.js';
import type { RowBooks } from './row-books.js';
import { dateCells, textCells } from './words.js';

/** One row of a surgery list. */
export interface Operation {
  key: number;
  /** Days since 1970-01-01; `noDay` where only the year, or nothing, is known. */
  day: number;
  year: number;
  order: number;
  procedure: string;
  source: number;
  /** Index into the list of all blocks. */
  at: number;
  row: number;
}

/** An eye of the audit: its first lens operation in the period, and whatever rows describe it. */
export interface OperatedEye {
  key: number;
  first: Operation;
  /** Rows of the same operation, the first included, in canonical order. */
  rows: readonly Operation[];
  later: readonly Operation[];
}

/** The operations of all surgery blocks. A row whose date is mapped but missing belongs nowhere and is set aside. */
export function readOperations(
  blocks: readonly Block[],
  keys: readonly Int32Array[],
  books: readonly RowBooks[],
  plan: Plan,
  findings: FindingsBuilder,
): readonly Operation[] {
  return blocks.flatMap((block, at) => {
    if (block.plan.holds !== 'surgery') return [];
    const ofRow = keys[at] as Int32Array;
    // Dates are told without an eye: which eyes there are is not known yet.
    const { rows } = block.raw;
    const context: ReadContext = {
      eyes: new Int32Array(rows).fill(-1),
      keyed: new Uint8Array(rows),
      findings,
      readings: [],
    };
    const dateOf = dateCells(block, 'surgery_date', context);
    const yearOf = numberCells(block, 'surgery_year', context);
    const orderOf = numberCells(block, 'surgery_order', context);
    const procedureOf = textCells(block, 'procedure', plan, context);
    const found: Operation[] = [];
    for (let row = 0; row < block.raw.rows; row++) {
      const key = ofRow[row] as number;
      if (key < 0) continue;
      const day = dateOf?.(row) ?? noDay;
      const year = day === noDay ? (yearOf?.(row) ?? Number.NaN) : calendarFromDays(day).year;
      if ((dateOf || yearOf) && Number.isNaN(year)) {
        books[block.source]?.setAside(row, 'surgery-date-missing');
        tellMissingDate(block, row, findings);
        continue;
      }
      const order = orderOf?.(row) ?? Number.NaN;
      const procedure = procedureOf?.(row) ?? 'lens';
      found.push({ key, day, year, order, procedure, source: block.source, at, row });
    }
    return found;
  });
}

function tellMissingDate(block: Block, row: number, findings: FindingsBuilder): void {
  const column = mappedColumn(block, 'surgery_date') ?? mappedColumn(block, 'surgery_year');
  findings.add({
    rule: 'surgery-date-missing',
    severity: 'set aside',
    source: block.source,
    row: block.raw.rowNumber(row),
    column: column?.header,
    field: column?.plan.field,
    written: column?.words.at(row),
    effect: 'row left out',
  });
}

const inOrder = (a: Operation, b: Operation): number =>
  a.key - b.key ||
  a.day - b.day ||
  a.year - b.year ||
  a.order - b.order ||
  a.source - b.source ||
  a.at - b.at ||
  a.row - b.row;

/** Whether an operation lies in the audit's period, both ends included; an operation without any date does. */
function inPeriod({ day, year }: Operation, { from, to }: Plan['period']): boolean {
  const passes = (limit: string | undefined, holds: (value: number, end: number) => boolean): boolean => {
    if (limit === undefined || Number.isNaN(year)) return true;
    const date = /^\d{4}$/.test(limit) ? undefined : parseDate(limit, 'year-first');
    if (date === undefined || day === noDay) return holds(year, Number(limit.slice(0, 4)));
    return holds(day, date);
  };
  return passes(from, (value, end) => value >= end) && passes(to, (value, end) => value <= end);
}

const isSameOperation = (a: Operation, b: Operation): boolean =>
  a.procedure === b.procedure && a.day === b.day && Object.is(a.year, b.year) && Object.is(a.order, b.order);

/**
 * The eyes of the audit: for each patient and side the first lens operation in the period. Everything else that
 * was done to the eye stands beside it.
 *
 * @returns eyes in canonical order, and the keys of eyes that were operated outside the period only
 */
export function operatedEyes(
  operations: readonly Operation[],
  plan: Plan,
): { eyes: readonly OperatedEye[]; outside: ReadonlySet<number> } {
  const sorted = [...operations].sort(inOrder);
  const eyes: OperatedEye[] = [];
  const outside = new Set<number>();
  for (let from = 0, to = 0; from < sorted.length; from = to) {
    const { key } = sorted[from] as Operation;
    while (sorted[to]?.key === key) to++;
    const all = sorted.slice(from, to);
    const first = all.find((one) => one.procedure === 'lens' && inPeriod(one, plan.period));
    if (!first) {
      outside.add(key);
      continue;
    }
    const rows = all.filter((one) => isSameOperation(one, first));
    eyes.push({ key, first, rows, later: all.filter((one) => !rows.includes(one)) });
  }
  return { eyes, outside };
}
