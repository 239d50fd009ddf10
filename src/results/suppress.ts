import { round } from '../format/round.js';
import type { ResultRow } from '../records/result.js';

/** What may leave the clinic, and what is hidden. */
export interface Suppression {
  /** Counts of eyes or patients from 1 to below this are hidden; 0 hides none, and zero itself is shown. */
  smallCells: number;
  /** Groups whose every number is hidden: operators with too few eyes. As `field=value`. */
  hiddenPairs: ReadonlySet<string>;
}

const counted = new Set(['eyes', 'patients']);

/** Numerators, bins, steps, reasons: counts that a margin may give away. */
function isCount({ method, unit }: ResultRow): boolean {
  return method === 'count' && counted.has(unit);
}

/** Families of counts that add up to a count that is shown: histogram bins, lines, named categories, a flow. */
function marginOf({ measure, statistic }: ResultRow): string | undefined {
  if (measure.startsWith('flow:')) return statistic === 'operated' ? undefined : 'flow';
  if (/^count_from_/.test(statistic)) return 'bins';
  if (/^count_lines_-?\d$/.test(statistic)) return 'lines';
  return undefined;
}

function isSmall(value: number | undefined, { smallCells }: Suppression): boolean {
  return value !== undefined && value >= 1 && value < smallCells;
}

/** Places of a series: from one to the next few eyes come and go, so that what became of each follows from them. */
function isPlaceOfSeries({ measure, statistic }: ResultRow): boolean {
  return measure.startsWith('monitoring:') && /^(share_running_to|sum_at)_/.test(statistic);
}

/** A cumulative sum at one eye: from one to the next it says what became of that eye. */
function isSumAtEye({ measure, statistic }: ResultRow): boolean {
  return measure.startsWith('monitoring:') && statistic.startsWith('sum_at_');
}

/** The numerator of an operator's share, which has no row of its own; undefined for any other row. */
function operatorCount({ measure, statistic, value, n }: ResultRow): number | undefined {
  return measure.startsWith('funnel:') && statistic === 'share' && value !== undefined
    ? round(value * n, 0)
    : undefined;
}

/**
 * Hidden for its own sake: a small count, the small rest of a share, an estimate of few eyes or patients, or what eyes
 * can be told one by one from.
 */
function hidesItself(row: ResultRow, rule: Suppression): boolean {
  const { group, n, patients, statistic, value } = row;
  const pairs = group.split(';').flatMap((pair) => pair.split(' vs '));
  const [field = ''] = group.split('=');
  if (pairs.some((pair) => rule.hiddenPairs.has(pair) || rule.hiddenPairs.has(`${field}=${pair}`))) return true;
  if (isSumAtEye(row) || (rule.smallCells > 0 && isPlaceOfSeries(row))) return true;
  const hits = operatorCount(row);
  if (hits !== undefined && (isSmall(hits, rule) || isSmall(n - hits, rule))) return true;
  if (isCount(row) && isSmall(value, rule)) return true;
  if (isCount(row) && statistic.startsWith('count') && isSmall(n - (value ?? 0), rule)) return true;
  return isSmall(n, rule) || isSmall(patients, rule);
}

/** Of one margin with exactly one hidden count the next smallest is hidden too; zero is shown. */
function complement(rows: readonly ResultRow[], hidden: Set<ResultRow>): boolean {
  const own = rows.filter((row) => hidden.has(row));
  if (own.length !== 1) return false;
  const rest = rows.filter((row) => !hidden.has(row) && (row.value ?? 0) > 0);
  const [next] = [...rest].sort((a, b) => (a.value as number) - (b.value as number));
  if (!next) return false;
  hidden.add(next);
  return true;
}

function grouped(rows: readonly ResultRow[], keyOf: (row: ResultRow) => string | undefined) {
  const groups = new Map<string, ResultRow[]>();
  for (const row of rows) {
    const key = keyOf(row);
    if (key === undefined) continue;
    const found = groups.get(key);
    if (found) found.push(row);
    else groups.set(key, [row]);
  }
  return [...groups.values()];
}

/** Counts of one statistic over the values of one field, which add up to those of all eyes. */
function overField(row: ResultRow): string | undefined {
  const { group, measure, statistic } = row;
  if (group === 'all' || group.includes(';') || group.includes(' vs ')) return undefined;
  return [measure, statistic, group.slice(0, group.indexOf('='))].join('|');
}

function overMargin(row: ResultRow): string | undefined {
  const margin = marginOf(row);
  return margin === undefined ? undefined : [row.measure, row.group, margin].join('|');
}

/** A count that is hidden takes with it the share that it is the numerator of. */
function shareKey({ measure, group, statistic }: ResultRow): string {
  const of = statistic.replace(/^(independent|design_effect):/, '').replace(/^share_upper_one_sided$/, 'share');
  return [measure, group, of.replace(/^share/, 'count')].join('|');
}

const emptied = (row: ResultRow): ResultRow => ({
  ...row,
  value: undefined,
  ci_low: undefined,
  ci_high: undefined,
  n: 0,
  eyes: 0,
  patients: 0,
  method: '',
  note: 'suppressed',
});

/**
 * Results as they may leave the clinic: cumulative sums eye by eye, small counts, what would give them away, and operators
 * with few eyes are emptied and noted as suppressed. A row stays where it is, so that nothing that asks for it fails.
 *
 * Where the eyes without a value are hidden, `eyes` of the rows beside is 0.
 *
 * @returns the rows themselves where nothing is hidden
 * @source rule settled for this project, after the cell-size policies of public health registries
 */
export function suppressed(rows: readonly ResultRow[], rule: Suppression): readonly ResultRow[] {
  const hidden = new Set(rows.filter((row) => hidesItself(row, rule)));
  if (hidden.size === 0) return rows;
  const counts = rows.filter(isCount);
  const margins = rule.smallCells > 0 ? [...grouped(counts, overField), ...grouped(counts, overMargin)] : [];
  for (let again = true; again; ) again = margins.map((margin) => complement(margin, hidden)).includes(true);
  const numerators = new Set(
    [...hidden].filter(isCount).map(({ measure, group, statistic }) => [measure, group, statistic].join('|')),
  );
  // How many eyes lack the value must not follow from the eyes of the group.
  const unsaid = new Set(
    [...hidden].filter(({ statistic }) => statistic === 'missing').map(({ measure, group }) => `${measure}|${group}`),
  );
  return rows.map((row) => {
    if (hidden.has(row) || numerators.has(shareKey(row))) return emptied(row);
    return unsaid.has(`${row.measure}|${row.group}`) ? { ...row, eyes: 0 } : row;
  });
}
