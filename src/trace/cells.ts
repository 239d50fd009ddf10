import { integersOf } from '../columns/table.js';
import { locateColumn } from '../findings/header.js';
import { fixed } from '../format/number.js';
import { fieldNamed } from '../plan/fields.js';
import { type Kind, kinds, noDay } from '../records/canonical.js';
import type { BlockPlan } from '../records/plan.js';
import { keptColumn, type RawTable } from '../records/raw-table.js';
import type { TraceBlock, TraceLine } from '../screens/trace.js';
import type { ChosenRows } from '../visits/assemble.js';
import { type RawPlace, readingNotes, surgeryNotes } from './readings.js';
import type { Traced } from './traced.js';

/** One row of a file as it was written: the cells of the fields asked for. */
function cellsOf(
  { raw, words }: Traced,
  { source, row }: RawPlace,
  block: BlockPlan,
  wanted: (field: string) => boolean,
): string {
  const table = raw[source] as RawTable;
  return block.columns
    .filter(({ field }) => wanted(field))
    .flatMap((column) => {
      const { index } = locateColumn(table.header, column);
      const written = index === undefined ? '' : keptColumn(table, index).at(row);
      const former = index === undefined ? undefined : table.formerly?.(row, index);
      if (written.trim() === '' && former === undefined) return [];
      const cell = words.trace.cell(table.header[index as number] as string, written);
      return [former === undefined ? cell : `${cell} ${words.trace.formerly(former)}`];
    })
    .join('  ');
}

function blockOf({ raw, plan }: Traced, source: number, block: number): BlockPlan {
  const found = plan.sources[raw[source]?.source ?? -1]?.blocks[block];
  if (!found) throw new RangeError(`trace: file ${source} has no block ${block}`);
  return found;
}

function place({ raw, words }: Traced, { source, row }: RawPlace): string {
  const table = raw[source] as RawTable;
  return words.trace.place(table.label, String(table.rowNumber(row)));
}

/** The eye's row of the surgery list. */
export function surgeryCells(traced: Traced): TraceBlock {
  const { eyes } = traced.derived;
  const at = (column: string): number => integersOf(eyes, column)[traced.eye] as number;
  const from: RawPlace = { source: at('source'), block: at('block'), row: at('row') };
  const block = blockOf(traced, from.source, from.block);
  const cells = cellsOf(traced, from, block, (field) => field !== 'patient' && field !== 'surgery_date');
  return {
    title: traced.words.trace.cells.surgery,
    lines: [{ label: place(traced, from), value: '', notes: [cells, ...surgeryNotes(traced, from, block)] }],
  };
}

function examLine(traced: Traced, kind: Kind, row: number): TraceLine {
  const { trace } = traced.words;
  const table = traced.derived.tables.measurements[kind];
  const at = (column: string): number => integersOf(table, column)[row] as number;
  const from: RawPlace = { source: at('source'), block: at('block'), row: at('row') };
  const block = blockOf(traced, from.source, from.block);
  const cells = cellsOf(traced, from, block, (field) => fieldNamed(field)?.kind === kind);
  const day = at('day');
  const when = day === noDay ? trace.dayUnknown : trace.day(fixed(day, 0));
  return {
    label: trace.kinds[kind],
    value: `${place(traced, from)}, ${when}`,
    notes: [cells, ...readingNotes(traced, kind, row, from, block)],
  };
}

/** The rows of every kind that were chosen for the eye, before surgery or at the outcome. */
export function examCells(traced: Traced, title: string, rows: ChosenRows): TraceBlock {
  const chosen = (Object.keys(kinds) as Kind[]).filter((kind) => (rows[kind][traced.eye] as number) >= 0);
  return { title, lines: chosen.map((kind) => examLine(traced, kind, rows[kind][traced.eye] as number)) };
}
