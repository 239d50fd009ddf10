import { count, shortest } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { levelText } from './level.js';
import type { Asked, Column, Draft, DraftRow, Setting, ShownCell } from './shapes.js';

/** The label of a block of rows. */
export function block(label: string): DraftRow {
  return { label, indent: 0, cells: [] };
}

/**
 * One row of a table: the same cell for every column, its numbers by key.
 *
 * @throws {RangeError} when a results row that the cell asks for is not there
 * @example across(setting, 'prediction_error', 'Median', (get) => valueCell(get('median'), words))
 */
export function across(
  { results, columns }: Setting,
  measure: string,
  label: string,
  cell: (get: Asked) => ShownCell,
  indent: 0 | 1 = 1,
): DraftRow {
  const cellOf = ({ group }: Column) => cell((statistic) => results.get(measure, group, statistic));
  return { label, indent, cells: columns.map(cellOf) };
}

/** Head of a table with one column a cohort; the n of each is one count among the results rows. */
export function cohortHead(setting: Setting, stub: string, measure: string, statistic: string): Draft['head'] {
  const countOf = (group: string) => setting.results.get(measure, group, statistic).n;
  return [{ text: stub }, ...setting.columns.map(({ group, label }) => ({ text: label, n: countOf(group) }))];
}

/** Head of the column of labels where estimates are followed by their intervals: 'Statistic (95 % CI)'. */
export function statisticStub({ plan, words }: Setting): string {
  return words.tables.withInterval(words.tables.statistic, levelText(plan));
}

/** How many values were come by in a way that a footnote has to tell, over all eyes. */
export function provenance({ results, words }: Pick<Setting, 'results' | 'words'>, statistic: string): string {
  const row = results.get('provenance', 'all', statistic);
  return row.note === 'suppressed' ? words.tables.notShown : count(row.value ?? 0);
}

/** At which vertex distance refractions were taken to the cornea: as recorded, and for how many eyes by the plan's. */
export function vertexText(results: Results, plan: Plan, words: Words): string {
  const { vertexAssumed, vertexRecorded } = words.tables.notes;
  const eyes = results.get('provenance', 'all', 'vertex_assumed').value ?? 0;
  return eyes === 0 ? vertexRecorded : vertexAssumed(shortest(plan.policies.vertex_mm), count(eyes));
}
