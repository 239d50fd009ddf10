import { type Compared, isRatio } from '../comparison/compared.js';
import { nameOf } from '../comparison/primaries.js';
import { fixed } from '../format/number.js';
import { round } from '../format/round.js';
import { complicationPrefix } from '../measures/safety.js';
import type { Measure } from '../records/measure.js';
import type { ResultRow } from '../records/result.js';
import type { Words } from '../words/index.js';
import type { ComparedOutcome } from './compared-outcomes.js';
import { formulaOf } from './formula-measures.js';
import { metresOf } from './lines.js';
import { valueText } from './value-text.js';

type What = Pick<ComparedOutcome, 'measure' | 'one'>;

/**
 * A measure as a block of rows, and in a few words.
 *
 * @throws {RangeError} when it has no words
 */
export function outcomeWords(measure: Measure, words: Words): { block: string; name: string } {
  const name = nameOf(measure);
  const { complicationOutcome, formulaOutcome, outcomes } = words.tables;
  if (name.startsWith(complicationPrefix)) return complicationOutcome(name.slice(complicationPrefix.length));
  const formula = formulaOf(name);
  if (formula !== undefined) return formulaOutcome(formula);
  const found = outcomes[name];
  if (!found) throw new RangeError(`outcomeWords: outcome "${name}" has no words in src/words/en/tables.ts`);
  return found;
}

/** The share that a difference or ratio is of: 'share_within_0.50'. */
export function shareOf({ statistic }: Compared): string {
  return statistic.replace(/^(difference|ratio)_/, '');
}

/** What a share counts: errors within a limit, or lines reached; neither where it is the measure itself. */
function sharePart(one: Compared): { kind: string | undefined; limit: string } {
  const [, kind, limit = ''] = /^share_(within|at_or_better)_(.*)$/.exec(shareOf(one)) ?? [];
  return { kind, limit };
}

const isSigned = ({ better }: Measure): boolean => better === 'nearer zero';

/** A share as a row label of its own. */
function shareLabel({ measure, one }: What, words: Words): string {
  const { rows, comparison } = words.tables;
  const { kind, limit } = sharePart(one);
  if (kind === 'within') return (isSigned(measure) ? rows.withinError : rows.withinMagnitude)(limit, measure.unit);
  return kind === 'at_or_better' ? rows.atOrBetter(limit, metresOf(limit)) : comparison.statistics.share;
}

/** The statistic of an outcome as a row label below its measure. */
export function statisticLabel({ measure, one }: What, words: Words): string {
  const { rows, comparison } = words.tables;
  const { statistics } = comparison;
  const isAbsolute = one.statistic.endsWith('_absolute');
  switch (one.by) {
    case 'mean':
      return rows.mean;
    case 'spread':
      return statistics.spread;
    case 'effect':
      return isAbsolute ? statistics.effectAbsolute : statistics.effect;
    case 'shift':
      return isAbsolute ? statistics.shiftAbsolute : statistics.shift;
    case 'risk':
      return shareLabel({ measure, one }, words);
    case 'risk-ratio':
      return measure.kind === 'share' ? statistics.shareRatio : statistics.ratio(shareLabel({ measure, one }, words));
    case 'centroid':
      return rows.centroid;
  }
}

/** What an outcome is called in a few words: 'Prediction error', 'Absolute prediction error'. */
export function outcomeName({ measure, one }: What, words: Words): string {
  const { name } = outcomeWords(measure, words);
  return one.statistic.endsWith('_absolute') ? words.tables.comparison.brief.absolute(name) : name;
}

function sharePartText({ measure, one }: What, words: Words): string {
  const { atOrBetter, share, withinError, withinMagnitude } = words.tables.comparison.brief;
  const { kind, limit } = sharePart(one);
  if (kind === 'within') return (isSigned(measure) ? withinError : withinMagnitude)(limit, measure.unit);
  return kind === 'at_or_better' ? atOrBetter(limit, metresOf(limit)) : share;
}

/** What stands behind its name: ' within ±0.50 D', ', mean'. */
export function outcomePart(what: What, words: Words): string {
  const { brief } = words.tables.comparison;
  const { by } = what.one;
  if (by === 'risk') return sharePartText(what, words);
  return by === 'risk-ratio' ? sharePartText(what, words) + brief.ratio : brief[by];
}

/** Measure and statistic in a few words, for charts and sentences: 'Prediction error within ±0.50 D'. */
export function outcomeText(what: What, words: Words): string {
  return outcomeName(what, words) + outcomePart(what, words);
}

/** An outcome as a row label that stands by itself: with its unit, or what its share counts. */
export function outcomeLabel(what: What, words: Words): string {
  const { counted, unit } = words.tables.comparison.table;
  const text = outcomeText(what, words);
  const { by } = what.one;
  if (by === 'risk' || by === 'risk-ratio') return counted(text);
  return by === 'effect' || by === 'spread' ? text : unit(text, what.measure.unit);
}

/** A covariate within a sentence; one of the user's own keeps its name. */
export function covariateName(name: string, { tables }: Words): string {
  const own: Readonly<Record<string, string>> = tables.missingNames;
  return tables.comparison.confounding.fields[name] ?? own[name] ?? name;
}

/** A margin or a difference of interest, as declared: '5 percentage points', '0.1 D', 'a factor of 1.2'. */
export function declaredText({ measure, one }: What, value: number, words: Words): string {
  const { point, points, ratio, unit } = words.tables.comparison.declared;
  const plain = (number: number): string => fixed(round(number, 4), decimalsOf(round(number, 4)));
  if (isRatio(one)) return ratio(plain(value));
  if (one.by === 'risk') return (round(100 * value, 4) === 1 ? point : points)(plain(100 * value));
  return unit(plain(value), one.by === 'effect' ? '' : measure.unit);
}

/** Decimals that a declared number has, four at most. */
function decimalsOf(value: number): number {
  return [0, 1, 2, 3].find((decimals) => round(value, decimals) === value) ?? 4;
}

/** A difference or a distance with its unit: '31.8 percentage points', '−0.02 logMAR'; ratios have none. */
export function withUnit(row: ResultRow, words: Words): string {
  const { points, unit } = words.tables.comparison.declared;
  const value = valueText(row, words);
  if (row.value === undefined) return value;
  return row.unit === 'share' ? points(value) : unit(value, row.unit);
}
