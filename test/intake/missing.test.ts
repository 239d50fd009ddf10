import { expect, it } from 'vitest';
import { missingWords } from '../../src/intake/missing.js';

it('knows the words of the specification, in any case and with blanks around', () => {
  const isMissing = missingWords();
  const words = [
    '',
    '  ',
    '\u00a0',
    '-',
    '--',
    '–',
    '—',
    '.',
    '?',
    'n/a',
    'N/A',
    'NA',
    'NR',
    'N/R',
    'Unknown',
    '#N/A',
    'null',
    ' na ',
  ];
  expect(words.filter((word) => !isMissing(word))).toEqual([]);
});

it('takes nothing else for missing', () => {
  const isMissing = missingWords();
  expect(['0', 'none', 'no', 'nil', 'n.e.', '-1', 'plano', 'NaN'].filter(isMissing)).toEqual([]);
});

it('adds the words that audit.yaml declares', () => {
  expect(missingWords(['n.e.'])(' N.E. ')).toBe(true);
});
