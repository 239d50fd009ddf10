import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';

/** The measure of results rows that follow a share over time, or over operators: 'funnel:prediction_error/share…'. */
export function seriesOf({ rows }: Results, prefix: 'funnel:' | 'monitoring:'): string | undefined {
  return rows.find(({ measure }) => measure.startsWith(prefix))?.measure;
}

/** What a followed share is called: 'Prediction error within ±0.50 D'. */
export function monitoredName(measure: string, { tables }: Words): string {
  const [name = '', statistic = ''] = measure.slice(measure.indexOf(':') + 1).split('/');
  const outcome = tables.outcomes[name]?.name ?? name;
  const [, kind, limit = ''] = /^share_(within|at_or_better)_(.*)$/.exec(statistic) ?? [];
  if (kind === undefined) return outcome;
  const part = kind === 'within' ? tables.standing.rows.within(limit) : tables.standing.lineOrBetter(limit);
  return `${outcome} ${part}`;
}
