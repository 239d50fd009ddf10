import type { ResultRow } from '../records/result.js';
import type { Words } from '../words/index.js';
import { cohortColumns } from './cohorts.js';
import { hasInterval } from './footnotes.js';
import { formulaOf } from './formula-measures.js';
import type { Column, Draft, Setting } from './shapes.js';
import { valueText } from './value-text.js';

/** An outcome in a few words; undefined for what is none. */
function nameOf(measure: string, words: Words): string | undefined {
  const formula = formulaOf(measure);
  const { formulaOutcome, outcomes } = words.tables;
  return formula === undefined ? outcomes[measure]?.name : formulaOutcome(formula).name;
}

/** How alike fellow eyes are in one outcome and one group, and what that costs; of a yes or no the cost alone. */
function costIn(measure: string, { group, label }: Column, { results, words }: Setting): readonly string[] {
  const { correlationIn, designEffectIn } = words.tables.notes;
  const text = (row: ResultRow | undefined) => (row?.value === undefined ? undefined : valueText(row, words));
  const icc = text(results.find(measure, group, 'icc'));
  const effect = text(results.find(measure, group, 'design_effect'));
  if (icc !== undefined && effect !== undefined) return [correlationIn(label, icc, effect)];
  const ofShare = text(results.find(measure, group, 'design_effect:share'));
  return ofShare === undefined ? [] : [designEffectIn(label, ofShare)];
}

/**
 * A footnote that sets beside every outcome of a table what both eyes of a patient mean for its intervals: intraclass
 * correlation and design effect of the mean, in all eyes and in cohorts. Nothing where nobody has both eyes in it.
 */
export function correlationNote({ rows }: Draft, setting: Setting): readonly string[] {
  const { results, plan, words } = setting;
  const shown = rows.flatMap(({ cells }) => cells.flatMap((cell) => cell.rows)).filter(hasInterval);
  const groupsOf = new Map<string, Set<string>>();
  for (const { measure, group } of shown) groupsOf.set(measure, (groupsOf.get(measure) ?? new Set()).add(group));
  const columns = cohortColumns(results, plan, words);
  const told = [...groupsOf].flatMap(([measure, groups]) => {
    const name = nameOf(measure, words);
    const costs = columns
      .filter(({ group }) => groups.has(group))
      .flatMap((column) => costIn(measure, column, setting));
    return name === undefined || costs.length === 0 ? [] : [words.tables.notes.correlationOf(name, costs.join(', '))];
  });
  return told.length === 0 ? [] : [words.tables.notes.correlation(told.join('; '))];
}
