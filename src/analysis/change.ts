import { linesGained } from '../acuity/lines.js';
import { lineSteps } from '../measures/profiles.js';
import type { ResultRow } from '../records/result.js';
import { presence } from './location.js';
import { countRow, type Sample } from './sample.js';
import { hitsOf, shareRows } from './shares.js';

/** Share of eyes that lost at least so many lines. */
const losses = [1, 2, 3] as const;

/**
 * A change of acuity by lines: the eyes of each step, and those that lost one, two or three lines or more.
 *
 * @param sample  changes in logMAR, + is a gain
 */
export function lineRows(sample: Sample): readonly ResultRow[] {
  const lines = sample.values.map(linesGained);
  const rows = (name: string, meets: (line: number) => boolean): readonly ResultRow[] =>
    shareRows(sample, {
      share: `share_lines_${name}`,
      count: `count_lines_${name}`,
      hits: hitsOf(lines, meets),
      patients: sample.patients,
      method: 'wilson',
    });
  const end = lineSteps.length - 1;
  const inStep = (step: number, i: number) => (line: number) =>
    i === 0 ? line <= step : i === end ? line >= step : line === step;
  return [
    ...lineSteps.flatMap((step, i) => rows(String(step), inStep(step, i))),
    ...losses.flatMap((lost) => rows(`lost_${lost}_or_more`, (line) => line <= -lost)),
  ];
}

/** Eyes of each named value. */
export function categoryRows(sample: Sample): readonly ResultRow[] {
  const count = (value: number): number => sample.values.filter((one) => one === value).length;
  const names = sample.measure.categories ?? [];
  return [...presence(sample), ...names.map((name, value) => countRow(sample, `count_${name}`, count(value)))];
}
