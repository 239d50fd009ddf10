import type { Plan } from '../records/plan.js';
import type { ResultRow } from '../records/result.js';
import type { Words } from '../words/index.js';
import { levelText } from './level.js';
import { noteCodes } from './marks.js';
import type { Draft } from './shapes.js';

const unique = <T>(values: readonly T[]): readonly T[] => [...new Set(values)];

/** Methods of regions, whose rows have axes in place of limits. */
const regions = ['hotelling-patient', 'centroid-difference'];

/** Whether a row shows an interval or a region, so that its method has to be told. */
export function hasInterval(row: ResultRow): boolean {
  return row.ci_low !== undefined || (regions.includes(row.method) && row.value !== undefined);
}

/**
 * Footnotes that follow from what is shown: notes without a mark, how the intervals were made, abbreviations.
 *
 * @throws {RangeError} when the method of an interval has no words
 */
export function generalNotes(draft: Draft, plan: Plan, words: Words): readonly string[] {
  const rows = draft.rows.flatMap(({ cells }) => cells.flatMap((cell) => cell.rows));
  const codes = unique(rows.flatMap(noteCodes));
  const unmarked = Object.entries(words.tables.notes.unmarked);
  const general = unmarked.flatMap(([code, text]) => (codes.includes(code) ? [text] : []));
  return [
    ...general,
    ...intervalNote(draft, rows, plan, words),
    ...testNote(rows, words),
    ...abbreviationNote(draft, words),
  ];
}

function intervalNote({ level }: Draft, rows: readonly ResultRow[], plan: Plan, words: Words): readonly string[] {
  const { intervals, intervalsLead } = words.tables.notes;
  const told = unique(rows.filter(hasInterval).map((row) => row.method)).map((method) => textOf(method, intervals));
  return told.length === 0 ? [] : [intervalsLead(level ?? levelText(plan), told.join('; '))];
}

/** The tests behind the p values of comparisons; those of one group stand in their rows' labels. */
function testNote(rows: readonly ResultRow[], words: Words): readonly string[] {
  const { tests, testsLead } = words.tables.notes;
  const tested = rows.filter(({ statistic }) => statistic.startsWith('p:'));
  const told = unique(unique(tested.map((row) => row.method)).map((method) => textOf(method, tests)));
  return told.length === 0 ? [] : [testsLead(told.join('; '))];
}

function textOf(method: string, texts: Readonly<Record<string, string>>): string {
  const text = texts[method];
  if (text === undefined) throw new RangeError(`footnotes: method "${method}" has no words in table-notes.ts`);
  return text;
}

/** The abbreviations that stand in head, labels or cells. */
function abbreviationNote({ head, rows }: Draft, words: Words): readonly string[] {
  const { ci, dioptre, logMAR, ratio, sd } = words.tables.notes.abbreviations;
  const cells = rows.flatMap((row) => row.cells.map(({ text }) => text));
  const shown = [...head.map(({ text }) => text), ...rows.map(({ label }) => label), ...cells].join('\n');
  const told = [ci, dioptre, logMAR, ratio, sd].filter(({ pattern }) => pattern.test(shown)).map(({ text }) => text);
  return told.length === 0 ? [] : [`${told.join('; ')}.`];
}
