import { count } from '../format/number.js';
import { type FormulaName, formulaNames } from '../optics/formulas/formula.js';
import { formulaNamed } from '../optics/formulas/index.js';
import type { Plan } from '../records/plan.js';
import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, shareCell, valueCell, withoutInterval } from './cells.js';
import { blank } from './comparison-cells.js';
import { finish } from './finish.js';
import { followUpNotes, outcomeVisit } from './follow-up.js';
import { groupPairs } from './groups.js';
import { levelText } from './level.js';
import { cuspNote, lookBack, policyNotes } from './recomputed-notes.js';
import { block } from './rows.js';
import type { Draft, DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';

type Told = Pick<Setting, 'results' | 'plan' | 'words'>;

const measureOf = (formula: FormulaName): string => `lens_constant:${formula}`;

/** Every lens that a formula was asked about, by the row of its constant. */
function lensesOf({ rows }: Results, formula: FormulaName): readonly ResultRow[] {
  return rows.filter(({ measure, statistic, eyes }) => {
    return measure === measureOf(formula) && statistic === 'constant' && eyes > 0;
  });
}

/**
 * Per formula and lens: the constant used, the one that makes the mean error zero, and what becomes of the errors. What
 * becomes of them is shown with constants found without the eye's own patient: no fit may praise itself.
 */
export function lensConstants(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const setting = { results, plan, words, columns: [{ group: 'all', label: words.tables.allEyes }] };
  const formulas = formulaNames.filter((formula) => lensesOf(results, formula).length > 0);
  if (formulas.length === 0) return undefined;
  const text = words.tables.recomputed.constants;
  return finish(
    {
      id: 'lens-constants',
      title: text.title(outcomeVisit(plan, words)),
      head: heads(plan, words),
      rows: formulas.flatMap((formula) => [
        block(text.formula(formula, formulaNamed(formula).constant)),
        ...lensesOf(results, formula).map(({ group }) => lensRow(setting, formula, group)),
      ]),
      footnotes: [
        text.others,
        ...leftOutNotes(results, formulas, words),
        ...cuspNote(results, words),
        words.tables.notes.refraction.thresholds,
        lookBack(formulas, words),
        ...policyNotes(results, plan, words),
        ...followUpNotes(setting, ['refraction']),
      ],
    },
    setting,
  );
}

function heads(plan: Plan, words: Words): Draft['head'] {
  const { constants: text } = words.tables.recomputed;
  const estimates = [text.zeroing, text.meanUsed, text.change, text.withinUsed, text.withinOthers];
  const heads = estimates.map((label) => words.tables.withInterval(label, levelText(plan)));
  return [text.lens, text.eyes, text.used, ...heads].map((head) => ({ text: head }));
}

/** Eyes that a constant cannot be asked of, of all lenses together. */
function leftOutNotes({ rows }: Results, formulas: readonly FormulaName[], words: Words): readonly string[] {
  const { constants: text, refusedFor } = words.tables.recomputed;
  const told = (statistic: string): readonly string[] =>
    formulas.flatMap((formula) => {
      const own = rows.filter((row) => row.measure === measureOf(formula) && row.statistic === statistic);
      const eyes = own.reduce((total, { value = 0 }) => total + value, 0);
      return eyes === 0 ? [] : [refusedFor(formula, count(eyes))];
    });
  const [weak, refused] = [told('count_weak_power'), told('count_refused')];
  return [
    ...(weak.length > 0 ? [text.weak(weak.join(', '))] : []),
    ...(refused.length > 0 ? [text.refused(refused.join(', '))] : []),
  ];
}

function lensRow({ results, words }: Told, formula: FormulaName, group: string): DraftRow {
  const row = (statistic: string) => results.find(measureOf(formula), group, statistic);
  const optional = (statistic: string, cell: typeof valueCell): ShownCell => {
    const found = row(statistic);
    return found ? cell(found, words) : blank;
  };
  const within = (choice: 'used' | 'refitted'): ShownCell => {
    const [share, numerator] = [row(`share_within_0.50_${choice}`), row(`count_within_0.50_${choice}`)];
    return share && numerator ? shareCell(share, numerator, words) : blank;
  };
  const zeroing = results.get(measureOf(formula), group, 'constant');
  const [[, lens] = ['', words.tables.allEyes]] = groupPairs(group);
  return {
    label: lens,
    indent: 1,
    cells: [
      { text: count(zeroing.n), rows: [{ ...withoutInterval(zeroing), note: '' }] },
      optional('constant_used', valueCell),
      estimateCell(zeroing, words),
      optional('mean_used', estimateCell),
      optional('change_mean_absolute', estimateCell),
      within('used'),
      within('refitted'),
    ],
  };
}
