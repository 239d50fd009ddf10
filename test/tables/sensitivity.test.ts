import { describe, expect, it } from 'vitest';
import { indexResults } from '../../src/results/index.js';
import { sensitivity } from '../../src/tables/sensitivity.js';
import { en } from '../../src/words/index.js';
import { auditRows, without } from './audit.js';
import { comparedRows } from './compared.js';
import { planOf } from './plan.js';
import { cellsOf } from './rows.js';

const table = sensitivity(indexResults(comparedRows), planOf(), en);

describe('sensitivity', () => {
  it('sets every headline number beside the same with fewer eyes, for all eyes and each cohort', () => {
    expect(table?.head.map(({ text }) => text)).toEqual([
      'Statistic (95 % CI)',
      'Main analysis',
      'One eye per patient',
      'Without queried eyes',
    ]);
    expect(table?.rows.filter(({ cells }) => cells.length === 0).map(({ label }) => label)).toEqual([
      'All eyes',
      'manual',
      'laser & co',
      'laser & co − manual, or ratio (97.5 % CI)',
    ]);
  });

  // 0.7625 of 240 are 183.
  it('gives shares with their eyes and interval, means with their eyes', () => {
    expect(cellsOf(table, 'Prediction error within ±0.50 D')).toEqual([
      '278/371, 74.9 (70.3 to 79.1)',
      '183/240, 76.3 (70.5 to 81.2)',
      '183/240, 76.3 (70.5 to 81.2)',
    ]);
    expect(cellsOf(table, 'Prediction error, mean')[1]).toBe('240 eyes: \u22120.06 (\u22120.12 to \u22120.01)');
  });

  it('gives no percentage without an interval', () => {
    expect(cellsOf(table, 'Corrected acuity 20/40 (6/12) or better')[1]).toBe('4/4*');
    expect(table?.footnotes).toContain('* Fewer than 5 patients: no interval is given.');
  });

  it('repeats the primary differences at their level, without a verdict', () => {
    expect(cellsOf(table, 'Prediction error within ±0.50 D', 3)).toEqual([
      '371 eyes: 10.5 (2.1 to 18.9)',
      '240 eyes: 9.3 (\u22121.1 to 19.6)',
      '240 eyes: 9.3 (\u22121.1 to 19.6)',
    ]);
    const texts = table?.rows.flatMap(({ cells }) => cells.map(({ text }) => text)) ?? [];
    expect(texts.filter((text) => Object.values<string>(en.tables.comparison.verdicts).includes(text))).toEqual([]);
  });

  it('says why no other table of low vision is needed, only where acuity is shown', () => {
    const note = 'Other values for counting fingers';
    expect(table?.footnotes.some((text) => text.startsWith(note))).toBe(true);
    const blind = without(comparedRows, ({ measure, group }) => measure === 'cdva' && group.includes('sensitivity'));
    const other = sensitivity(indexResults(blind), planOf(), en);
    expect(other?.footnotes.some((text) => text.startsWith(note))).toBe(false);
  });

  it('is there without cohorts, and not without such rows', () => {
    const alone = without(comparedRows, ({ group }) => group.includes('technique'));
    expect(sensitivity(indexResults(alone), planOf(), en)?.rows.map(({ label }) => label)[0]).toBe('All eyes');
    expect(sensitivity(indexResults(auditRows), planOf(), en)).toBeUndefined();
  });
});
