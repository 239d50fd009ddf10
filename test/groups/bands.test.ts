// ../shared/spec/7-model.md §2, `bands`: an edge belongs to the band above it, the last edge to the band below.
import { describe, expect, it } from 'vitest';
import { bandNames, bandOf } from '../../src/groups/bands.js';

const lengths = [22, 24.5, 26];
const nameOf = (value: number, edges: readonly number[]): string | undefined => bandNames(edges)[bandOf(value, edges)];

describe('bands', () => {
  it('are named after their edges', () => {
    expect(bandNames(lengths)).toEqual(['(-,22)', '[22,24.5)', '[24.5,26]', '(26,-)']);
    expect(bandNames([42, 46])).toEqual(['(-,42)', '[42,46]', '(46,-)']);
    expect(bandNames([10])).toEqual(['(-,10)', '(10,-)']);
  });

  // ../shared/spec/6-settled.md, "bands of length and K": < 22.00; 22.00 to < 24.50; 24.50 to 26.00; > 26.00 mm.
  it.each([
    [21.99, '(-,22)'],
    [22, '[22,24.5)'],
    [24.49, '[22,24.5)'],
    [24.5, '[24.5,26]'],
    [26, '[24.5,26]'],
    [26.01, '(26,-)'],
  ])('hold %d mm in %s', (value, band) => {
    expect(nameOf(value, lengths)).toBe(band);
  });

  it('compare at a millionth', () => {
    expect(nameOf(21.9999999, lengths)).toBe('[22,24.5)');
    expect(nameOf(26.0000001, lengths)).toBe('[24.5,26]');
  });

  it('hold no value that is missing', () => {
    expect(bandOf(Number.NaN, lengths)).toBe(-1);
  });
});
