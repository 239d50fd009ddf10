import { describe, expect, it } from 'vitest';
import { draw } from '../../pipeline/6-draw.js';
import { renderPng } from '../../pipeline/artwork/png.js';
import { renderSvg } from '../../pipeline/artwork/svg.js';
import { publishedCharts } from '../../src/charts/index.js';
import { artworks } from '../../src/charts/theme.js';
import type { Figure } from '../../src/records/report.js';
import { indexResults } from '../../src/results/index.js';
import { en } from '../../src/words/index.js';
import { outside, overlapping, pictureOf } from '../charts/svg-texts.js';
import { inventedEyes, inventedPlan, inventedPoints, inventedRows } from '../charts/synthetic.js';
import type { InventedEye } from '../charts/synthetic-rows.js';

const names = ['manual', 'laser-assisted', 'mini-incision, second surgeon, after the change of lens', 'trainee'];

function figures(eyes: readonly InventedEye[], cohorts: number, artwork: string): readonly Figure[] {
  const own = cohorts < 2 ? [] : names.slice(0, cohorts);
  return draw(indexResults(inventedRows(eyes, own)), inventedPoints(eyes, own), inventedPlan({ artwork }), en);
}

const still = {
  error: 0,
  before: [0, 0],
  after: [0, 0],
  cdvaBefore: 0,
  udva: 0,
  cdva: 0,
  days: 30,
  cohort: 0,
} as const;
const alike = { ...still, error: -0.5, before: [1.2, 0.4], after: [-0.5, 0.25], cdvaBefore: 0.3, udva: 0.2 } as const;
const far = { ...still, error: 2.6, before: [6.5, -3], after: [-4, 2.2], cdvaBefore: 1.9, udva: 1, cdva: 0.7 } as const;

/** What the invented audit does not follow; figures of predictions have a test of their own (prediction-charts). */
const notInvented = ['monitoring', 'funnel', 'planned-achieved', 'error-trend'];

/** Differences need cohorts to differ. */
const isDrawn = (id: string, cohorts: number): boolean =>
  !notInvented.includes(id) && (id !== 'differences' || cohorts > 1);

const audits: readonly { name: string; eyes: readonly InventedEye[]; cohorts: number }[] = [
  ...[1, 2, 30, 400, 3000].map((eyes) => ({ name: `${eyes} eyes`, eyes: inventedEyes(eyes), cohorts: 1 })),
  { name: 'thirty identical eyes', eyes: Array<InventedEye>(30).fill(alike), cohorts: 1 },
  { name: 'everything zero', eyes: Array<InventedEye>(30).fill(still), cohorts: 1 },
  { name: 'some eyes far out', eyes: [...inventedEyes(30), far, { ...far, error: -3.1 }], cohorts: 1 },
  { name: 'two cohorts', eyes: inventedEyes(120, 2), cohorts: 2 },
  { name: 'three cohorts', eyes: inventedEyes(30, 3), cohorts: 3 },
  { name: 'four cohorts, 1,200 eyes each', eyes: inventedEyes(1200, 4), cohorts: 4 },
];

/** Figures of planes by how many a cohort has. */
const planes: Readonly<Record<string, number>> = {
  'double-angle': 2,
  'double-angle-cornea': 2,
  'double-angle-induced': 2,
  'induced-incision': 1,
  'double-angle-error': 1,
  'double-angle-toric': 2,
};

/** The profile whose width and type a figure claims: more than two planes take both columns of a journal. */
function claimed(figure: string, artwork: string, cohorts: number): { width: number; type: number } {
  const isWide = artwork === 'journal-single' && (planes[figure] ?? 0) * cohorts > 2;
  return artworks[isWide ? 'journal-double' : artwork] ?? { width: 0, type: 0 };
}

describe.each(Object.keys(artworks))('artwork for %s', (artwork) => {
  it.each(audits)(
    'has the width asked for, and legible texts that neither overlap nor leave it: $name',
    async (audit) => {
      const drawn = figures(audit.eyes, audit.cohorts, artwork);
      expect(drawn.map(({ id }) => id)).toEqual([...publishedCharts.keys()].filter((id) => isDrawn(id, audit.cohorts)));
      for (const figure of drawn) {
        const picture = await pictureOf(await renderSvg(figure, { identified: false }));
        const told = { figure: figure.id, overlapping: overlapping(picture), outside: outside(picture) };
        expect(told).toEqual({ figure: figure.id, overlapping: [], outside: [] });
        const { width, type } = claimed(figure.id, artwork, audit.cohorts);
        expect(picture.width).toBeCloseTo(width, 2);
        expect(picture.texts.length).toBeGreaterThan(8);
        expect(new Set(picture.texts.map(({ size }) => size))).toEqual(new Set([type]));
      }
    },
  );
});

