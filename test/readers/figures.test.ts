// The files as other programs read them: poppler for PDF, libtiff for TIFF, the browser's own reader for SVG.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { draw } from '../../pipeline/6-draw.js';
import { renderSvg } from '../../pipeline/artwork/svg.js';
import { figureFiles } from '../../pipeline/publish/figure-files.js';
import type { DrawnFigure } from '../../src/page/content.js';
import { indexResults } from '../../src/results/index.js';
import { en } from '../../src/words/index.js';
import { browserPresent, launchBrowser } from '../browser/chromium.js';
import { inventedEyes, inventedPlan, inventedPoints, inventedRows } from '../charts/synthetic.js';
import { isPresent, read } from './present.js';

const eyes = inventedEyes(60);
const drawn: DrawnFigure[] = [];
for (const figure of draw(indexResults(inventedRows(eyes)), inventedPoints(eyes), inventedPlan(), en)) {
  drawn.push({ figure, svg: await renderSvg(figure, { identified: false }) });
}
const folder = mkdtempSync(join(tmpdir(), 'halfdiopter-figures-'));
const files = await figureFiles(drawn, ['svg', 'pdf', 'tiff'], () => {});
const nameOf = (path: string): string => path.replace('publication/figures/', '');
for (const { path, bytes } of files) writeFileSync(join(folder, nameOf(path)), bytes);
const names = (form: string): readonly string[] =>
  files.map(({ path }) => nameOf(path)).filter((n) => n.endsWith(form));
afterAll(() => rmSync(folder, { recursive: true }));

describe.skipIf(!isPresent('pdffonts', '-v'))('poppler', () => {
  it.each(names('.pdf'))('finds every font inside, no picture in pixels, and the width of a column: %s', (name) => {
    // Columns of pdffonts: name, type, encoding, emb, sub, uni, object.
    const fonts = read('pdffonts', [name], folder).trim().split('\n').slice(2);
    expect(fonts.length).toBeGreaterThan(0);
    for (const font of fonts) expect(font).toMatch(/^[A-Z]{6}\+Arimo-\w+ +CID TrueType +Identity-H +yes yes yes /);
    expect(read('pdfimages', ['-list', name], folder).trim().split('\n')).toHaveLength(2);
    // 84 mm are 238.11 pt.
    expect(read('pdfinfo', [name], folder)).toMatch(/Page size: +238\.11 x/);
  });

  it('finds the words of the picture as text', () => {
    const text = read('pdftotext', ['-layout', names('.pdf')[1] ?? '', '-'], folder);
    expect(text).toContain('Prediction error, D');
  });
});

describe.skipIf(!isPresent('tiffinfo', '-v'))('libtiff', () => {
  // 84 mm at 1000 dots per inch are 3307 pixels.
  it.each(names('.tiff'))('finds LZW, the resolution and the width: %s', (name) => {
    const told = read('tiffinfo', [name], folder);
    expect(told).toContain('Compression Scheme: LZW');
    expect(told).toContain('Resolution: 1000, 1000 pixels/inch');
    expect(told).toContain('Image Width: 3307 ');
  });
});

describe.skipIf(!browserPresent)('Chromium', () => {
  it('parses every SVG as XML and gives it the width of a column', async () => {
    const browser = await launchBrowser();
    const page = await browser.newPage();
    for (const name of names('.svg')) {
      await page.goto(pathToFileURL(join(folder, name)).href);
      const root = await page.evaluate(
        `[document.documentElement.localName, document.querySelector('parsererror') === null, document.documentElement.width.baseVal.value]`,
      );
      // 84 mm are 317.48 px of 96 to the inch.
      expect(root).toEqual(['svg', true, expect.closeTo((84 / 25.4) * 96, 1)]);
    }
    await browser.close();
  });
});
