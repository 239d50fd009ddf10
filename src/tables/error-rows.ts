import type { Words } from '../words/index.js';
import { estimateCell, eyesCell, rangeCell, shareCell } from './cells.js';
import { across, block } from './rows.js';
import type { Asked, DraftRow, Setting, ShownCell } from './shapes.js';

const within = 'share_within_';

/** The limits of a measure's shares, as its rows write them ('0.50'), in their order. */
export function limitsOf({ results }: Pick<Setting, 'results'>, measure: string): readonly string[] {
  return results.rows
    .filter((row) => row.measure === measure && row.group === 'all' && row.statistic.startsWith(within))
    .map((row) => row.statistic.slice(within.length));
}

/**
 * All that is told of one signed error, one row a statistic.
 *
 * @throws {RangeError} when one of the statistics has no row
 */
export function errorRows(setting: Setting, measure: string, label: string): readonly DraftRow[] {
  const { words } = setting;
  const { rows } = words.tables;
  const estimate = (statistic: string, text: string) =>
    across(setting, measure, text, (get) => estimateCell(get(statistic), words));
  return [
    block(label),
    across(setting, measure, rows.eyes, (get) => eyesCell(get, words)),
    estimate('mean', rows.mean),
    estimate('sd', rows.sd),
    estimate('median', rows.median),
    estimate('mean_absolute', rows.meanAbsolute),
    estimate('median_absolute', rows.medianAbsolute),
    estimate('root_mean_square', rows.rootMeanSquare),
    across(setting, measure, rows.range, (get) => rangeCell(get, words)),
    ...limitsOf(setting, measure).map((limit) =>
      across(setting, measure, rows.withinError(limit), (get) => withinCell(get, limit, words)),
    ),
  ];
}

/** Eyes within one limit, as its rows write it. */
export function withinCell(get: Asked, limit: string, words: Words): ShownCell {
  return shareCell(get(`${within}${limit}`), get(`count_within_${limit}`), words);
}