describe('svg', () => {
  const drawn = figures(inventedEyes(30), 1, 'journal-single');
  const doubleAngle = drawn.find(({ id }) => id === 'double-angle') as Figure;

  it('is the same text for the same figure, whatever was drawn before', async () => {
    const first = await renderSvg(doubleAngle, { identified: false });
    await renderSvg(drawn[1] as Figure, { identified: false });
    expect(await renderSvg(doubleAngle, { identified: false })).toBe(first);
  });

  it('gives its clips ids that no other figure of the page has', async () => {
    const svg = await renderSvg(doubleAngle, { identified: false });
    const ids = [...svg.matchAll(/\bid="([^"]+)"/g)].map(([, id]) => id);
    const uses = [...svg.matchAll(/url\(#([^)]+)\)/g)].map(([, id]) => id);
    expect(ids.length).toBeGreaterThan(0);
    expect(ids.every((id) => id?.startsWith('double-angle-'))).toBe(true);
    expect(uses.every((id) => ids.includes(id))).toBe(true);
  });

  it('asks for Arimo first, and for fonts of the same widths where it is missing', async () => {
    const svg = await renderSvg(doubleAngle, { identified: false });
    const families = new Set([...svg.matchAll(/font-family="([^"]+)"/g)].map(([, family]) => family));
    expect(families).toEqual(new Set(['Arimo, Arial, Helvetica, sans-serif']));
  });

  it('refuses a specification that vega-lite warns of', async () => {
    const spec = {
      data: { values: [{ a: 1 }] },
      mark: 'bar',
      encoding: { x: { field: 'a', type: 'nominal', scale: { zero: true } } },
    };
    const figure = { ...doubleAngle, id: 'faulty', spec };
    await expect(renderSvg(figure, { identified: false })).rejects.toThrow(/^figure faulty: /);
  });
});

describe('names of eyes', () => {
  const eyes = inventedEyes(30);
  const results = indexResults(inventedRows(eyes));
  const named = draw(results, inventedPoints(eyes), inventedPlan(), en, (eye) => `P-${eye} right`);
  const doubleAngle = named.find(({ id }) => id === 'double-angle') as Figure;

  it('are kept on the marks of the internal page, one a mark and nothing else announced', async () => {
    const svg = await renderSvg(doubleAngle, { identified: true });
    const told = [...svg.matchAll(/aria-label="([^"]*)"/g)].map(([, text]) => text);
    expect(told.sort()).toEqual([...eyes.keys(), ...eyes.keys()].map((eye) => `P-${eye} right`).sort());
  });

  it('stop the run where a figure with names would be published', async () => {
    await expect(renderSvg(doubleAngle, { identified: false })).rejects.toThrow(
      'renderSvg: figure double-angle names eyes; expected one drawn without names',
    );
  });
});

describe('png', () => {
  /** Chunks of a PNG: length, type and data (PNG specification, W3C 2003, section 5.3). */
  function chunks(png: Uint8Array): ReadonlyMap<string, Buffer> {
    const bytes = Buffer.from(png);
    const found = new Map<string, Buffer>();
    for (let at = 8; at < bytes.length; at += 12 + bytes.readUInt32BE(at)) {
      const length = bytes.readUInt32BE(at);
      found.set(bytes.toString('latin1', at + 4, at + 8), bytes.subarray(at + 8, at + 8 + length));
    }
    return found;
  }

  const figure = figures(inventedEyes(30), 1, 'journal-single')[2] as Figure;

  // 84 mm at 300 dpi are 992.1 pixels; 300 dpi are 11811 pixels a metre, 600 dpi 23622 (25.4 mm to the inch).
  it.each([
    { dpi: 300, pixels: 992, perMetre: 11811 },
    { dpi: 600, pixels: 1984, perMetre: 23622 },
  ])('states that it has $dpi dots per inch, and has so many', async ({ dpi, pixels, perMetre }) => {
    const found = chunks(await renderPng(await renderSvg(figure, { identified: false }), dpi));
    expect(Math.abs((found.get('IHDR')?.readUInt32BE(0) ?? 0) - pixels)).toBeLessThanOrEqual(1);
    const physical = found.get('pHYs');
    expect([physical?.readUInt32BE(0), physical?.readUInt32BE(4), physical?.readUInt8(8)]).toEqual([
      perMetre,
      perMetre,
      1,
    ]);
    expect([...found.keys()].indexOf('pHYs')).toBeLessThan([...found.keys()].indexOf('IDAT'));
  });

  it('is the same bytes for the same figure', async () => {
    const svg = await renderSvg(figure, { identified: false });
    expect(Buffer.compare(Buffer.from(await renderPng(svg, 300)), Buffer.from(await renderPng(svg, 300)))).toBe(0);
  });
});
