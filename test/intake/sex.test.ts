import { describe, expect, it } from 'vitest';
import { parseSex } from '../../src/intake/sex.js';

// Words in common practice, no source.
describe('parseSex', () => {
  it.each([
    ['F', 'F'],
    [' female ', 'F'],
    ['w', 'F'],
    ['Femme', 'F'],
    ['M', 'M'],
    ['männlich', 'M'],
    ['homme', 'M'],
    ['divers', 'X'],
  ])('reads ‘%s’ as %s', (word, sex) => {
    expect(parseSex(word)).toBe(sex);
  });

  it.each(['', '0', '1', '2', '?', 'R'])('reads no sex into ‘%s’', (word) => {
    expect(parseSex(word)).toBeUndefined();
  });
});
