import type { Plan } from '../records/plan.js';
import type { Points } from '../records/report.js';
import type { ResultRow } from '../records/result.js';
import { type Results, resultKey } from '../results/index.js';
import type { Words } from '../words/index.js';
import type { Cohort } from './cohorts.js';
import type { Artwork } from './theme.js';

/** What every chart is made from. */
export interface ChartSetting {
  results: Results;
  points: readonly Points[];
  plan: Plan;
  words: Words;
  artwork: Artwork;
  /** Whether the chart is a part of a figure, and has to keep to the room offered. */
  isPanel?: boolean;
  /** The groups that charts tell apart; all eyes alone where there is one cohort, or too many. */
  cohorts: readonly Cohort[];
  /** Names an eye, on the internal page; absent: marks bear no identity. */
  mark?: (eye: number) => string;
}

/** A chart before it has a number. */
export interface Drawing {
  spec: object;
  title: string;
  legend: string;
  alt: string;
  /** Where the chart takes other room than it was offered. */
  artwork?: Artwork;
}

/** A published chart: undefined where the data do not allow it. */
export type Chart = (setting: ChartSetting) => Drawing | undefined;

/**
 * Results that remember which rows were looked at, so that a figure can name every number it shows.
 *
 * @returns the same rows, and their keys in the order in which they were first found
 * @example const { results, cited } = citing(indexResults(rows)); results.get('age', 'all', 'n'); cited() // ['age|all|n']
 */
export function citing(source: Results): { results: Results; cited: () => readonly string[] } {
  const keys = new Set<string>();
  const noted = (row: ResultRow): ResultRow => {
    keys.add(resultKey(row));
    return row;
  };
  const find: Results['find'] = (measure, group, statistic) => {
    const row = source.find(measure, group, statistic);
    return row && noted(row);
  };
  const get: Results['get'] = (measure, group, statistic) => noted(source.get(measure, group, statistic));
  return { results: { rows: source.rows, find, get }, cited: () => [...keys] };
}
