import type { ResultRow } from '../records/result.js';
import type { Estimate } from '../statistics/estimate.js';
import { detectableDifference } from '../statistics/size.js';
import { type Compared, isRatio } from './compared.js';
import type { Found } from './estimates.js';
import { boundsOnScale, distanceOnScale, distancePrinted } from './scale.js';
import { oriented, undirectedVerdict, type Verdict, verdictOf } from './verdict.js';

/** Power of the smallest detectable difference and of the eyes needed. */
const power = 0.8;

/** Where rows of a comparison belong. */
export interface About {
  measure: string;
  /** 'technique=laser-assisted vs manual'. */
  group: string;
  /** Eyes of both cohorts in the family's analysis. */
  eyes: number;
  unit: string;
}

/** What audit.yaml declares of one statistic. */
export interface Declared {
  /** Level of the interval. */
  level: number;
  /** Number of primaries, where this is one of them. */
  primaries: number | undefined;
  margin: number | undefined;
  /** Difference of interest, for planning. */
  difference: number | undefined;
}

/** A row that is not a number of eyes with a value: what it leaves out is missing. */
export function rowAbout(
  { measure, group, eyes }: About,
  of: { n: number; patients: number },
  parts: Pick<ResultRow, 'statistic' | 'value'> & Partial<ResultRow>,
): ResultRow {
  const { n, patients } = of;
  const bare = { ci_low: undefined, ci_high: undefined, unit: '', method: '', note: '' };
  return { measure, group, ...bare, n, eyes, patients, ...parts };
}

/** The row of an estimate with its interval. */
export function estimated(about: About, statistic: string, found: Estimate, unit: string): ResultRow {
  return rowAbout(about, found, {
    statistic,
    value: found.value,
    ci_low: found.low,
    ci_high: found.high,
    unit,
    method: found.method,
    note: found.notes.join(';'),
  });
}

function unitOf(one: Compared, unit: string): string {
  if (isRatio(one) || one.by === 'effect') return '';
  return one.by === 'risk' ? 'share' : unit;
}

function verdictFor(one: Compared, { low, high }: Found, declared: Declared): Verdict | undefined {
  if (low === undefined || high === undefined) return undefined;
  const margin = declared.margin === undefined ? undefined : distanceOnScale(one, declared.margin);
  const bounds = boundsOnScale(one, low, high);
  if (one.better) return verdictOf(oriented(bounds, one.better), margin);
  const excludesZero = bounds.low > 0 || bounds.high < 0;
  return undirectedVerdict(excludesZero, Math.max(Math.abs(bounds.low), Math.abs(bounds.high)), margin);
}

function notesOf(one: Compared, found: Found, declared: Declared): string {
  if (declared.primaries === undefined) return found.notes.join(';');
  const verdict = verdictFor(one, found, declared);
  return [...found.notes, `primary:k=${declared.primaries}`, ...(verdict ? [`verdict:${verdict}`] : [])].join(';');
}

/** Eyes of both cohorts together, in this design and proportion, that show a difference with 80 % power. */
function eyesNeeded(n: number, detectable: number, distance: number): number {
  return Math.ceil(n * (detectable / distance) ** 2);
}

function planningRows(about: About, one: Compared, found: Found, declared: Declared): readonly ResultRow[] {
  const { standardError, n } = found;
  if (standardError === undefined) return [];
  const { margin, difference, level } = declared;
  const detectable = detectableDifference(standardError, { confidence: level, power });
  const row = (statistic: string, value: number, unit: string): ResultRow =>
    rowAbout(about, found, { statistic: `${statistic}:${one.statistic}`, value, unit, method: 'power-80' });
  const needed = (statistic: string, distance: number | undefined): readonly ResultRow[] =>
    distance === undefined ? [] : [row(statistic, eyesNeeded(n, detectable, distanceOnScale(one, distance)), 'eyes')];
  return [
    row('detectable', distancePrinted(one, detectable), unitOf(one, about.unit)),
    ...needed('eyes_needed', difference),
    ...needed('eyes_needed_margin', margin),
  ];
}

function halfWidthRow(about: About, one: Compared, found: Found): readonly ResultRow[] {
  const { low, high, method } = found;
  if (low === undefined || high === undefined) return [];
  const bounds = boundsOnScale(one, low, high);
  const value = distancePrinted(one, (bounds.high - bounds.low) / 2);
  const parts = { statistic: `half_width:${one.statistic}`, value, unit: unitOf(one, about.unit), method };
  return [rowAbout(about, found, parts)];
}

/** A test's p and degrees of freedom, where it has them. */
export function testRows(
  about: About,
  statistic: string,
  found: Pick<Found, 'n' | 'patients' | 'p' | 'df' | 'test'>,
): readonly ResultRow[] {
  const row = (name: string, value: number | undefined): readonly ResultRow[] => {
    if (value === undefined) return [];
    return [rowAbout(about, found, { statistic: `${name}:${statistic}`, value, method: found.test ?? '' })];
  };
  return [...row('p', found.p), ...row('df', found.df)];
}

/** The rows of one statistic of two cohorts: the estimate first, then its test and what it is able to show. */
export function comparedRows(about: About, one: Compared, found: Found, declared: Declared): readonly ResultRow[] {
  const estimate = rowAbout(about, found, {
    statistic: one.statistic,
    value: found.value,
    ci_low: found.low,
    ci_high: found.high,
    unit: unitOf(one, about.unit),
    method: found.method,
    note: notesOf(one, found, declared),
  });
  return [
    estimate,
    ...testRows(about, one.statistic, found),
    ...(declared.primaries === undefined ? [] : halfWidthRow(about, one, found)),
    ...planningRows(about, one, found, declared),
  ];
}
