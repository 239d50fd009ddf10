import type { FieldReading } from '../records/canonical.js';
import { cellsOf } from './range.js';
import type { RuleContext } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** A cell of a refraction, by its reading and row. */
export interface ReadCell {
  reading: FieldReading;
  row: number;
}

/** Readings of some fields, file by file. */
export function readingsByFile(
  readings: readonly FieldReading[],
  fields: readonly string[],
): ReadonlyMap<number, readonly FieldReading[]> {
  const files = new Map<number, FieldReading[]>();
  for (const reading of readings) {
    if (!fields.includes(reading.field)) continue;
    files.set(reading.source, [...(files.get(reading.source) ?? []), reading]);
  }
  return files;
}

/**
 * Tells of the cells of a file that are unlike the others: of each where they are few, of the file where they are not.
 *
 * @param rule   told of each cell; with `-file` behind it, of the file
 * @param unlike the cells
 * @param all    how many cells or rows they are counted against
 */
export function tellMinority(
  rule: 'cylinder-notation' | 'refraction-grid',
  unlike: readonly ReadCell[],
  all: number,
  context: RuleContext,
): void {
  const [first] = unlike;
  if (!first) return;
  if (unlike.length < all * thresholdOf('minority', context.plan)) {
    for (const cell of unlike) tellCell(rule, cell, context);
    return;
  }
  const { source, column, field } = first.reading;
  context.report({
    rule: `${rule}-file`,
    severity: 'query',
    source,
    column,
    field,
    written: first.reading.words.at(first.row),
    effect: 'kept',
    detail: unlike.length,
    other: all,
  });
}

function tellCell(rule: string, { reading, row }: ReadCell, context: RuleContext): void {
  const { source, column, field, words, values, eyes } = reading;
  const eye = eyes[row] as number;
  // Measurements of eyes that are not part of the audit are told once, by exam-without-surgery.
  if (eye < 0) return;
  const value = values[words.codes[row] as number] as number;
  const { place, day } = cellsOf(reading, { table: 'refractions' }, context)(row, value);
  const at = { source, row: context.raw[source]?.rowNumber(row) ?? 0, column, field, written: words.at(row), eye, day };
  const marks = place ? [{ ...place, as: 'queried' } as const] : [];
  context.report({ rule, severity: 'query', ...at, effect: 'kept' }, ...marks);
}
