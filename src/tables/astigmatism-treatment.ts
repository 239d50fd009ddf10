import { limitText } from '../format/limit.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { estimateCell, eyesCell, shareCell, valueCell, vectorCell } from './cells.js';
import { cohortColumns } from './cohorts.js';
import { limitsOf } from './error-rows.js';
import { finish } from './finish.js';
import { followUpNotes, outcomeVisit } from './follow-up.js';
import { across, block, statisticStub, vertexText } from './rows.js';
import type { Asked, DraftRow, Setting, ShownCell, UnnumberedTable } from './shapes.js';
import { strataColumns } from './strata.js';

/** Vectors of the treatment, each with its vector mean and its mean magnitude. */
const vectors = ['target_induced', 'surgically_induced', 'difference_vector'] as const;

/** Vector analysis of the astigmatism treatment: columns for cohorts, small and larger targets, kinds of cornea. */
export function astigmatismTreatment(results: Results, plan: Plan, words: Words): UnnumberedTable | undefined {
  // Where no lens treats astigmatism there is no treatment to judge; the rows stand in results.csv all the same.
  if (!results.find('target_induced', 'toric=yes', 'n')?.value) return undefined;
  const eyesOf = (group: string): number => results.get('target_induced', group, 'n').n;
  // A stratum that holds every eye would repeat the column of all.
  const strata = (field: string) =>
    strataColumns(results, 'target_induced', field, words).filter(({ group }) => eyesOf(group) < eyesOf('all'));
  const cohorts = cohortColumns(results, plan, words);
  const columns = [...cohorts, ...['target_magnitude', 'toric', 'corneal_type'].flatMap(strata)];
  const setting = { results, plan, words, columns };
  const { astigmatism, titles } = words.tables;
  const target = astigmatism.targets[isPredicted(results) ? 'predicted' : 'zero'];
  return finish(
    {
      id: 'astigmatism-treatment',
      title: titles['astigmatism-treatment'](outcomeVisit(plan, words), target),
      head: [
        { text: statisticStub(setting) },
        ...columns.map(({ group, label }) => ({ text: label, n: eyesOf(group) })),
      ],
      rows: [...vectors.flatMap((measure) => vectorRows(setting, measure)), ...numberRows(setting)],
      footnotes: notes(setting),
    },
    { ...setting, columns: cohorts },
  );
}

/** Whether the target of every eye is the residual that was predicted for it. */
function isPredicted(results: Results): boolean {
  return results.get('treatment', 'all', 'target_is_predicted').value === 1;
}

function notes(setting: Setting): readonly string[] {
  const { results, plan, words } = setting;
  const { astigmatism, notes: general } = words.tables;
  const { anterior, bias, hybrid, meanIsNotCentroid, nearZero, signs, total, treatment, types } = astigmatism.notes;
  const hasTotal = (results.find('total_corneal_cylinder_before', 'all', 'n')?.value ?? 0) > 0;
  return [
    treatment,
    nearZero,
    bias,
    hybrid,
    signs,
    meanIsNotCentroid,
    hasTotal ? total : anterior,
    types,
    general.astigmatism.plane(vertexText(results, plan, words)),
    ...followUpNotes({ ...setting, columns: cohortColumns(results, plan, words) }, ['astigmatism']),
  ];
}

function vectorRows(setting: Setting, measure: (typeof vectors)[number]): readonly DraftRow[] {
  const { words } = setting;
  const { blocks, outcomes, rows } = words.tables.astigmatism;
  const label = measure === 'target_induced' ? blocks.targetInduced : (outcomes[measure]?.block ?? '');
  return [
    block(label),
    across(setting, measure, words.tables.rows.eyes, (get) => eyesCell(get, words)),
    across(setting, measure, rows.vectorMean, (get) => vectorCell(get, words)),
    across(setting, measure, rows.arithmeticMean, (get) => estimateCell(get('mean_magnitude'), words)),
  ];
}

/** One number of an eye: which statistics the table gives of it. */
function numberRows(setting: Setting): readonly DraftRow[] {
  const { words } = setting;
  const { outcomes, rows } = words.tables.astigmatism;
  const one = (measure: string, statistic: string, label: string) =>
    across(setting, measure, label, (get) => estimateCell(get(statistic), words));
  const of = (measure: string, ...more: readonly DraftRow[]): readonly DraftRow[] => [
    block(outcomes[measure]?.block ?? measure),
    across(setting, measure, words.tables.rows.eyes, (get) => eyesCell(get, words)),
    ...more,
  ];
  const mean = (measure: string) => one(measure, 'mean', rows.mean);
  const angle = 'angle_of_error';
  const zero = (get: Asked): ShownCell => valueCell(get('count_zero'), words);
  return [
    ...of('magnitude_of_error', mean('magnitude_of_error')),
    ...of(
      angle,
      mean(angle),
      one(angle, 'mean_absolute', rows.meanAbsolute),
      ...limitsOf(setting, angle).map((limit) =>
        across(setting, angle, rows.within(String(Number(limit))), (get) =>
          shareCell(get(`share_within_${limit}`), get(`count_within_${limit}`), words),
        ),
      ),
      across(setting, angle, rows.beyond('15'), (get) =>
        shareCell(get(`share_beyond_${limitText(15)}`), get(`count_beyond_${limitText(15)}`), words),
      ),
    ),
    ...of(
      'correction_index',
      one('correction_index', 'geometric_mean', rows.geometricMean),
      across(setting, 'correction_index', rows.zeroInduced, zero),
    ),
    ...of('flattening_index', mean('flattening_index'), one('flattening_index', 'median', rows.median)),
    ...of('flattening_effect', mean('flattening_effect')),
    ...of('torque', mean('torque')),
    ...of('index_of_success', mean('index_of_success'), one('index_of_success', 'median', rows.median)),
  ];
}
