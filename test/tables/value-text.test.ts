import { describe, expect, it } from 'vitest';
import type { ResultRow } from '../../src/records/result.js';
import { intervalText, valueText } from '../../src/tables/value-text.js';
import { en } from '../../src/words/index.js';
import { rowsOf, type Shown } from './rows.js';

/** One row, typeset. */
function shown(statistic: string, value: Shown, unit: string, n = 371): ResultRow {
  const [row] = rowsOf({ measure: 'made_up', n, unit }, { [statistic]: value });
  if (!row) throw new RangeError('shown: no row');
  return row;
}
const text = (statistic: string, value: Shown, unit: string, n?: number) =>
  valueText(shown(statistic, value, unit, n), en);

// Expected texts: arithmetic on decimals, half away from zero, as shown beside each.
describe('valueText', () => {
  it('sets dioptres with two decimals and a true minus sign', () => {
    expect(text('mean', -0.125, 'D')).toBe('\u22120.13'); // the half away from zero
    expect(text('sd', 0.4449, 'D')).toBe('0.44');
  });

  it('never shows a zero with a sign', () => {
    expect(text('mean', -0.004, 'D')).toBe('0.00');
    expect(text('mean', -0, 'logMAR')).toBe('0.00');
  });

  it('sets shares in percent, one decimal from 100 eyes on, none below', () => {
    expect(text('share_within_0.50', 287 / 371, 'share', 371)).toBe('77.4'); // 0.77358
    expect(text('share_within_0.50', 77 / 99, 'share', 99)).toBe('78'); // 0.77778
    expect(text('share', 4 / 421, 'share', 421)).toBe('1.0'); // 0.00950
  });

  it('sets days and degrees whole, an axis with three digits and 180 for 0', () => {
    expect(text('median', 88.5, 'days')).toBe('89');
    expect(text('centroid_axis', 92.42, 'deg')).toBe('092');
    expect(text('centroid_axis', 0.3, 'deg')).toBe('180');
  });

  it('sets counts whole with their thousands apart, and p values to three decimals', () => {
    expect(text('count', 282811, 'eyes')).toBe('282,811');
    expect(text('p', 0.04179, '')).toBe('0.042');
    expect(text('p', 0.00098, '')).toBe('< 0.001');
  });

  it('sets differences of shares in percentage points, with the decimals of the percentages', () => {
    expect(text('difference_share_within_0.50', -0.125, 'share', 371)).toBe('\u221212.5');
    expect(text('half_width:difference_share', 0.0836, 'share', 99)).toBe('8'); // 8.36
    expect(text('adjusted_difference_share', 0.0004, 'share')).toBe('0.0');
    expect(text('overlap:surgeon', 0.2552, 'share')).toBe('25.5');
  });

  it('sets tests, ratios and planning of a comparison', () => {
    expect(text('p:difference_mean', 0.0004, '')).toBe('< 0.001');
    expect(text('p_adjusted:ratio_sd', 0.0125, '')).toBe('0.013'); // the half away from zero
    expect(text('df:difference_mean', 212.34, '')).toBe('212.3');
    expect(text('ratio_sd', 0.875, '')).toBe('0.88');
    expect(text('eyes_needed:difference_mean', 1544, 'eyes')).toBe('1,544');
    expect(text('difference_axis', 0.2, 'deg')).toBe('180');
    expect(text('formula_difference_spread', -0.0125, 'D²')).toBe('\u22120.013');
    expect(text('patients_only_a', 120, 'patients')).toBe('120');
    expect(text('overlap_months', 3, 'months')).toBe('3');
    expect(text('years', 12, 'years')).toBe('12');
  });

  it('says so where a value is not estimable', () => {
    expect(text('sd', undefined, 'D', 1)).toBe('not estimable');
  });
});

describe('intervalText', () => {
  it('has the decimals of the value', () => {
    expect(intervalText(shown('mean', [-0.055, -0.1, -0.0051], 'D'), en)).toBe('\u22120.10 to \u22120.01');
    expect(intervalText(shown('share', [0.774, 0.7234, 0.8174], 'share', 371), en)).toBe('72.3 to 81.7');
  });

  it('has percentage points for differences of shares', () => {
    expect(intervalText(shown('difference_share', [0, -0.0211, 0.0219], 'share'), en)).toBe('\u22122.1 to 2.2');
  });

  it('is undefined where the row has no interval', () => {
    expect(intervalText(shown('min', -1, 'D'), en)).toBeUndefined();
  });
});
