import { type Kind, kinds, noDay } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';
import { type Block, mappedColumn } from './blocks.js';
import { examDays } from './exam-days.js';
import { kindReader } from './kinds.js';
import { type MeasurementRows, type MeasurementRowsBuilder, measurementRows } from './measurement-rows.js';
import type { ReadContext } from './read-context.js';
import type { RowBooks } from './row-books.js';

const kindNames = Object.keys(kinds) as Kind[];

/** An eye that was operated, but outside the audit's period: its rows are set aside, not doubted. */
export const outsidePeriod = -2;

export interface Gathered {
  rows: Readonly<Record<Kind, MeasurementRows>>;
  /** Names behind the device codes. */
  devices: readonly string[];
  /** Latest date of any examination; `noDay` without dates. */
  latest: number;
}

/** The device of each row: its column, its constant, else the source itself. */
function deviceCodes(block: Block, codeOf: (name: string) => number): (row: number) => number {
  const own = `source ${block.raw.source + 1}`;
  const column = mappedColumn(block, 'device');
  if (!column) {
    const fixed = codeOf(String(block.plan.constants.device ?? own));
    return () => fixed;
  }
  const byWord = column.words.words.map((word) => codeOf(block.isMissing(word) ? own : word.trim()));
  return (row) => byWord[column.words.codes[row] as number] as number;
}

function byKind<V>(make: (kind: Kind) => V): Record<Kind, V> {
  return Object.fromEntries(kindNames.map((kind) => [kind, make(kind)])) as Record<Kind, V>;
}

/** Every measurement of every examination, in the order of files and rows. */
export function gatherMeasurements(
  blocks: readonly Block[],
  contexts: readonly ReadContext[],
  books: readonly RowBooks[],
  surgeryDay: Int32Array,
  plan: Plan,
): Gathered {
  const rows = byKind(measurementRows);
  const devices = new Map<string, number>();
  const codeOf = (name: string): number => {
    const code = devices.get(name) ?? devices.size;
    devices.set(name, code);
    return code;
  };
  let latest = noDay;
  blocks.forEach((block, at) => {
    if (block.plan.holds !== 'exam') return;
    const context = contexts[at] as ReadContext;
    const when = examDays(block, surgeryDay, plan, context);
    latest = Math.max(latest, when.latest);
    const readers = kindNames.flatMap((kind) => {
      const read = kindReader(kind, block, plan, context);
      return read ? [{ read, into: rows[kind] }] : [];
    });
    const deviceOf = deviceCodes(block, codeOf);
    const book = books[block.source] as RowBooks;
    for (let row = 0; row < block.raw.rows; row++) {
      if (block.admitted[row]) gatherRow(row, block, context, when, deviceOf(row), readers, book);
    }
  });
  return { rows: byKind((kind) => rows[kind].finish()), devices: [...devices.keys()], latest };
}

function gatherRow(
  row: number,
  block: Block,
  context: ReadContext,
  when: ReturnType<typeof examDays>,
  device: number,
  readers: readonly { read: NonNullable<ReturnType<typeof kindReader>>; into: MeasurementRowsBuilder }[],
  book: RowBooks,
): void {
  const eye = context.eyes[row] as number;
  if (eye === outsidePeriod) book.setAside(row, 'outside-period');
  if (eye < -1 || !context.keyed[row]) return;
  const day = when.day(row);
  const label = when.label(row);
  if (eye >= 0 && day === noDay && label === 0) {
    book.setAside(row, 'day-unknown');
    return;
  }
  const place = { eye, day, visit: label, device, source: block.source, block: block.block, row };
  let given = false;
  for (const { read, into } of readers) {
    const values = read(row);
    if (!values) continue;
    given ||= values.own.some((value) => !Number.isNaN(value));
    into.push(place, values);
  }
  // Measurements of an eye that was never operated are kept for their finding, but serve nothing.
  if (eye < 0) book.setAside(row, 'eye-not-operated');
  else if (given) book.use(row);
  else book.setAside(row, 'no-values');
}
