import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fontFile } from '../../pipeline/artwork/fonts.js';
import { textWidth, wrapped } from '../../src/charts/text-width.js';

/** Advance width of one sign from the font file, in 1/2048 of the type size. */
async function advances(weight: 'normal' | 'bold'): Promise<(sign: string) => number> {
  const { openSync } = await import('fontkit');
  const font = openSync(fontFile(weight));
  if (!('glyphForCodePoint' in font)) throw new RangeError('test: a collection of fonts; expected one');
  expect(font.unitsPerEm).toBe(2048);
  return (sign) => font.glyphForCodePoint(sign.codePointAt(0) ?? 0).advanceWidth;
}

describe('width of text', () => {
  const ascii = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i));

  it.each(['normal', 'bold'] as const)(
    'is that of the font file for ASCII and the signs of charts, %s',
    async (weight) => {
      const advance = await advances(weight);
      for (const sign of [...ascii, '\u00a0', ...'°±×–…−≤']) {
        expect(textWidth(sign, 2048, weight), sign).toBe(advance(sign));
      }
    },
  );

  it.each(['normal', 'bold'] as const)(
    'is no less than that of the font for every letter of Latin-1 and Latin Extended-A, %s',
    async (weight) => {
      const advance = await advances(weight);
      for (let code = 0xa1; code < 0x180; code += 1) {
        const sign = String.fromCodePoint(code);
        expect(textWidth(sign, 2048, weight), sign).toBeGreaterThanOrEqual(advance(sign));
      }
    },
  );
});

describe('wrapping', () => {
  const text = fc.array(fc.string({ unit: 'grapheme-ascii', minLength: 1, maxLength: 12 }), { maxLength: 8 });

  it('loses no letter and makes no line too long', () => {
    fc.assert(
      fc.property(text, fc.integer({ min: 20, max: 200 }), (words, width) => {
        const lines = wrapped(words.join(' '), width, { size: 8 });
        expect(lines.join('').replaceAll(' ', '')).toBe(words.join('').replaceAll(' ', ''));
        for (const line of lines) expect(textWidth(line, 8)).toBeLessThanOrEqual(width);
      }),
    );
  });

  it('breaks at spaces and behind hyphens', () => {
    expect(wrapped('laser-assisted surgery', 60, { size: 8 })).toEqual(['laser-assisted', 'surgery']);
    expect(wrapped('laser-assisted', 40, { size: 8 })).toEqual(['laser-', 'assisted']);
  });

  it('keeps a number with its unit', () => {
    const lines = wrapped('centroid 0.43 D @ 92° (95 % region)', 90, { size: 8 });
    for (const whole of ['0.43 D @ 92°', '(95 %']) expect(lines.some((line) => line.includes(whole))).toBe(true);
  });

  it('ends what does not fit in a sign that says so', () => {
    const [line, ...others] = wrapped('mini-incision, second surgeon', 60, { size: 8, lines: 1 });
    expect(others).toEqual([]);
    expect(line).toMatch(/^mini-incision.*…$/);
    expect(textWidth(line ?? '', 8)).toBeLessThanOrEqual(60);
  });

  it('gives one line for no text', () => {
    expect(wrapped('', 60, { size: 8 })).toEqual(['']);
  });
});
