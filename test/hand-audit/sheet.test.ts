import { describe, expect, it } from 'vitest';
import { type ExpectedNumber, expectedNumbers, sheet } from './expected.js';

/** Six decimals without the zeros that say nothing, as the sheet prints. */
function printed(value: number): string {
  const text = value.toFixed(6).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

const nameOf = ({ measure, group, statistic }: ExpectedNumber) => `${measure}|${group}|${statistic}`;

/** Tables whose every cell is worked, by the measures that fill them. */
const TABLES: Readonly<Record<string, { measures: readonly string[]; statistics: readonly string[] }>> = {
  'eye-flow': {
    measures: ['flow:refraction', 'flow:astigmatism', 'flow:corrected', 'flow:uncorrected'],
    statistics: ['analysed'],
  },
  'refractive-accuracy': {
    measures: ['prediction_error', 'target_error'],
    statistics: [
      ...['n', 'mean', 'sd', 'median', 'mean_absolute', 'median_absolute', 'root_mean_square', 'min', 'max'],
      ...['0.25', '0.50', '0.75', '1.00', '1.50', '2.00'].flatMap((limit) => [
        `count_within_${limit}`,
        `share_within_${limit}`,
      ]),
    ],
  },
  'double-angle-summary': {
    measures: ['corneal_cylinder_before', 'refractive_cylinder_after'],
    statistics: [
      'n',
      'centroid_x',
      'centroid_y',
      'centroid_magnitude',
      'centroid_axis',
      'sd_x',
      'sd_y',
      'covariance_xy',
      'mean_magnitude',
    ],
  },
  'visual-acuity': {
    measures: ['udva', 'cdva', 'udva_before', 'cdva_before'],
    statistics: [
      ...['n', 'mean', 'sd', 'median', 'min', 'max'],
      ...['20/20', '20/25', '20/32', '20/40', '20/63', '20/200'].map((line) => `share_at_or_better_${line}`),
    ],
  },
};

describe('the sheet of the hand audit', () => {
  const lines = new Set(sheet.split('\n').filter((line) => line.startsWith('- `')));
  const ending = ({ low, high, value }: ExpectedNumber): string => {
    const interval = low === undefined || high === undefined ? '' : ` (${printed(low)} to ${printed(high)})`;
    return `**${printed(value)}**${interval}`;
  };

  it.each(Object.entries(TABLES))(
    'works every cell of %s for all eyes and both cohorts',
    (_, { measures, statistics }) => {
      const worked = new Set(expectedNumbers.map(nameOf));
      for (const group of ['all', 'technique=manual', 'technique=laser-assisted']) {
        for (const measure of measures) {
          for (const statistic of statistics) expect(worked).toContain(`${measure}|${group}|${statistic}`);
        }
      }
    },
  );

  it('names each number once, and shows it with its working', () => {
    expect(new Set(expectedNumbers.map(nameOf)).size).toBe(expectedNumbers.length);
    for (const wanted of expectedNumbers.filter(({ working }) => working !== undefined)) {
      const line = `- \`${wanted.statistic}\` = ${wanted.working} = ${ending(wanted)}`;
      expect(lines, nameOf(wanted)).toContain(line);
    }
  });

  // Tables of Student's t and of F, 5 % points, as printed in any textbook; from memory.
  it('takes its quantiles from the tables', () => {
    const used = new Map(
      [...sheet.matchAll(/t\((\d)\) = ([0-9.]+)/g)].map(([, df, t]) => [Number(df), Number(t).toFixed(3)]),
    );
    expect(used).toEqual(
      new Map([
        [6, '2.447'],
        [4, '2.776'],
        [5, '2.571'],
      ]),
    );
    // Region of a centroid of 6 patients: 2 · 5/4 · F(2, 4) = 2.5 · 6.944; of 5 patients: 2 · 4/3 · F(2, 3) = 2.667 · 9.552.
    expect(sheet).toContain('√(17.36068 ·');
    expect(sheet).toContain('√(25.472252 ·');
    expect(2.5 * 6.944).toBeCloseTo(17.36068, 2);
    expect((8 / 3) * 9.552).toBeCloseTo(25.472252, 2);
  });
});
