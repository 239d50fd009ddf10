import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aligned, apart, cut, labelled, screen, screenWidth, wrapped } from '../../src/screens/layout.js';

// Expected lines are counted by hand.
describe('wrapped', () => {
  it('breaks between words, and indents every line', () => {
    expect(wrapped('one two three four', 10, 2)).toEqual(['  one two', '  three', '  four']);
  });

  it('never cuts a word, however long', () => {
    expect(wrapped('a reports/cataract-2025/publication/index.html b', 20)).toEqual([
      'a',
      'reports/cataract-2025/publication/index.html',
      'b',
    ]);
  });

  it('keeps every word in its order, and no line too long that could be shorter', () => {
    const words = fc.array(fc.stringMatching(/^[a-z‘’°]{1,12}$/), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(words, fc.integer({ min: 14, max: 78 }), (list, width) => {
        const lines = wrapped(list.join(' '), width, 2);
        expect(
          lines
            .join(' ')
            .split(/\s+/)
            .filter((word) => word !== ''),
        ).toEqual(list);
        for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
      }),
    );
  });
});

describe('labelled', () => {
  it('sets the text beside its name and runs on below itself', () => {
    const text = 'check the chart; a slipped digit is likely, and correct the export if it is one';
    expect(labelled('Do', text, { at: 8 })).toEqual([
      '  Do    check the chart; a slipped digit is likely, and correct the export if',
      '        it is one',
    ]);
  });

  it('moves the text to the next line where the name is too long', () => {
    expect(labelled('a name too long', 'text', { at: 6 })).toEqual(['  a name too long', '      text']);
  });
});

describe('aligned', () => {
  it('gives every column the width of its widest cell', () => {
    const rows = [
      ['axis', '3', 'lane.csv'],
      ['keratometry', '12', 'k.csv'],
    ];
    expect(aligned(rows, { right: [1] })).toEqual(['  axis          3  lane.csv', '  keratometry  12  k.csv']);
  });
});

describe('apart', () => {
  it('pushes two texts to the ends of a line', () => {
    const [line = ''] = apart('Title', 'note');
    expect(line).toHaveLength(screenWidth);
    expect(line).toMatch(/^Title +note$/);
  });

  it('takes two lines where one is too short', () => {
    expect(apart('x'.repeat(60), 'y'.repeat(20))).toEqual(['x'.repeat(60), 'y'.repeat(20).padStart(screenWidth)]);
  });
});

it('cut marks what it leaves out', () => {
  expect(cut('lane-north.csv row 237', 10)).toBe('lane-nort…');
  expect(cut('short', 10)).toBe('short');
});

it('screen parts blocks by one blank line and leaves empty ones out', () => {
  expect(screen([['a'], [], ['b', 'c']])).toBe('a\n\nb\nc\n');
});
