import { describe, expect, it } from 'vitest';
import { accents, artworks, chartConfig, ink } from '../../src/charts/theme.js';

type Triple = readonly [number, number, number];

/** Linear light of an sRGB colour (IEC 61966-2-1, *from memory*). */
function linear(hex: string): Triple {
  const part = (at: number): number => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [part(1), part(3), part(5)];
}

const luminance = ([r, g, b]: Triple): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;

/** CIE L*a*b* under D65 (CIE 15, *from memory*). */
function lab([r, g, b]: Triple): Triple {
  const [x, y, z] = [
    (0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.95047,
    luminance([r, g, b]),
    (0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.08883,
  ];
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : (841 / 108) * t + 4 / 29);
  return [116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))];
}

// Machado GM, Oliveira MM, Fernandes LAF. IEEE Trans Vis Comput Graph 2009;15:1291–1298: colours as they are seen
// without one kind of cone, severity 1.0, *from memory*; every row adds up to 1, so that grey stays grey.
const seeing: Readonly<Record<string, readonly Triple[]>> = {
  'all cones': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  'no long-wave cones': [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  'no middle-wave cones': [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  'no short-wave cones': [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

function seen(hex: string, matrix: readonly Triple[]): Triple {
  const [r, g, b] = linear(hex);
  const [x, y, z] = matrix.map((row) => Math.min(1, Math.max(0, row[0] * r + row[1] * g + row[2] * b)));
  return lab([x ?? 0, y ?? 0, z ?? 0]);
}

const pairs = accents.flatMap((a, i) => accents.slice(i + 1).map((b) => [a.colour, b.colour] as const));

describe('accents', () => {
  it.each(Object.entries(seeing))('are told apart with %s', (_, matrix) => {
    for (const [a, b] of pairs) {
      const distance = Math.hypot(...seen(a, matrix).map((value, i) => value - (seen(b, matrix)[i] as number)));
      // 2.3 is a difference that is just seen; marks of a few points need a multiple of it (common practice, no source).
      expect(distance, `${a} and ${b}`).toBeGreaterThan(15);
    }
  });

  it('are told apart in greyscale print', () => {
    const lightness = accents.map(({ colour }) => lab(linear(colour))[0]);
    const gaps = lightness.slice(1).map((value, i) => value - (lightness[i] as number));
    expect(lightness.map(Math.round)).toEqual([27, 48, 62, 73]);
    expect(Math.min(...gaps)).toBeGreaterThan(10);
  });

  it('differ in shape and dash as well', () => {
    expect(new Set(accents.map(({ shape }) => shape)).size).toBe(accents.length);
    expect(new Set(accents.map(({ dash }) => dash.join())).size).toBe(accents.length);
  });
});

it('text has the contrast of 4.5 to 1 that WCAG 2.1, 1.4.3, asks for, on paper and on boxes', () => {
  const contrast = (a: string, b: string): number => (luminance(linear(a)) + 0.05) / (luminance(linear(b)) + 0.05);
  for (const ground of [ink.paper, ink.wash]) {
    for (const text of [ink.full, ink.soft]) expect(contrast(ground, text)).toBeGreaterThan(4.5);
  }
});

describe('artwork', () => {
  const isScreen = (name: string): boolean => name === 'slide' || name === 'web';

  // 25.4 mm to the inch, 72 pt to the inch: 84 mm are 238.11 pt, 174 mm are 493.23 pt.
  it('has the column widths of journals in points', () => {
    expect(artworks['journal-single']?.width).toBeCloseTo((84 / 25.4) * 72, 2);
    expect(artworks['journal-middle']?.width).toBeCloseTo((129 / 25.4) * 72, 2);
    expect(artworks['journal-double']?.width).toBeCloseTo((174 / 25.4) * 72, 2);
  });

  // Elsevier's artwork pages: lettering 7 pt, lines 0.10 to 1.5 pt (quoted in the project's notes on journal artwork).
  it.each(Object.entries(artworks))('%s has type of 7 pt and more, and lines that print', (name, artwork) => {
    expect(artwork.type).toBeGreaterThanOrEqual(7);
    expect(artwork.dpi).toBeGreaterThanOrEqual(isScreen(name) ? 150 : 300);
    const { hair, line, bold } = artwork.strokes;
    expect([hair, line, bold]).toEqual([hair, line, bold].sort((a, b) => a - b));
    expect(hair).toBeGreaterThanOrEqual(0.5);
    if (!isScreen(name)) expect(bold).toBeLessThanOrEqual(1.5);
    expect(chartConfig(artwork)).toMatchObject({ axis: { labelFontSize: artwork.type, titleFontSize: artwork.type } });
  });
});
