import { count } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, medianRangeCell, valueCell } from './cells.js';
import { type CohortPair, cohortPairs, designOf, referenceOf } from './cohort-pairs.js';
import { blank, withoutDesign } from './comparison-cells.js';
import { concernsOf, mixField, mixRows, timeRows } from './concerns.js';
import { finish } from './finish.js';
import { followUpMeasure, outcomeFamilies } from './follow-up.js';
import { fieldLabel, groupPairs, valueLabel } from './groups.js';
import { levelText } from './level.js';
import { noteCodes } from './marks.js';
import { block } from './rows.js';
import type { Column, Draft, DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';
import { valueText } from './value-text.js';

/** What the rows of the table are made from. */
interface Mixed extends Pick<Setting, 'results' | 'plan' | 'words'> {
  pairs: readonly CohortPair[];
  /** The reference, then the others. */
  cohorts: readonly Column[];
}

/**
 * What goes together with the cohorts: surgeon, machine, lens, time of surgery, patients in both, time of follow-up.
 * Stands before the comparison, since any of these may be the reason for a difference.
 */
export function confounding(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  const pairs = cohortPairs(results, words);
  if (pairs.length === 0) return undefined;
  const cohorts = [referenceOf(pairs), ...pairs.map(({ compared }) => compared)];
  const mixed = { results, plan, words, pairs, cohorts };
  const { titles } = words.tables;
  return finish(
    {
      id: 'confounding',
      title: titles.confounding(pairs[0]?.field ?? ''),
      head: heads(mixed),
      rows: [...fieldRows(mixed), ...timeBlock(mixed), ...patientRows(mixed), ...followUpRows(mixed)],
      footnotes: [
        ...pairs.flatMap((pair) => concernsOf(results, pair, words).map(({ text }) => text)),
        words.tables.comparison.confounding.mixNote,
      ],
    },
    { results, plan, words, columns: [] },
  );
}

/** One column a cohort, then one a comparison. */
function heads({ results, words, pairs, cohorts }: Mixed): Draft['head'] {
  const { characteristic, common } = words.tables.comparison.confounding;
  return [
    { text: characteristic },
    ...cohorts.map(({ group, label }) => ({ text: label, n: results.get('flow:eligible', group, 'analysed').n })),
    ...pairs.map(({ compared, reference }) => ({ text: common(compared.label, reference.label) })),
  ];
}

/** A row with something in the columns of comparisons alone. */
function pairRow({ pairs, cohorts }: Mixed, label: string, cell: (pair: CohortPair) => ShownCell): DraftRow {
  return { label, indent: 1, cells: [...cohorts.map(() => blank), ...pairs.map(cell)] };
}

/** Eyes of every value of a field in every cohort, and how much of the mix is common. */
function fieldRows(mixed: Mixed): readonly DraftRow[] {
  const { results, words, pairs } = mixed;
  const [first] = pairs;
  const fields = first ? mixRows(results, first).map(mixField) : [];
  return fields.flatMap((field) => {
    const mix = (pair: CohortPair) => valueCell(results.get('confounding', pair.group, `overlap:${field}`), words);
    return [
      block(fieldLabel(field, words)),
      ...countRows(mixed, field),
      pairRow(mixed, words.tables.comparison.confounding.mix, mix),
    ];
  });
}

function countRows({ results, words, pairs, cohorts }: Mixed, field: string): readonly DraftRow[] {
  const counts = results.rows.filter(({ measure, statistic }) => measure === 'confounding' && statistic === 'count');
  const found = counts.flatMap((row) => {
    const value = groupPairs(row.group).find(([name]) => name === field)?.[1];
    const column = cohorts.findIndex(({ group }) => row.group.split(';').includes(group));
    return value === undefined || column < 0 ? [] : [{ value, column, row }];
  });
  const values = [...new Set(found.map(({ value }) => value))];
  return values.map((value) => {
    const cell = (column: number): ShownCell => {
      const one = found.find((each) => each.value === value && each.column === column);
      return one ? valueCell(one.row, words) : blank;
    };
    const cells = [...cohorts.map((_, column) => cell(column)), ...pairs.map(() => blank)];
    return { label: valueLabel(value, words), indent: 1 as const, cells };
  });
}

function timeBlock(mixed: Mixed): readonly DraftRow[] {
  const { results, words, pairs } = mixed;
  const { months, ofAll, time, years } = words.tables.comparison.confounding;
  const [first] = pairs;
  const label = first && timeRows(results, first).unit === 'years' ? years : months;
  const cell = (pair: CohortPair): ShownCell => {
    const { common, all } = timeRows(results, pair);
    if (common.value === undefined) return valueCell(common, words);
    return { text: ofAll(valueText(common, words), valueText(all, words)), rows: [common, all] };
  };
  return [block(time), pairRow(mixed, label, cell), ...learningRow(mixed)];
}

/** How many eyes of each cohort belong to a surgeon's first ones, where cohorts differ in what is learned. */
function learningRow({ results, words, pairs, cohorts }: Mixed): readonly DraftRow[] {
  const { early, ofAll } = words.tables.comparison.confounding;
  const cells = cohorts.flatMap(({ group }): readonly ShownCell[] => {
    const row = results.find('confounding', group, 'early_eyes');
    if (!row) return [];
    if (row.value === undefined) return [valueCell(row, words)];
    return [{ text: ofAll(valueText(row, words), count(row.n)), rows: [row] }];
  });
  if (cells.length === 0) return [];
  return [{ label: early, indent: 1, cells: [...cells, ...pairs.map(() => blank)] }];
}

/** The patients that make the design. */
function patientRows(mixed: Mixed): readonly DraftRow[] {
  const { results, words, pairs } = mixed;
  const { inBoth, onlyCompared, onlyIn, patients } = words.tables.comparison.confounding;
  const row = (label: string, statistic: string): DraftRow =>
    pairRow(mixed, label, ({ group }) => {
      const found = results.get('design', group, statistic);
      return valueCell({ ...found, note: '' }, words);
    });
  return [
    block(patients),
    row(inBoth, 'patients_both'),
    row(onlyIn(referenceOf(pairs).label), 'patients_only_a'),
    row(pairs.length === 1 ? onlyIn(pairs[0]?.compared.label ?? '') : onlyCompared, 'patients_only_b'),
  ];
}

/** When eyes were seen, for every family of outcomes. */
function followUpRows({ results, plan, words, pairs, cohorts }: Mixed): readonly DraftRow[] {
  const { flow, comparison } = words.tables;
  const shown = outcomeFamilies.filter((family) => results.find(followUpMeasure(family), 'all', 'n')?.value);
  if (shown.length === 0) return [];
  const rows = shown.map((family): DraftRow => {
    const measure = followUpMeasure(family);
    const seen = ({ group }: Column) => medianRangeCell((statistic) => results.get(measure, group, statistic), words);
    const later = (pair: CohortPair): ShownCell => {
      const mean = withoutDesign(results.get(measure, pair.group, 'difference_mean'), designOf(results, pair));
      const standardised = results.get(measure, pair.group, 'standardised_difference');
      const { text, rows: behind } = estimateCell(mean, words);
      return { text, rows: noteCodes(standardised).includes('imbalance') ? [...behind, standardised] : behind };
    };
    return { label: flow.families[family], indent: 1, cells: [...cohorts.map(seen), ...pairs.map(later)] };
  });
  return [block(comparison.confounding.followUp(levelText(plan))), ...rows];
}
