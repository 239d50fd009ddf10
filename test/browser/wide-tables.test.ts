// A table of many columns in print: across the sheet, in type that can be read.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { style } from '../../src/page/style.js';
import type { TypesetTable } from '../../src/records/report.js';
import { tableHtml } from '../../src/tables/render/html.js';
import { en } from '../../src/words/index.js';
import { browserPresent, launchBrowser } from './chromium.js';

function tableOf(columns: number): TypesetTable {
  const cell = { text: '−0.38 (−0.43 to −0.33)', from: [] };
  const head = [{ text: 'Statistic (95 % CI)' }, ...Array(columns).fill({ text: 'With the rule', n: 172 })];
  const rows = Array(12).fill({ label: 'Vector mean, D', indent: 1, cells: Array(columns).fill(cell) });
  return { id: 'made-up', number: 1, title: 'Made up', head, rows, footnotes: ['Made up.'] };
}

describe.skipIf(!browserPresent)('a printed table', () => {
  let browser: Awaited<ReturnType<typeof launchBrowser>>;
  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterAll(() => browser.close());

  /** Width and height of the sheet in points, the size of the type in points, what does not fit in pixels. */
  async function printed(columns: number) {
    const page = await browser.newPage();
    await page.setContent(
      `<html><head><style>${style}</style></head><body><div class="wide">${tableHtml(tableOf(columns), en)}</div></body></html>`,
    );
    const pdf = (await page.pdf({ format: 'A4', preferCSSPageSize: true })).toString('latin1');
    const [, width = '', height = ''] = /MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf) ?? [];
    await page.emulateMedia({ media: 'print' });
    // Text width of the sheet at 96 px an inch, less margins of 16 mm.
    await page.setViewportSize({ width: Math.floor(((Number(width) / 72) * 25.4 - 32) * (96 / 25.4)), height: 900 });
    const size = await page.evaluate('parseFloat(getComputedStyle(document.querySelector("tbody td")).fontSize)');
    const overflow = await page.evaluate(
      'document.querySelector(".wide").scrollWidth - document.querySelector(".wide").clientWidth',
    );
    await page.close();
    return { isAcross: Number(width) > Number(height), type: Math.round((size as number) * 7.5) / 10, overflow };
  }

  it('of few columns stands upright, in 8 points', async () => {
    expect(await printed(3)).toEqual({ isAcross: false, type: 8, overflow: 0 });
  });

  it.each([6, 9])('of %d columns lies across the sheet and fits it, in 7.5 points', async (columns) => {
    expect(await printed(columns)).toEqual({ isAcross: true, type: 7.5, overflow: 0 });
  });
});
