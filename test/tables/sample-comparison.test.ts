import { describe, expect, it } from 'vitest';
import { draw } from '../../pipeline/6-draw.js';
import { tabulate } from '../../pipeline/6-tabulate.js';
import type { Expected } from '../../sample-exports/generator/expected.js';
import { methods } from '../../src/text/methods.js';
import { verdictSentences } from '../../src/text/verdicts.js';
import { en } from '../../src/words/index.js';
import { committed } from '../sample-exports/committed.js';
import { auditOf } from '../whole/audit.js';
import { auditText, committedFiles } from '../whole/sample.js';
import { cellsOf } from './rows.js';

// The sample with its two techniques, the spread a second primary outcome and a margin for each of two.
const statistics = `
statistics:
  primary: [prediction_error/share_within_0.50, prediction_error/sd, cdva/mean]
  margins: { cdva/mean: 0.1 }
  adjust_for: [axial_length, surgeon]
`;
const sample = await auditOf(auditText() + statistics, committedFiles());
const { plan, results } = sample;
const tables = tabulate(results, plan, en);
const table = tables.find(({ id }) => id === 'comparison');
const planted: readonly Expected[] = JSON.parse(committed('planted.json').toString('utf8')).effects;

/** Expected value and standard error of a planted statistic of one technique. */
function effect(statistic: string, technique: string): Expected {
  const found = planted.find((one) => {
    return one.measure === 'prediction_error' && one.statistic === statistic && one.group === `technique=${technique}`;
  });
  if (!found) throw new RangeError(`no planted ${statistic} of ${technique}`);
  return found;
}

/** The first number of a cell, as a reader takes it from the page. */
const read = (cell = ''): number => Number(cell.replaceAll('\u2212', '-').split(' ')[0]);

// Planted values and their standard errors: 150 samples of the same making with other seeds (sample-exports/README.md).
describe('comparison of the sample', () => {
  const [laser, manual] = ['laser-assisted', 'manual'];

  it.each([
    { statistic: 'share_within_0.50', label: 'Prediction error within ±0.50 D', scale: 100 },
    { statistic: 'mean', label: 'Mean', scale: 1, nth: 1 },
  ])(
    'prints the planted difference of $statistic, laser-assisted less manual',
    ({ statistic, label, scale, nth = 0 }) => {
      const [b, a] = [effect(statistic, laser), effect(statistic, manual)];
      const printed = read(cellsOf(table, label, nth)[2]);
      const standardError = scale * Math.hypot(a.standardError, b.standardError);
      expect(Math.abs(printed - scale * (b.expected - a.expected))).toBeLessThan(3 * standardError);
      // Exchanged cohorts would stand more than five standard errors away.
      expect(Math.abs(printed + scale * (b.expected - a.expected))).toBeGreaterThan(5 * standardError);
    },
  );

  it('prints the planted ratio of spreads, laser-assisted over manual', () => {
    const [b, a] = [effect('sd', laser), effect('sd', manual)];
    const printed = Math.log(read(cellsOf(table, 'Prediction error, SD')[2]));
    const standardError = Math.hypot(a.standardError / a.expected, b.standardError / b.expected);
    expect(Math.abs(printed - Math.log(b.expected / a.expected))).toBeLessThan(3 * standardError);
  });

  it('finds the technique better that was planted so, and says so in the same words everywhere', () => {
    expect(cellsOf(table, 'Verdict on laser-assisted').slice(2, 3)).toEqual(['better']);
    const [spread, share] = verdictSentences(results, plan, en);
    expect(spread).toContain('Prediction error, SD: laser-assisted is better than manual; ratio 0.');
    expect(share).toContain('Prediction error within ±0.50 D: laser-assisted is better than manual; difference ');
    const figure = draw(results, sample.derived.points, plan, en).find(({ id }) => id === 'differences');
    const printed = cellsOf(table, 'Prediction error within ±0.50 D')[2] ?? '';
    const [value, limits] = printed.split(' (') as [string, string];
    expect(figure?.alt).toContain(
      `Prediction error within ±0.50 D (primary) ${value} percentage points (${limits}, better;`,
    );
    expect(share).toContain(`difference ${value} percentage points (98.3 % CI ${limits}`);
  });

  it('calls the spare margin of acuity equivalence, which p alone never could', () => {
    expect(cellsOf(table, 'Verdict on laser-assisted, margin 0.1 logMAR')[2]).toBe('equivalent within the margin');
  });

  it('sets an adjusted difference below the unadjusted one', () => {
    const labels = table?.rows.map(({ label }) => label) ?? [];
    const at = labels.indexOf('The same, adjusted');
    expect(at).toBeGreaterThan(0);
    expect(table?.footnotes.join(' ')).toContain('Adjusted for axial length, surgeon: ');
  });

  it('has methods for all that was run', () => {
    const text = methods(results, plan, en);
    expect(text).toContain('Mixed design: ');
    expect(text).toContain(
      '3 intervals (outcomes × comparisons) share an error of 5 %, so that each has a level of 98.3 %',
    );
    expect(text).toContain('Adjusted differences are those of a linear model on the eyes');
    expect(text).toContain('Formulas (second) are compared with the planned prediction');
  });

  it('makes its tables with every cell from a row', () => {
    expect(tables.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['formulas', 'confounding', 'comparison', 'sensitivity']),
    );
    const bare = tables.flatMap(({ rows }) =>
      rows.flatMap(({ cells }) => cells.filter(({ text, from }) => /\d/.test(text) && from.length === 0)),
    );
    expect(bare).toEqual([]);
  });
});
