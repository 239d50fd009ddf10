import { count } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, valueCell, withoutInterval } from './cells.js';
import { blank, testCells } from './comparison-cells.js';
import { finish } from './finish.js';
import { followUpNotes, outcomeVisit } from './follow-up.js';
import { formulasOf } from './formula-measures.js';
import { levelText } from './level.js';
import { policyNotes, recomputedNote, refusalNotes } from './recomputed-notes.js';
import { block } from './rows.js';
import type { Draft, DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';

type Told = Pick<Setting, 'results' | 'plan' | 'words'>;

const difference = 'formula_difference_';

/** Every further formula against the primary one, on the eyes that have both errors. */
export function formulas(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const compared = formulasCompared(results);
  if (compared.length === 0) return undefined;
  const setting = { results, plan, words, columns: [{ group: 'all', label: words.tables.allEyes }] };
  const primary = primaryFormula(plan, words);
  const { formulas: text } = words.tables.comparison;
  const beside = { holm: compared.length > 1, textbook: textbookRows(results).length > 0 };
  return finish(
    {
      id: 'formulas',
      title: words.tables.titles.formulas(outcomeVisit(plan, words), primary),
      head: heads(setting, beside),
      rows: compared.flatMap((one) => formulaBlock(setting, one, primary, beside)),
      footnotes: [
        text.sameEyes,
        ...(beside.holm ? [text.holm] : []),
        ...(beside.textbook ? [text.textbookForms] : []),
        words.tables.notes.refraction.thresholds,
        ...recomputedNote(results, plan, words),
        ...refusalNotes(results, words),
        ...policyNotes(results, plan, words),
        ...followUpNotes(setting, ['refraction']),
      ],
    },
    setting,
  );
}

/** Measures of the formulas that share an eye with the primary one. */
export function formulasCompared(results: Results): readonly { measure: string; formula: string }[] {
  const found = results.rows.filter(
    ({ group, statistic, n }) => group === 'all' && statistic.startsWith(difference) && n > 0,
  );
  const measures = new Set(found.map(({ measure }) => measure));
  return formulasOf(results).filter(({ measure }) => measures.has(measure));
}

/** The formula that others are compared with, as readers know it. */
export function primaryFormula({ predictions }: Plan, words: Words): string {
  const { primary_formula: name } = predictions;
  return name === undefined || name === 'planned' ? words.tables.comparison.formulas.planned : name;
}

/** Textbook forms exist only where every patient has one eye. */
function textbookRows({ rows }: Results) {
  return rows.filter(({ statistic }) => statistic.startsWith(`p_textbook:${difference}`));
}

/** Columns that stand only where they say something new. */
interface Beside {
  holm: boolean;
  textbook: boolean;
}

function heads({ plan, words }: Told, beside: Beside): Draft['head'] {
  const { comparison, statistic, withInterval } = words.tables;
  const { formulas: text, table } = comparison;
  return [
    statistic,
    withInterval(text.difference, levelText(plan)),
    table.test,
    table.p,
    ...(beside.holm ? [table.pAdjusted] : []),
    ...(beside.textbook ? [text.textbook] : []),
  ].map((head) => ({ text: head }));
}

function formulaBlock(
  setting: Told,
  { measure, formula }: { measure: string; formula: string },
  primary: string,
  beside: Beside,
): readonly DraftRow[] {
  const { results, words } = setting;
  const { formulas: text, table } = words.tables.comparison;
  const rows = results.rows.filter(
    (row) => row.measure === measure && row.group === 'all' && row.statistic.startsWith(difference),
  );
  const optional = (name: string): ShownCell => {
    const row = results.find(measure, 'all', name);
    return row ? valueCell(row, words) : blank;
  };
  const width = 3 + Number(beside.holm) + Number(beside.textbook);
  return [
    block(text.against(formula, primary)),
    ...rows.slice(0, 1).map((row): DraftRow => {
      const eyes = { text: table.eyesAndPatients(count(row.n), count(row.patients)), rows: [withoutInterval(row)] };
      return { label: text.eyes, indent: 1, cells: [eyes, ...Array<ShownCell>(width - 1).fill(blank)] };
    }),
    ...rows.map((row): DraftRow => {
      const { statistic } = row;
      return {
        label: text.criteria[statistic] ?? statistic,
        indent: 1,
        cells: [
          estimateCell(row, words),
          ...testCells({ ...setting, pair: { group: 'all' } }, measure, statistic),
          ...(beside.holm ? [optional(`p_adjusted:${statistic}`)] : []),
          ...(beside.textbook ? [optional(`p_textbook:${statistic}`)] : []),
        ],
      };
    }),
  ];
}
