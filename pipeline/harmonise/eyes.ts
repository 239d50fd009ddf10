import { type ColumnTable, table } from 'arquero';
import type { FindingsBuilder } from '../../src/findings/builder.js';
import type { FieldReading } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';
import type { Block } from './blocks.js';
import { complicationColumns } from './complications.js';
import { type FactContext, factColumns } from './facts.js';
import { twice } from './join.js';
import type { Keys } from './keys.js';
import { outsidePeriod } from './measurements.js';
import type { OperatedEye } from './operations.js';
import type { ReadContext } from './read-context.js';
import { saysTheSame } from './repeats.js';
import type { RowBooks } from './row-books.js';
import { sourceMarks } from './source-marks.js';

/** A row of a later operation on an eye of the audit: it describes that operation, not the eye. */
const laterOperation = -3;

/**
 * Eye index of every row of every block: what connects a file's rows with the eyes of the audit.
 *
 * @returns one context a block; −1 no operated eye, −2 operated outside the period, −3 a later operation
 */
export function rowContexts(
  blocks: readonly Block[],
  keys: Keys,
  eyes: readonly OperatedEye[],
  outside: ReadonlySet<number>,
  findings: FindingsBuilder,
  readings: FieldReading[],
): readonly ReadContext[] {
  const eyeOfKey = new Map(eyes.map(({ key }, eye) => [key, eye]));
  const eyeOf = (key: number): number => (outside.has(key) ? outsidePeriod : (eyeOfKey.get(key) ?? -1));
  return blocks.map((block, at) => {
    const ofRow = keys.ofBlock[at] as Int32Array;
    const rows = ofRow.map((key) => (key < 0 ? -1 : eyeOf(key)));
    if (block.plan.holds === 'surgery') markOperations(rows, at, eyes);
    return {
      eyes: rows,
      keyed: new Uint8Array(ofRow.length).map((_, row) => ((ofRow[row] as number) < 0 ? 0 : 1)),
      findings,
      readings,
    };
  });
}

/** In a surgery list a row belongs to an eye only where it tells of the eye's own operation. */
function markOperations(rows: Int32Array, at: number, eyes: readonly OperatedEye[]): void {
  rows.forEach((eye, row) => {
    if (eye >= 0 && !eyes[eye]?.rows.some((one) => one.at === at && one.row === row)) rows[row] = laterOperation;
  });
}

/** The books of the rows that describe eyes: used, repeated, of no eye, or outside the period. */
export function bookEyeRows(
  blocks: readonly Block[],
  contexts: readonly ReadContext[],
  eyes: readonly OperatedEye[],
  books: readonly RowBooks[],
  findings: FindingsBuilder,
): void {
  blocks.forEach((block, at) => {
    const book = books[block.source] as RowBooks;
    const { eyes: ofRow, keyed } = contexts[at] as ReadContext;
    ofRow.forEach((eye, row) => {
      if (!keyed[row]) return;
      if (eye === -1) book.setAside(row, 'eye-not-operated');
      else if (eye === outsidePeriod) book.setAside(row, 'outside-period');
      else if (block.plan.holds === 'surgery' || block.plan.holds === 'eye') book.use(row);
    });
  });
  eyes.forEach(({ rows }, eye) => {
    const first = rows[0];
    for (const { at, row } of rows.slice(1)) {
      const block = blocks[at] as Block;
      if (!first || first.at !== at || !saysTheSame(block, first.row, row)) continue;
      books[block.source]?.repeats(row);
      findings.add({ ...twice, source: block.source, row: block.raw.rowNumber(row), eye });
    }
  });
}

/** Rows that describe each eye: those of its operation, then those of `eye` sources, in file order. */
function describingRows(blocks: readonly Block[], contexts: readonly ReadContext[], eyes: readonly OperatedEye[]) {
  const rowsOfEye = eyes.map(({ rows }) => rows.map(({ at, row }) => ({ at, row })));
  blocks.forEach((block, at) => {
    if (block.plan.holds !== 'eye') return;
    contexts[at]?.eyes.forEach((eye, row) => {
      if (eye >= 0) rowsOfEye[eye]?.push({ at, row });
    });
  });
  return rowsOfEye;
}

/** The eyes of the audit with every mapped surgery and eye field. */
export function eyeTable(
  blocks: readonly Block[],
  contexts: readonly ReadContext[],
  eyes: readonly OperatedEye[],
  plan: Plan,
): ColumnTable {
  const whole = (of: (eye: OperatedEye) => number): Int32Array => Int32Array.from(eyes, of);
  const laterality = whole(({ key }) => key & 1);
  const context: FactContext = { blocks, contexts, rowsOfEye: describingRows(blocks, contexts, eyes), plan };
  const facts = factColumns(context, laterality);
  return table({
    patient: whole(({ key }) => key >> 1),
    laterality,
    surgeryDay: whole(({ first }) => first.day),
    year: Float64Array.from(eyes, ({ first }) => first.year),
    order: Float64Array.from(eyes, ({ first }) => first.order),
    source: whole(({ first }) => first.source),
    block: whole(({ first }) => blocks[first.at]?.block ?? 0),
    row: whole(({ first }) => first.row),
    ...facts,
    ...complicationColumns(context, facts),
    ...sourceMarks(context),
  });
}

/** Other operations on the eyes of the audit, with their day from the first. */
export function eventTable(blocks: readonly Block[], eyes: readonly OperatedEye[], noDay: number): ColumnTable {
  const events = eyes.flatMap(({ first, later }, eye) => later.map((operation) => ({ operation, eye, first })));
  const dayOf = (day: number, first: number): number => (day === noDay || first === noDay ? noDay : day - first);
  return table({
    eye: Int32Array.from(events, ({ eye }) => eye),
    day: Int32Array.from(events, ({ operation, first }) => dayOf(operation.day, first.day)),
    procedure: events.map(({ operation }) => operation.procedure),
    source: Int32Array.from(events, ({ operation }) => operation.source),
    block: Int32Array.from(events, ({ operation }) => blocks[operation.at]?.block ?? 0),
    row: Int32Array.from(events, ({ operation }) => operation.row),
  });
}
