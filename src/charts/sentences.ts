import { count } from '../format/number.js';
import type { ResultRow } from '../records/result.js';
import { cohortColumns } from '../tables/cohorts.js';
import { followUpMeasure, type OutcomeFamily, outcomeVisit } from '../tables/follow-up.js';
import { valueText } from '../tables/value-text.js';
import { type Cohort, hasTooManyCohorts } from './cohorts.js';
import type { ChartSetting } from './setting.js';
import { wrapped } from './text-width.js';

/** 'n = 371 eyes (268 patients)': the eyes of one measure in one cohort. */
export function sampleText({ results, words }: ChartSetting, measure: string, { group }: Cohort): string {
  const { n, patients } = results.get(measure, group, 'n');
  return words.charts.sample(count(n), count(patients));
}

/** 'n = 371'. */
export function shortSampleText({ results, words }: ChartSetting, measure: string, { group }: Cohort): string {
  return words.charts.shortSample(count(results.get(measure, group, 'n').n));
}

/** The outcome visit and when it really was, in lines that fit under the picture. */
export function visitLines(setting: ChartSetting, family: OutcomeFamily): readonly string[] {
  const { results, plan, words, artwork } = setting;
  const measure = followUpMeasure(family);
  const day = (statistic: string): ResultRow => results.get(measure, 'all', statistic);
  const text = (statistic: string): string => valueText(day(statistic), words);
  const known = day('median').value !== undefined;
  const days = known ? words.charts.days(text('median'), text('min'), text('max')) : words.charts.daysUnknown;
  return wrapped(words.charts.visit(outcomeVisit(plan, words), days), artwork.width, { size: artwork.type });
}

/** What every legend ends with: eyes, patients and missing of each cohort, the visit, and what is not shown. */
export function legendEnd(setting: ChartSetting, measures: readonly { measure: string; label?: string }[]): string {
  const { within } = setting.words.charts;
  const samples = setting.cohorts.flatMap((cohort) =>
    measures.map(({ measure, label }) => {
      const whose = label === undefined ? cohort.label : within(cohort.label, label);
      return legendSample(setting, measure, cohort, whose);
    }),
  );
  return [...samples, ...generalLegend(setting)].join(' ');
}

/** Eyes, patients and missing of one measure in one group. */
export function legendSample(setting: ChartSetting, measure: string, cohort: Cohort, whose: string): string {
  const { legendSample: sample, missing } = setting.words.charts;
  const without = countText(setting, setting.results.get(measure, cohort.group, 'missing'));
  return sample(whose, sampleText(setting, measure, cohort), missing(without));
}

/** The visit, and what is not shown. */
export function generalLegend(setting: ChartSetting): readonly string[] {
  const { plan, words } = setting;
  return [words.charts.legendVisit(outcomeVisit(plan, words)), ...generalRemarks(setting)];
}

/** Remarks that concern every chart of a run. */
export function generalRemarks({ results, plan, words, mark }: ChartSetting): readonly string[] {
  const { small_cells: least } = plan.outputs;
  const tooMany = hasTooManyCohorts(cohortColumns(results, plan, words));
  return [
    ...(tooMany ? [words.charts.tooManyCohorts] : []),
    ...(least > 0 && mark === undefined ? [words.charts.suppressed(count(least))] : []),
  ];
}

/** A count of eyes, or that it is hidden: a count always exists. */
export function countText({ words }: ChartSetting, row: ResultRow): string {
  return row.value === undefined ? words.charts.hidden : valueText(row, words);
}
