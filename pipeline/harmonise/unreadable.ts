import { splitDate } from '../../src/intake/date.js';
import { leftoverOf, leftovers } from '../../src/intake/leftover.js';
import type { Effect, Finding } from '../../src/records/finding.js';
import type { Block, Mapped } from './blocks.js';
import type { ReadContext } from './read-context.js';

/** How cells that cannot be read are told. */
interface Told {
  /** The rule where nothing more is known of the cell. */
  rule: string;
  effect: Effect;
  /** What the column should hold. */
  as: 'number' | 'date' | 'word';
}

/** Fewer unreadable cells than this say nothing of a whole column. */
const fewest = 3;

/** Rows of the block whose cell is filled, and those among them that could not be read. */
function countCells(block: Block, { words }: Mapped, unreadable: Uint8Array): { filled: number; unread: number } {
  const isFilled = Uint8Array.from(words.words, (word) => (block.isMissing(word) ? 0 : 1));
  const counts = { filled: 0, unread: 0 };
  for (let row = 0; row < block.raw.rows; row++) {
    const code = words.codes[row] as number;
    if (!block.admitted[row] || !isFilled[code]) continue;
    counts.filled++;
    if (unreadable[code]) counts.unread++;
  }
  return counts;
}

/** The first row of the block whose cell could not be read. */
function firstUnread(block: Block, { words }: Mapped, unreadable: Uint8Array): number {
  let row = 0;
  while (row < block.raw.rows && !(block.admitted[row] && unreadable[words.codes[row] as number])) row++;
  return row;
}

/** A date is read and never written, wherever it stands. */
function shown(word: string, as: Told['as']): string | undefined {
  return as === 'date' || splitDate(word) ? undefined : word;
}

/** Rule and detail for one word: what a spreadsheet has made of it, where that is plain. */
function ruleOf(word: string, { rule, as }: Told): Pick<Finding, 'rule' | 'detail' | 'written'> {
  const leftover = leftoverOf(word, as);
  const written = shown(word, as);
  if (leftover === undefined) return { rule, detail: Number.NaN, written };
  return { rule: 'spreadsheet-leftover', detail: leftovers.indexOf(leftover), written };
}

/**
 * Tells of every row whose word could not be read. Where that is most of a column, its mapping or its form is in doubt
 * and not its cells: the audit stops.
 *
 * @param unreadable  1 for each word that could not be read
 */
export function tellUnreadable(
  block: Block,
  column: Mapped,
  unreadable: Uint8Array,
  told: Told,
  { eyes, findings }: Pick<ReadContext, 'eyes' | 'findings'>,
): void {
  if (!unreadable.includes(1)) return;
  const place = { source: block.source, column: column.header, field: column.plan.field };
  const { filled, unread } = countCells(block, column, unreadable);
  if (unread >= fewest && 2 * unread > filled && told.as !== 'word') {
    const first = firstUnread(block, column, unreadable);
    const written = shown(column.words.at(first), told.as);
    const stop = { rule: 'column-unreadable', severity: 'stop', effect: 'nothing published' } as const;
    findings.add({ ...stop, ...place, row: block.raw.rowNumber(first), written, detail: unread });
    return;
  }
  const rules = column.words.words.map((word, code) => (unreadable[code] ? ruleOf(word, told) : undefined));
  for (let row = 0; row < block.raw.rows; row++) {
    const rule = rules[column.words.codes[row] as number];
    if (!block.admitted[row] || !rule) continue;
    findings.add({
      ...rule,
      ...place,
      severity: 'set aside',
      effect: told.effect,
      row: block.raw.rowNumber(row),
      eye: Math.max(-1, eyes[row] as number),
    });
  }
}
