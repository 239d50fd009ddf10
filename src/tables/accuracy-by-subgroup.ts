import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, eyesCell } from './cells.js';
import { withinCell } from './error-rows.js';
import { finish } from './finish.js';
import { followUpNotes, outcomeVisit } from './follow-up.js';
import { fieldLabel, groupPairs, valueLabel } from './groups.js';
import { type HeadlineError, headlineError } from './headline-error.js';
import { levelText } from './level.js';
import { policyNotes, primaryRecomputedNote } from './recomputed-notes.js';
import { block } from './rows.js';
import type { Draft, DraftRow, UnnumberedTable } from './shapes.js';

const half = '0.50';

/**
 * The error of the headlines by lens model, surgeon, year and whatever else audit.yaml lists: one row a value. Raw, not
 * centred: centring inside a subgroup would hide the very offset that is looked for.
 */
export function accuracyBySubgroup(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const error = headlineError(results);
  const rows = error === undefined ? [] : plan.subgroups.flatMap((field) => fieldRows(results, words, error, field));
  if (error === undefined || rows.length === 0) return undefined;
  const { allEyes, blocks, notes, titles } = words.tables;
  const name = error === 'prediction_error' ? blocks.predictionShort : blocks.targetShort;
  const all = { results, plan, words, columns: [{ group: 'all', label: allEyes }] };
  return finish(
    {
      id: 'accuracy-by-subgroup',
      title: titles['accuracy-by-subgroup'](outcomeVisit(plan, words), name),
      head: heads(plan, words),
      rows: [groupRow(results, words, error, 'all', allEyes, 0), ...rows],
      footnotes: [
        notes.refraction.sign(plan.policies.lane),
        notes.refraction.thresholds,
        ...(error === 'prediction_error' ? primaryRecomputedNote(results, plan, words) : []),
        ...policyNotes(results, plan, words),
        ...followUpNotes(all, ['refraction']),
      ],
    },
    all,
  );
}

/** Each row is a group of its own size, so that n is a column and not in the heads. */
function heads(plan: Plan, words: Words): Draft['head'] {
  const { rows, subgroup, withInterval } = words.tables;
  const estimates = [rows.mean, rows.sd, rows.meanAbsolute, rows.withinError(half)];
  const texts = [subgroup, rows.eyes, ...estimates.map((label) => withInterval(label, levelText(plan)))];
  return texts.map((text) => ({ text }));
}

/** The values of one field, under its name; no rows where the audit has no such groups. */
function fieldRows(results: Results, words: Words, error: HeadlineError, field: string): readonly DraftRow[] {
  const rows = results.rows
    .filter((row) => row.measure === error && row.statistic === 'n')
    .flatMap(({ group, eyes }) => {
      const [first, ...others] = groupPairs(group);
      if (first?.[0] !== field || others.length > 0 || eyes === 0) return [];
      return [groupRow(results, words, error, group, valueLabel(first[1], words), 1)];
    });
  return rows.length === 0 ? [] : [block(fieldLabel(field, words)), ...rows];
}

function groupRow(
  results: Results,
  words: Words,
  error: HeadlineError,
  group: string,
  label: string,
  indent: 0 | 1,
): DraftRow {
  const get = (statistic: string) => results.get(error, group, statistic);
  const cells = [
    eyesCell(get, words),
    estimateCell(get('mean'), words),
    estimateCell(get('sd'), words),
    estimateCell(get('mean_absolute'), words),
    withinCell(get, half, words),
  ];
  return { label, indent, cells };
}
