import { signed } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { ResultRow } from '../records/result.js';
import { type Results, resultKey } from '../results/index.js';
import { levelText } from '../tables/level.js';
import { type Headline, headlineBasis, headlines } from '../text/headline.js';
import type { Words } from '../words/index.js';
import type { BigNumber, Strip } from './content.js';

/** The six numbers as the page sets them: a large value, what it counts, and where its interval lies. */
export function bigNumbers(results: Results, plan: Plan, words: Words): readonly BigNumber[] {
  const told = headlines(results, words);
  return told.flatMap((headline, at) => {
    if (headline.part && at > 0) return [];
    const end = told.findIndex((other, after) => after > at && !other.part);
    const parts = told.slice(at + 1, end < 0 ? undefined : end);
    return [bigNumber(headline, parts, results, levelText(plan), words)];
  });
}

/** 'Within ±0.50 D: 287 of 371 eyes, 77.4 % (95 % CI 72.3 to 81.7)': a headline as one line of text. */
export function statedNumber(headline: Headline, level: string, words: Words): string {
  const { label, value, interval, fraction } = headline;
  const { stated, statedShare, interval: limits } = words.page;
  const text = fraction === '' ? stated(label, value) : statedShare(label, fraction, value);
  return interval === '' ? text : `${text} (${limits(level, interval)})`;
}

function bigNumber(
  headline: Headline,
  parts: readonly Headline[],
  results: Results,
  level: string,
  words: Words,
): BigNumber {
  const { id, label, fraction, interval, notes, n, value } = headline;
  const operated = id === 'operated';
  const eyes = fraction === '' ? words.page.eyes(n) : words.page.ofEyes(fraction);
  const basis = id === 'within-half' || id === 'mean-error' ? headlineBasis(results, words) : '';
  const counted = operated ? value : basis === '' ? eyes : words.page.judged(eyes, basis);
  // The number of eyes is exact; what has an interval is whether their outcome is known.
  const source = operated ? parts[0] : headline;
  return {
    label,
    value: operated ? n : value,
    details: [
      counted,
      ...(interval === '' ? [] : [words.page.interval(level, interval)]),
      ...parts.map((part) => statedNumber(part, level, words)),
      ...notes,
    ],
    strip: source && stripOf(source, results, words),
  };
}

function stripOf({ from }: Headline, results: Results, words: Words): Strip | undefined {
  const row = results.rows.find((each) => resultKey(each) === from[0]);
  if (row?.value === undefined) return undefined;
  const estimate = { low: row.ci_low, high: row.ci_high, value: row.value };
  if (row.unit === 'share') return { ...estimate, from: 0, to: 1, marks: shareMarks(words) };
  return { ...estimate, ...errorScale(row, words) };
}

function shareMarks(words: Words): Strip['marks'] {
  const { zero, half, all } = words.page.shareScale;
  return [
    { at: 0, label: zero },
    { at: 0.5, label: half },
    { at: 1, label: all },
  ];
}

/** A scale centred on no error, in steps of half a dioptre, that holds the interval. */
function errorScale({ value, ci_low, ci_high }: ResultRow, words: Words): Pick<Strip, 'from' | 'to' | 'marks'> {
  const furthest = Math.max(...[value ?? 0, ci_low ?? 0, ci_high ?? 0].map(Math.abs));
  const end = Math.max(0.5, Math.ceil(furthest * 2) / 2);
  const marks = [
    { at: -end, label: signed(-end, 2) },
    { at: 0, label: words.page.shareScale.zero },
    { at: end, label: words.tables.text.dioptres(signed(end, 2)) },
  ];
  return { from: -end, to: end, marks };
}
