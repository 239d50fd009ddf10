import type { Plan } from '../records/plan.js';
import type { ResultRow } from '../records/result.js';
import type { Words } from '../words/index.js';
import { levelText } from './level.js';
import { noteCodes } from './marks.js';
import type { ShownCell } from './shapes.js';
import { isShare } from './value-text.js';

const unique = <T>(values: readonly T[]): readonly T[] => [...new Set(values)];

/** Whether a row shows an interval or a region, so that its method has to be told. */
export function hasInterval(row: ResultRow): boolean {
  return row.ci_low !== undefined || (row.method === 'hotelling-patient' && row.value !== undefined);
}

/**
 * Footnotes that follow from the rows shown: notes without a mark, how the intervals were made, abbreviations.
 *
 * @throws {RangeError} when the method of an interval has no words
 */
export function generalNotes(cells: readonly ShownCell[], plan: Plan, words: Words): readonly string[] {
  const rows = cells.flatMap((cell) => cell.rows);
  const codes = unique(rows.flatMap(noteCodes));
  const unmarked = Object.entries(words.tables.notes.unmarked);
  const general = unmarked.flatMap(([code, text]) => (codes.includes(code) ? [text] : []));
  return [...general, ...intervalNote(rows, plan, words), ...abbreviationNote(cells, rows, words)];
}

function intervalNote(rows: readonly ResultRow[], plan: Plan, words: Words): readonly string[] {
  const { intervals, intervalsLead } = words.tables.notes;
  const texts: Readonly<Record<string, string>> = intervals;
  const told = unique(rows.filter(hasInterval).map((row) => row.method)).map((method) => {
    const text = texts[method];
    if (text === undefined) throw new RangeError(`intervalNote: method "${method}" has no words in table-notes.ts`);
    return text;
  });
  return told.length === 0 ? [] : [intervalsLead(levelText(plan), told.join('; '))];
}

function abbreviationNote(cells: readonly ShownCell[], rows: readonly ResultRow[], words: Words): readonly string[] {
  const { ci, dioptre, logMAR, ratio, sd } = words.tables.notes.abbreviations;
  const used = [
    rows.some((row) => row.ci_low !== undefined) ? ci : '',
    rows.some((row) => row.unit.startsWith('D')) ? dioptre : '',
    rows.some((row) => row.unit === 'logMAR') ? logMAR : '',
    cells.some((cell) => cell.rows.some((row) => isShare(row)) && cell.text.includes('/')) ? ratio : '',
    rows.some((row) => /^sd(_|$)/.test(row.statistic)) ? sd : '',
  ].filter((text) => text !== '');
  return used.length === 0 ? [] : [`${used.join('; ')}.`];
}
