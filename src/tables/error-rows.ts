import { fixed } from '../format/number.js';
import { estimateCell, eyesCell, rangeCell, shareCell } from './cells.js';
import { levelText } from './level.js';
import { across, block } from './rows.js';
import type { DraftRow, Setting } from './shapes.js';

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
  const { plan, words } = setting;
  const { rows } = words.tables;
  const level = levelText(plan);
  const estimate = (statistic: string, text: string) =>
    across(setting, measure, text, (get) => estimateCell(get(statistic), words));
  return [
    block(label),
    across(setting, measure, rows.eyes, (get) => eyesCell(get, words)),
    estimate('mean', rows.meanInterval(level)),
    estimate('sd', rows.sdInterval(level)),
    estimate('median', rows.medianInterval(level)),
    estimate('mean_absolute', rows.meanAbsolute(level)),
    estimate('median_absolute', rows.medianAbsolute(level)),
    estimate('root_mean_square', rows.rootMeanSquare(level)),
    across(setting, measure, rows.range, (get) => rangeCell(get, words)),
    ...shareRows(setting, measure, rows.withinError),
  ];
}

/** One row a limit: eyes within it. */
function shareRows(
  setting: Setting,
  measure: string,
  label: (limit: string, level: string) => string,
): readonly DraftRow[] {
  const { plan, words } = setting;
  return limitsOf(setting, measure).map((limit) =>
    across(setting, measure, label(fixed(Number(limit), 2), levelText(plan)), (get) =>
      shareCell(get(`${within}${limit}`), get(`count_within_${limit}`), words),
    ),
  );
}
