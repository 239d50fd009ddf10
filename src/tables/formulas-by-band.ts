import { count } from '../format/number.js';
import { trendFields } from '../predictions/trends.js';
import type { Plan } from '../records/plan.js';
import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, withoutInterval } from './cells.js';
import { finish } from './finish.js';
import { followUpNotes, outcomeVisit } from './follow-up.js';
import { formulasCompared, primaryFormula } from './formulas.js';
import { fieldLabel, groupPairs, valueLabel } from './groups.js';
import { levelText } from './level.js';
import { policyNotes, recomputedNote } from './recomputed-notes.js';
import { block } from './rows.js';
import type { DraftRow, Setting, UnnumberedTable } from './shapes.js';

type Told = Pick<Setting, 'results' | 'plan' | 'words'>;

/** Statistics of a band, a column each: both formulas on the same eyes, then what sets them apart. */
const statistics = [
  'same_eyes_mean',
  'same_eyes_mean_primary',
  'formula_difference_spread',
  'formula_difference_absolute',
  'formula_difference_share_within_0.50',
] as const;

/**
 * Every further formula against the primary one in bands of axial length and of keratometry, on the eyes that have both
 * errors: raw means, for a mean taken off in a band would hide what is looked for.
 */
export function formulasByBand(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const setting = { results, plan, words, columns: [{ group: 'all', label: words.tables.allEyes }] };
  const rows = formulasCompared(results).flatMap((one) => formulaRows(setting, one));
  if (rows.length === 0) return undefined;
  const { formulas: text } = words.tables.comparison;
  const { titles, withInterval } = words.tables;
  const estimates = [
    text.meanOf,
    text.meanOfPrimary(primaryFormula(plan, words)),
    ...statistics.slice(2).map((name) => text.inBands[name] ?? name),
  ].map((label) => withInterval(label, levelText(plan)));
  return finish(
    {
      id: 'formulas-by-band',
      title: titles['formulas-by-band'](outcomeVisit(plan, words), primaryFormula(plan, words)),
      head: [text.band, words.tables.recomputed.constants.eyes, ...estimates].map((head) => ({ text: head })),
      rows,
      footnotes: [
        text.sameEyes,
        text.noTests,
        words.tables.notes.refraction.thresholds,
        ...recomputedNote(results, plan, words),
        ...policyNotes(results, plan, words),
        ...followUpNotes(setting, ['refraction']),
      ],
    },
    setting,
  );
}

/** The bands of one formula, under its name and that of the field. */
function formulaRows(
  { results, words }: Told,
  { measure, formula }: { measure: string; formula: string },
): readonly DraftRow[] {
  const first = results.rows.filter((row) => row.measure === measure && row.statistic === statistics[0] && row.n > 0);
  return trendFields.flatMap(({ field }) => {
    const bands = first.filter(({ group }) => groupPairs(group)[0]?.[0] === field);
    const label = words.tables.comparison.formulas.byField(formula, fieldLabel(field, words));
    return bands.length === 0 ? [] : [block(label), ...bands.map((row) => bandRow(results, words, row))];
  });
}

function bandRow(results: Results, words: Words, first: ResultRow): DraftRow {
  const { measure, group, n } = first;
  const [[, band] = ['', '']] = groupPairs(group);
  return {
    label: valueLabel(band, words),
    indent: 1,
    cells: [
      { text: count(n), rows: [{ ...withoutInterval(first), note: '' }] },
      ...statistics.map((statistic) => estimateCell(results.get(measure, group, statistic), words)),
    ],
  };
}
