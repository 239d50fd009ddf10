import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance, nearest } from '../../src/plan/nearest.js';

describe('editDistance', () => {
  // kitten → sitting is the textbook example of the Levenshtein distance (3); ca → abc tells the restricted form (3)
  // from the unrestricted one of Damerau (2). Both from memory; each can be followed by hand.
  it.each([
    ['kitten', 'sitting', 3],
    ['ca', 'abc', 3],
    ['axsi', 'axis', 1],
    ['colums', 'columns', 1],
    ['', 'abc', 3],
    ['same', 'same', 0],
  ])('of %s and %s is %i', (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
  });

  it('is symmetric, and at least the difference in length', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), fc.string({ maxLength: 12 }), (a, b) => {
        const distance = editDistance(a, b);
        expect(distance).toBe(editDistance(b, a));
        expect(distance).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
        expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length));
      }),
    );
  });
});

describe('nearest', () => {
  it('finds a word in spite of two letters swapped, another case, or a hyphen for an underscore', () => {
    expect(nearest('speher', ['axis', 'sphere'])).toBe('sphere');
    expect(nearest('Follow-Up', ['reading', 'follow_up'])).toBe('follow_up');
  });

  it('suggests nothing where no word is near, and nothing for words of one or two letters', () => {
    expect(nearest('benchmark', ['axis', 'sphere'])).toBeUndefined();
    expect(nearest('2', ['1'])).toBeUndefined();
    expect(nearest('CM', ['D', 'mm'])).toBeUndefined();
    expect(nearest('MM', ['D', 'mm'])).toBe('mm');
  });

  it('takes the first of two that are equally near', () => {
    expect(nearest('k1_axes', ['k2_axis', 'k1_axis'])).toBe('k1_axis');
    expect(nearest('k3_axis', ['k2_axis', 'k1_axis'])).toBe('k2_axis');
  });
});
