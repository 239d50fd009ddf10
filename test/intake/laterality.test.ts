import { expect, it } from 'vitest';
import { parseLaterality } from '../../src/intake/laterality.js';

// Words met in exports: OD, OS, OU are Latin and in general use; the others common practice, no source.
it.each([
  ['right', ['OD', 'od', 'O.D.', 'R', 'RE', 'Right', ' right eye ', 'rechts', 'RA', 'droit']],
  ['left', ['OS', 'L', 'LE', 'Left', 'links', 'LA', 'OG', 'gauche', 'Œil gauche']],
  ['both', ['OU', 'both', 'BE', 'R+L', 'beide']],
  [undefined, ['', '?', 'D', 'S', 'G', '1', '2', 'eye', 'rightmost']],
] as const)('reads %s', (side, words) => {
  for (const word of words) expect([word, parseLaterality(word)]).toEqual([word, side]);
});

it('follows the words a source declares, before its own', () => {
  const declared = { right: ['D', 'dx', '1'], left: ['S', 'sin', '2'] };
  expect(['d', 'DX', '1', 'S', 'sin.', '2'].map((word) => parseLaterality(word, declared))).toEqual([
    'right',
    'right',
    'right',
    'left',
    'left',
    'left',
  ]);
  expect(parseLaterality('L', { right: ['L'] })).toBe('right');
  expect(parseLaterality('OD', declared)).toBe('right');
});
