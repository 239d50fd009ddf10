import sharp from 'sharp';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { draw } from '../../pipeline/6-draw.js';
import { brokenClaims, type FigureForm } from '../../pipeline/artwork/claims.js';
import { renderPdf } from '../../pipeline/artwork/pdf.js';
import { pdfFacts } from '../../pipeline/artwork/pdf-facts.js';
import { renderPng } from '../../pipeline/artwork/png.js';
import { renderSvg } from '../../pipeline/artwork/svg.js';
import { svgFile } from '../../pipeline/artwork/svg-file.js';
import { figureFile } from '../../pipeline/publish/figure-files.js';
import { greyOf } from '../../src/charts/grey.js';
import { artworks } from '../../src/charts/theme.js';
import type { DrawnFigure } from '../../src/page/content.js';
import type { Plan } from '../../src/records/plan.js';
import { indexResults } from '../../src/results/index.js';
import { en } from '../../src/words/index.js';
import { outside, overlapping, pictureOf } from '../charts/svg-texts.js';
import { inventedEyes, inventedPlan, inventedPoints, inventedRows } from '../charts/synthetic.js';

const cohorts = ['manual', 'laser-assisted'];
const eyes = inventedEyes(60, 2);
const results = indexResults(inventedRows(eyes, cohorts));
const points = inventedPoints(eyes, cohorts);

async function drawnWith(outputs: Partial<Plan['outputs']>): Promise<readonly DrawnFigure[]> {
  const drawn: DrawnFigure[] = [];
  for (const figure of draw(results, points, inventedPlan(outputs), en)) {
    drawn.push({ figure, svg: await renderSvg(figure, { identified: false }) });
  }
  return drawn;
}

/** A profile of a journal that takes 90 mm, letters of 8 pt, and greys alone. */
const profiles = { own: { width_mm: 90, type_pt: 8, dpi: 400, tiff_dpi: 600, colours: 'grey' } } as const;
const panels = [
  { name: 'accuracy', figures: ['prediction-error', 'accuracy-shares'], columns: 2, artwork: 'journal-double' },
] as const;
const forms: readonly FigureForm[] = ['svg', 'png', 'pdf', 'tiff'];
const single = await drawnWith({ leave_out: ['double-angle'] });
const own = await drawnWith({ artwork: 'own', profiles, leave_out: ['double-angle', 'differences'] });
const [combined] = (await drawnWith({ panels })).filter(({ figure }) => figure.panels);
const first = single[0] as DrawnFigure;
const together = combined as DrawnFigure;

afterEach(() => {
  vi.useRealTimers();
  process.env.TZ = 'UTC';
});

describe('figure files', () => {
  it.each(forms)('keep to the profile they were drawn for: %s', async (form) => {
    for (const drawn of [...single, ...own, together]) {
      const bytes = await figureFile(drawn, form);
      expect(await brokenClaims(form, bytes, drawn.figure.artwork)).toEqual([]);
    }
  });

  // 90 mm are 1417.3 pixels at 400 dpi and 2126.0 at 600 (25.4 mm to the inch); TIFF tag 259, value 5: LZW.
  it('state the size in print that a declared profile asks for', async () => {
    const drawn = own[0] as DrawnFigure;
    const png = await sharp(await figureFile(drawn, 'png')).metadata();
    expect(Math.abs(png.width - 1417.3)).toBeLessThan(1);
    expect(png.density).toBe(400);
    const tiff = await sharp(await figureFile(drawn, 'tiff')).metadata();
    expect(Math.abs(tiff.width - 2126)).toBeLessThan(1);
    expect([tiff.density, tiff.hasAlpha]).toEqual([600, false]);
    const svg = Buffer.from(await figureFile(drawn, 'svg')).toString();
    expect(svg).toMatch(/^<svg[^>]* width="255\.12pt"/);
  });

  it('are vectors with all their fonts inside, in PDF', async () => {
    const facts = pdfFacts(await figureFile(first, 'pdf'));
    expect(facts.images).toBe(0);
    expect(facts.fonts.length).toBeGreaterThan(1);
    expect([...facts.embedded].sort()).toEqual([...facts.fonts].sort());
    expect(facts.fonts.every((font) => /^[A-Z]{6}\+Arimo-(?:Regular|Bold)$/.test(font))).toBe(true);
    expect(facts.typeSizes).toEqual([7.5]);
  });

  it.each(forms)('are the same to the byte at another time and in another zone: %s', async (form) => {
    const bytes = await figureFile(first, form);
    vi.useFakeTimers({ now: new Date('2031-07-05T23:30:00Z'), toFake: ['Date'] });
    process.env.TZ = 'Pacific/Honolulu';
    expect(Buffer.compare(await figureFile(first, form), bytes)).toBe(0);
  });

  it('tell in SVG what they show, for those who do not see it', async () => {
    const { figure, svg } = first;
    expect(svgFile(svg, figure.alt)).toContain(`<desc>${figure.alt}</desc>`);
  });
});

