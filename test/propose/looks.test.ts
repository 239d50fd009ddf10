import { describe, expect, it } from 'vitest';
import { wordColumnBuilder } from '../../src/columns/word-column.js';
import { missingWords } from '../../src/intake/missing.js';
import type { DecimalMark } from '../../src/intake/number.js';
import { likelierOf, settled } from '../../src/propose/choices.js';
import { isShifted } from '../../src/propose/evidence/refraction-doubts.js';
import { formulaNamed } from '../../src/propose/formulas.js';
import { guessOf } from '../../src/propose/guesses.js';
import { likeness } from '../../src/propose/looks.js';
import { numberIn, profileOf } from '../../src/propose/profile.js';

function profile(cells: readonly string[], decimal: DecimalMark = 'point') {
  const builder = wordColumnBuilder();
  for (const cell of cells) builder.push(cell);
  return profileOf(builder.finish(), decimal, missingWords());
}

/** So many numbers from a first one in equal steps. */
const series = (first: number, step: number, count: number, decimals: number): string[] =>
  Array.from({ length: count }, (_, i) => (first + step * i).toFixed(decimals));

// Ranges of the trade: common practice, no source.
describe('what a column is by its cells alone', () => {
  it.each([
    ['axis', series(3, 11, 16, 0)],
    ['radius', series(7.2, 0.07, 16, 2)],
    ['power', series(40.1, 0.37, 16, 2)],
    ['axial_length', series(21.93, 0.31, 16, 2)],
    ['lens_power', series(15, 0.5, 16, 1)],
    ['cylinder', series(-3.75, 0.25, 16, 2)],
    ['sphere', series(-2, 0.25, 16, 2)],
    ['ecd', series(1800, 47, 16, 0)],
    ['cct', series(490, 7, 16, 0)],
    ['acuity', ['6/9', '6/6', '20/40', 'CF', '6/12']],
    ['date', ['2025-01-03', '4 Feb 2025', '13.05.2025', '2025-06-07']],
    ['eye', ['OD', 'OS', 'OD', 'left']],
    ['refraction', ['-1.25 -0.50 x 90', '+0.50/-1.25x175', 'plano -0.75 @ 180']],
  ])('%s', (guess, cells) => {
    expect(guessOf(profile(cells), 'point')).toBe(guess);
  });

  it.each([
    ['ages', series(55, 2, 16, 0)],
    ['pressures', series(9, 1, 16, 0)],
    ['codes', ['A1', 'B2', 'C3', 'A1']],
    ['two cells', ['10', '170']],
  ])('%s could be several things', (_, cells) => {
    expect(guessOf(profile(cells), 'point')).toBeUndefined();
  });
});

describe('cells', () => {
  it.each([
    ['x 90°', 90],
    ['−0,50 D', Number.NaN],
    ['-0.50 D', -0.5],
    ['plano', 0],
    ['90+', 90],
    ['14 mmHg', 14],
    ['6/9', Number.NaN],
    ['P12', Number.NaN],
  ])('‘%s’ writes %s', (word, value) => {
    expect(numberIn(word, 'point')).toBe(value);
  });

  it('are counted by how often they stand, blanks apart', () => {
    const { filled, blank, within } = profile(['1', '1', '1', '9', '', 'n/a']);
    expect([filled, blank, within(0, 5)]).toEqual([4, 2, 0.75]);
  });

  it('an empty column speaks against nothing', () => {
    expect(likeness('sphere', profile(['', '']), 'point')).toBe(1);
  });

  it('likeness refuses a term of which nothing is known', () => {
    expect(() => likeness('nonsense', profile(['1']), 'point')).toThrow(
      'likeness: nothing is known of the cells of "nonsense"',
    );
  });
});

describe('a row whose cells are moved', () => {
  // The real case: sphere blank, cylinder 0.50, axis −1, which is +0.50 −1.00 without an axis.
  it.each([
    [Number.NaN, 0.5, -1, true],
    [-0.5, 90, Number.NaN, true],
    [-0.5, -0.75, 90, false],
    [Number.NaN, -0.75, 90, false],
    [-0.5, -0.75, 195, false],
    [0.25, -200, 93, false],
    [Number.NaN, Number.NaN, Number.NaN, false],
  ])('%d, %d, %d: %s', (sphere, cylinder, axis, shifted) => {
    expect(isShifted(sphere, cylinder, axis)).toBe(shifted);
  });
});

describe('evidence', () => {
  it('speaks from ten cases on, three quarters of which agree', () => {
    expect(likelierOf({ minus: 9, plus: 0 })).toBeUndefined();
    expect(likelierOf({ minus: 8, plus: 2 })).toBe('minus');
    expect(likelierOf({ minus: 7, plus: 3 })).toBeUndefined();
  });

  it('an answer wins; the empty one leaves the choice open', () => {
    const choice = {
      id: 'a',
      kind: 'notation',
      label: '',
      header: '',
      found: '',
      options: [],
      likelier: 'minus',
    } as const;
    expect(settled(choice, new Map())).toBe('minus');
    expect(settled(choice, new Map([['a', 'plus']]))).toBe('plus');
    expect(settled(choice, new Map([['a', '']]))).toBeUndefined();
  });
});

it.each([
  ['Pred SRK/T', 'SRK/T'],
  ['srkt_se', 'SRK/T'],
  ['Holladay', 'Holladay 1'],
  ['Holladay 2', undefined],
  ['HofferQ prediction', 'Hoffer Q'],
  ['Pred 2', undefined],
])('‘%s’ is of the formula %s', (header, name) => {
  expect(formulaNamed(header)).toBe(name);
});

// How spreadsheets and mixed exports spoil cells: common practice, no source.
describe('a column that its header names and a spreadsheet has spoiled', () => {
  it.each([
    ['surgery_date', series(45_700, 1, 16, 0)],
    ['cdva', ['06-Sep', '06-Dec', '06-Jun', '6/9']],
    ['cylinder', ['-0,50', '-0.75', '-1,25', '-0.25']],
    ['axial_length', ['23,50', '22,91', '24,03']],
  ] as const)('%s is still that: a run then says how to mend it', (term, cells) => {
    expect(likeness(term, profile(cells), 'point')).toBe(1);
  });

  it.each([
    ['surgery_date', ['12', '13', '14']],
    ['cdva', ['2025-09-06', '2025-06-06']],
    ['axial_length', ['none', 'see notes']],
  ] as const)('%s is not what cells of another kind are', (term, cells) => {
    expect(likeness(term, profile(cells), 'point')).toBeLessThan(0.5);
  });

  it('whole numbers under no header are no dates', () => {
    expect(guessOf(profile(series(45_700, 1, 16, 0)), 'point')).not.toBe('date');
  });
});
