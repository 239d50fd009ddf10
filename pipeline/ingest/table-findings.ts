import type { WordColumn } from '../../src/columns/word-column.js';
import type { FindingParts } from '../../src/findings/builder.js';
import { foldedHeader } from '../../src/findings/header.js';
import { type Delimiter, judgeDelimiter } from '../../src/intake/delimiter.js';
import { nearest } from '../../src/plan/nearest.js';
import { headerKind, valueKind } from './identifier-gate.js';
import type { TableRead } from './read-table.js';
import type { Unsettled } from './wanted.js';

const stop = { severity: 'stop', effect: 'nothing published' } as const;

/** A header that may be shown: where a file has none, its first row of data stands there, and that stays unsaid. */
function shownHeader(header: readonly string[], index: number): string {
  const written = header[index]?.trim() ?? '';
  return written === '' || valueKind([written], 'patient') >= 0 ? `column ${index + 1}` : written;
}

/** A column that is not found, with the header most like it; or one met several times, with how often. */
function unsettledFinding({ wanted, why }: Unsettled, header: readonly string[]): FindingParts {
  const column = wanted.column ?? `column ${wanted.position}`;
  const about = { ...stop, column, field: wanted.field };
  const name = foldedHeader(column);
  const met = header.filter((one) => foldedHeader(one) === name).length;
  if (why === 'twice') return { ...about, rule: 'column-twice', detail: met };
  const shown = header.map((_, index) => shownHeader(header, index));
  return { ...about, rule: 'column-missing', written: nearest(column, shown), detail: wanted.occurrence ?? Number.NaN };
}

/** Cells of the table that hold a character which the encoding could not read. */
function unreadableCells(columns: readonly WordColumn[]): number {
  let cells = 0;
  for (const { words, codes } of columns) {
    const broken = new Set(words.flatMap((word, code) => (word.includes('\ufffd') ? [code] : [])));
    if (broken.size > 0) for (const code of codes) cells += broken.has(code) ? 1 : 0;
  }
  return cells;
}

/** What parts a header that was read as one cell: the file has another delimiter than audit.yaml says. */
function overlooked(header: readonly string[]): Delimiter | undefined {
  const filled = header.filter((cell) => cell.trim() !== '');
  return filled.length === 1 ? judgeDelimiter(`${filled[0]}\n`).delimiter : undefined;
}

/** Columns that are not found; where a row further down has them all, that row is asked about instead. */
function headerFindings({ layout, header = [], likelierHeader }: TableRead): readonly FindingParts[] {
  const delimiter = layout.unsettled.length > 0 ? overlooked(header) : undefined;
  if (delimiter) return [{ ...stop, rule: 'delimiter-other', written: delimiter }];
  if (likelierHeader === 0) return layout.unsettled.map((one) => unsettledFinding(one, header));
  return [{ ...stop, rule: 'header-row-open', row: likelierHeader, detail: likelierHeader }];
}

/** Rows that are no data: summary lines and repeated headers are noted, another header stops. */
function oddFindings({ odd }: TableRead): readonly FindingParts[] {
  const note = { severity: 'note', effect: 'row left out' } as const;
  return odd.map(({ row, kind }) => {
    if (kind === 'header changes') return { ...stop, rule: 'header-changes', row };
    return { ...note, rule: kind === 'summary' ? 'row-summary' : 'row-header-again', row };
  });
}

/** Characters that do not belong into text, or that the encoding does not know. */
function characterFindings({ columns, nulCells }: TableRead): readonly FindingParts[] {
  const query = { severity: 'query', effect: 'kept' } as const;
  const cells = unreadableCells(columns);
  return [
    ...(nulCells > 0 ? [{ ...query, rule: 'nul-bytes', detail: nulCells }] : []),
    ...(cells > 0 ? [{ ...query, rule: 'encoding-doubtful', detail: cells }] : []),
  ];
}

/**
 * What a file raises by its shape: columns not found, quotation marks left open, ragged rows, rows passed over. Where the
 * header is another row, nothing is said of rows by the wrong one.
 */
export function tableFindings(read: TableRead): readonly FindingParts[] {
  const found: FindingParts[] = [...headerFindings(read)];
  if (read.quoteRow > 0) found.push({ ...stop, rule: 'quote-open', row: read.quoteRow });
  found.push(...oddFindings(read));
  if (read.likelierHeader > 0) return found;
  for (const { row, cells } of read.ragged) {
    found.push({ rule: 'row-ragged', severity: 'set aside', effect: 'row left out', row, detail: cells });
  }
  if (read.rows === 0) found.push({ rule: 'file-without-rows', severity: 'query', effect: 'kept' });
  found.push(...characterFindings(read));
  // The header itself is no row that a reader would miss, and odd rows are told by their own rules.
  const passedOver = read.passedOver - 1 - read.odd.length;
  if (passedOver > 0) found.push({ rule: 'rows-passed-over', severity: 'note', effect: 'kept', detail: passedOver });
  return found;
}

/** Which field the cells of a kept column are judged as: a patient's code more strictly than others. */
function judgedAs(fields: readonly (string | undefined)[]): string | undefined {
  return fields.find((field) => field === 'patient') ?? fields.find((field) => field !== undefined);
}

/**
 * The de-identification gate: what any header, or any cell of any column, says of a person. The finding names file and
 * column; the cell is never told.
 *
 * @param isReviewed  whether audit.yaml declares a column safe
 */
export function identifierFindings(read: TableRead, isReviewed: (header: string) => boolean): readonly FindingParts[] {
  const { layout, columns, passing } = read;
  const header = read.header ?? [];
  const kinds = new Map<number, number>();
  for (const { index, kind } of passing) kinds.set(index, kind);
  layout.kept.forEach((index, at) => {
    const fields = (layout.uses[at] ?? []).map(({ field }) => field);
    const kind = valueKind((columns[at] as WordColumn).words, judgedAs(fields));
    if (kind >= 0) kinds.set(index, kind);
  });
  header.forEach((text, index) => {
    const kind = headerKind(text);
    if (kind >= 0) kinds.set(index, kind);
  });
  return [...kinds]
    .filter(([index]) => !isReviewed(header[index] ?? ''))
    .sort(([a], [b]) => a - b)
    .map(([index, detail]) => ({
      ...stop,
      rule: 'identifier-present',
      column: shownHeader(header, index),
      detail,
    }));
}
