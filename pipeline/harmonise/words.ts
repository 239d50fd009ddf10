import { joinedCodes, parseCodes, parseYesNo } from '../../src/intake/codes.js';
import { parseDate } from '../../src/intake/date.js';
import { leftoverOf } from '../../src/intake/leftover.js';
import { parseSex } from '../../src/intake/sex.js';
import { fieldNamed } from '../../src/plan/fields.js';
import { noDay } from '../../src/records/canonical.js';
import type { ColumnPlan, Plan } from '../../src/records/plan.js';
import { type Block, type Mapped, mappedColumn } from './blocks.js';
import type { ReadContext } from './read-context.js';
import { tellUnreadable } from './unreadable.js';

/** A named value of a field in one row; undefined where the row has none. */
export type TextCells = (row: number) => string | undefined;

const folded = (word: string): string => word.trim().toLowerCase();

/** Our value → written words, turned round; the column's own words win over those of `values`. */
function spellings(field: string, own: ColumnPlan['words'], plan: Plan): ReadonlyMap<string, string> {
  const lists = { ...plan.values[field], ...own };
  const pairs = Object.entries(lists).flatMap(([ours, written]) =>
    [ours, ...written].map((word) => [folded(word), ours] as const),
  );
  return new Map(pairs);
}

/** One word as a value of ours where its field has few and fixed ones. */
function fixedValue(field: string, word: string): string | undefined {
  if (field === 'sex') return parseSex(word);
  const known = fieldNamed(field);
  if (known?.type === 'yes-no') {
    const answer = parseYesNo(word);
    return answer === undefined ? undefined : answer ? 'yes' : 'no';
  }
  return known?.values?.find((value) => folded(value) === folded(word));
}

/** Asks about every word that stands in no list, once its field has one. */
function tellUnknown(block: Block, column: Mapped, unknown: Uint8Array, context: ReadContext): void {
  if (!unknown.includes(1)) return;
  for (let row = 0; row < block.raw.rows; row++) {
    if (!block.admitted[row] || !unknown[column.words.codes[row] as number]) continue;
    context.findings.add({
      rule: 'word-unknown',
      severity: 'query',
      source: block.source,
      row: block.raw.rowNumber(row),
      column: column.header,
      field: column.plan.field,
      written: column.words.at(row),
      eye: Math.max(-1, context.eyes[row] as number),
      effect: 'kept',
    });
  }
}

/** What a word of a field means: by the declared lists, as one of our own fixed values, else its own spelling. */
function meaningOf(
  word: string,
  field: string,
  lists: ReadonlyMap<string, string>,
): { value?: string; known: boolean } {
  const value = lists.get(folded(word)) ?? fixedValue(field, word);
  if (value !== undefined) return { value, known: true };
  if (fieldNamed(field)?.values !== undefined) return { known: false };
  return { value: word.trim(), known: lists.size === 0 };
}

/** Named values of a mapped column, once a word; words that stand in no list are asked about. */
export function textColumn(block: Block, column: Mapped, plan: Plan, context: ReadContext): TextCells {
  const { field } = column.plan;
  const lists = spellings(field, column.plan.words, plan);
  const blank = block.plan.blank_means[field];
  const unknown = new Uint8Array(column.words.words.length);
  const broken = new Uint8Array(column.words.words.length);
  const byWord = column.words.words.map((word, code) => {
    if (block.isMissing(word)) return blank === undefined ? undefined : String(blank);
    if (leftoverOf(word, 'word') !== undefined && !lists.has(folded(word))) {
      broken[code] = 1;
      return undefined;
    }
    const { value, known } = meaningOf(word, field, lists);
    if (!known) unknown[code] = 1;
    return value;
  });
  tellUnreadable(block, column, broken, { rule: 'word-unknown', effect: 'value left out', as: 'word' }, context);
  tellUnknown(block, column, unknown, context);
  return (row) => byWord[column.words.codes[row] as number];
}

/** Named values of a field: from its column, else the block's constant; undefined where the block has neither. */
export function textCells(block: Block, field: string, plan: Plan, context: ReadContext): TextCells | undefined {
  const column = mappedColumn(block, field);
  if (column) return textColumn(block, column, plan, context);
  const constant = block.plan.constants[field];
  if (constant === undefined) return undefined;
  const { value } = meaningOf(String(constant), field, spellings(field, undefined, plan));
  return () => value;
}

/** What a cell of codes may say; an empty list says "none", undefined that nothing is recorded. */
type Codes = readonly string[] | undefined;

/** Something made of the codes of a field, once a word. */
function fromCodes<V>(block: Block, field: string, make: (codes: Codes) => V): ((row: number) => V) | undefined {
  const column = mappedColumn(block, field);
  if (!column) return undefined;
  const meaning = block.plan.blank_means[field];
  const blank = meaning === undefined ? undefined : parseCodes(String(meaning));
  const byWord = column.words.words.map((word) => make(block.isMissing(word) ? blank : parseCodes(word)));
  return (row) => byWord[column.words.codes[row] as number] as V;
}

/** Codes of a field as written. */
export function codeCells(block: Block, field: string): ((row: number) => Codes) | undefined {
  return fromCodes(block, field, (codes) => codes);
}

/** Codes of a field as one text, each under its declared value: a cell may say several things. */
export function codeTextCells(block: Block, field: string, plan: Plan): TextCells | undefined {
  const lists = spellings(field, undefined, plan);
  return fromCodes(block, field, (codes) => codes && joinedCodes(codes.map((code) => lists.get(folded(code)) ?? code)));
}

/** Dates of a field as days since 1970-01-01; `noDay` where the row has none. */
export function dateCells(block: Block, field: string, context: ReadContext): ((row: number) => number) | undefined {
  const column = mappedColumn(block, field);
  if (!column) return undefined;
  const { dateOrder } = block.raw.read;
  const order = dateOrder === 'none' ? 'year-first' : dateOrder;
  const unreadable = new Uint8Array(column.words.words.length);
  const days = Int32Array.from(column.words.words, (word, code) => {
    if (block.isMissing(word)) return noDay;
    const day = parseDate(word, order);
    if (day === undefined) unreadable[code] = 1;
    return day ?? noDay;
  });
  tellUnreadable(block, column, unreadable, { rule: 'date-unreadable', effect: 'row left out', as: 'date' }, context);
  return (row) => days[column.words.codes[row] as number] as number;
}
