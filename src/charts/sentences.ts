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
  const { results, plan, words } = setting;
  const { charts } = words;
  const sample = ({ measure, label }: { measure: string; label?: string }, cohort: Cohort): string => {
    const missing = countText(setting, results.get(measure, cohort.group, 'missing'));
    const whose = label === undefined ? cohort.label : charts.within(cohort.label, label);
    return charts.legendSample(whose, sampleText(setting, measure, cohort), charts.missing(missing));
  };
  const samples = setting.cohorts.flatMap((cohort) => measures.map((measure) => sample(measure, cohort)));
  return [...samples, charts.legendVisit(outcomeVisit(plan, words)), ...generalRemarks(setting)].join(' ');
}

/** Remarks that concern every chart of a run. */
export function generalRemarks({ results, plan, words }: ChartSetting): readonly string[] {
  const { small_cells: least } = plan.outputs;
  const tooMany = hasTooManyCohorts(cohortColumns(results, plan, words));
  return [
    ...(tooMany ? [words.charts.tooManyCohorts] : []),
    ...(least > 0 ? [words.charts.suppressed(count(least))] : []),
  ];
}

/** A count of eyes, or that it is hidden: a count always exists. */
export function countText({ words }: ChartSetting, row: ResultRow): string {
  return row.value === undefined ? words.charts.hidden : valueText(row, words);
}