describe('the check of a file against its profile', () => {
  const { svg, figure } = first;
  const broken = (form: FigureForm, bytes: Uint8Array, more: Partial<typeof figure.artwork> = {}) =>
    brokenClaims(form, bytes, { ...figure.artwork, ...more });
  const bytesOf = (text: string): Uint8Array => Buffer.from(svgFile(text, ''));

  it('finds a width that is not the claimed one, in every form', async () => {
    for (const form of forms) {
      const bytes = await figureFile(first, form);
      expect((await broken(form, bytes, { width: figure.artwork.width + 3 }))[0], form).toMatch(/^width /);
    }
  });

  it('finds a resolution that is not the claimed one', async () => {
    expect(await broken('png', await renderPng(svg, 200))).toEqual(['200 dpi, not 300']);
  });

  it('finds letters below the claimed size', async () => {
    const small = svg.replace('font-size="7.5px"', 'font-size="5px"');
    expect(await broken('svg', bytesOf(small))).toEqual(['type of 5 pt, below 7.5']);
    expect(await broken('pdf', await renderPdf(small, 'small'))).toEqual(['type of 5 pt, below 7.5']);
    const shrunk = svg.replace(/ transform="([^"]*)" font-family/, ' transform="$1 scale(0.5)" font-family');
    expect(await broken('pdf', await renderPdf(shrunk, 'shrunk'))).toEqual(['type of 3.75 pt, below 7.5']);
  });

  it('finds a colour where greys alone are claimed', async () => {
    for (const form of forms) {
      const bytes = await figureFile(single[2] as DrawnFigure, form);
      expect(await broken(form, bytes, { colours: 'grey' }), form).toEqual(['colours, not grey alone']);
    }
  });

  it('finds a TIFF that is not compressed as claimed, and fonts that a PDF only names', async () => {
    const png = await renderPng(svg, 1000);
    const plain = sharp(png)
      .removeAlpha()
      .tiff({ compression: 'none', xres: 1000 / 25.4, yres: 1000 / 25.4 });
    expect(await broken('tiff', await plain.toBuffer())).toEqual(['a compression other than LZW']);
    const pdf = Buffer.from(await figureFile(first, 'pdf')).toString('latin1');
    const without = pdf.replaceAll('/FontFile2', '/NoFontHere');
    expect((await broken('pdf', Buffer.from(without, 'latin1')))[0]).toMatch(/^fonts not embedded: /);
  });
});

describe('figures in panels', () => {
  it('stand in the place of the first of them, and take one number', async () => {
    const drawn = await drawnWith({ panels });
    const ids = drawn.map(({ figure }) => figure.id);
    expect(ids.slice(0, 3)).toEqual(['eye-flow', 'accuracy', 'acuity-cumulative']);
    for (const member of panels[0].figures) expect(ids).not.toContain(member);
    expect(drawn.map(({ figure }) => figure.number)).toEqual(ids.map((_, i) => i + 1));
  });

  it('have the width of the whole, a letter above each, and texts that neither overlap nor leave it', async () => {
    const picture = await pictureOf(together.svg);
    expect(picture.width).toBe(artworks['journal-double']?.width);
    expect({ overlapping: overlapping(picture), outside: outside(picture) }).toEqual({ overlapping: [], outside: [] });
    const letters = picture.texts.filter(({ size }) => size === 10);
    expect(letters.map(({ text }) => text)).toEqual(['A', 'B']);
    const ids = [...together.svg.matchAll(/\bid="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('carry the title, legend and words of every panel, and the rows of all', () => {
    const { title, legend, alt, from } = together.figure;
    for (const text of [title, legend, alt]) expect(text).toMatch(/^\(A\) .*\(B\) /);
    for (const id of ['prediction-error', 'accuracy-shares']) {
      const one = single.find(({ figure }) => figure.id === id)?.figure;
      expect(legend).toContain(one?.legend);
      expect(from).toEqual(expect.arrayContaining([...(one?.from ?? [])]));
    }
  });

  it('are one plain figure where the data allow, or the reader wants, only one of them', async () => {
    const drawn = await drawnWith({ panels, leave_out: ['accuracy-shares'] });
    const [alone] = drawn.filter(({ figure }) => figure.id === 'prediction-error');
    expect(alone?.figure.artwork).toEqual(artworks['journal-double']);
    expect(alone?.figure.panels).toBeUndefined();
  });
});

// IEC 61966-2-1: Y of pure red is 0.2126, which encodes as 1.055 · 0.2126^(1/2.4) − 0.055 = 0.4985, or 127 of 255;
// of pure green 0.7152, 0.8629, 220; of pure blue 0.0722, 0.2979, 76.
it.each([
  ['#ff0000', '#7f7f7f'],
  ['#00ff00', '#dcdcdc'],
  ['#0000ff', '#4c4c4c'],
  ['#ffffff', '#ffffff'],
  ['#000000', '#000000'],
])('the grey as light as %s is %s', (colour, grey) => {
  expect(greyOf(colour)).toBe(grey);
});
