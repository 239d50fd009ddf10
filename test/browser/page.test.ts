import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { folderWith, report, runIn, textOf } from '../pipeline/publish-audit.js';
import { browserPresent, launchBrowser } from './chromium.js';

// WCAG 2.2, criteria 1.3.1, 1.4.10 (320 CSS px wide: 360 less a scroll bar), 2.1.1, 2.4.1, 2.4.7, 4.1.2.
const versions = ['publication', 'internal'] as const;
const folder = mkdtempSync(join(tmpdir(), 'halfdiopter-page-'));
const pathOf = (version: string): string => join(folder, `${version}.html`);

let browser: Browser;
/** How many the manifest lists. */
let figures: number;
let open: Page[] = [];

beforeAll(async () => {
  if (!browserPresent) return;
  const io = folderWith();
  await runIn(io);
  figures = Object.keys(JSON.parse(textOf(io, `${report}/manifest.json`)).figures).length;
  expect(figures).toBeGreaterThan(5);
  for (const version of versions) writeFileSync(pathOf(version), textOf(io, `${report}/${version}/index.html`));
  browser = await launchBrowser();
}, 60_000);
afterEach(async () => {
  for (const page of open) await page.context().close();
  open = [];
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true });
});

interface Visit {
  page: Page;
  /** Anything the console said, any error, any request but for the page itself. */
  complaints: string[];
}

async function visit(version: string, options: BrowserContextOptions = {}): Promise<Visit> {
  const page = await (await browser.newContext({ viewport: { width: 1200, height: 900 }, ...options })).newPage();
  open.push(page);
  const address = pathToFileURL(pathOf(version)).href;
  const complaints: string[] = [];
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => {
    if (request.url().split('#')[0] !== address) complaints.push(request.url());
  });
  await page.goto(address);
  return { page, complaints };
}

/** What has the focus: its class, or its tag; and whether a ring shows it. */
function focused(page: Page): Promise<{ name: string; ring: boolean; inView: boolean }> {
  return page.evaluate(`(() => {
    const it = document.activeElement;
    const { outlineStyle, outlineWidth } = getComputedStyle(it);
    const box = it.getBoundingClientRect();
    return {
      name: it.className || it.tagName,
      ring: outlineStyle !== 'none' && outlineWidth !== '0px',
      inView: box.bottom > 0 && box.top < innerHeight,
    };
  })()`);
}

describe.skipIf(!browserPresent)('the report page in a browser', () => {
  describe.each(versions)('%s', (version) => {
    it('opens from the disk without a complaint, a request or a script that fails', async () => {
      const { page, complaints } = await visit(version);
      await page.mouse.wheel(0, 20_000);
      for (const mark of await page.locator('figure svg path').all()) {
        if ((await mark.getAttribute('aria-label')) !== null) await mark.dispatchEvent('pointerover');
      }
      expect(complaints).toEqual([]);
    });

    it('is as complete without scripts', async () => {
      const { page } = await visit(version, { javaScriptEnabled: false });
      expect(await page.locator('figure svg').count()).toBe(figures);
      expect(await page.locator('table').count()).toBeGreaterThanOrEqual(7);
      expect(await page.locator('main > section').count()).toBeGreaterThanOrEqual(8);
    });

    it.each([360, 768, 1200])(
      'is never wider than a window of %i px; what is wider scrolls in itself',
      async (width) => {
        const { page } = await visit(version, { viewport: { width, height: 800 } });
        const size = (what: string): Promise<number> => page.evaluate(`document.documentElement.${what}`);
        expect(await size('scrollWidth')).toBeLessThanOrEqual(await size('clientWidth'));
        const cut = `[...document.querySelectorAll('table, figure svg')].filter((it) => {
        const holder = it.closest('.wide, .paper');
        return !holder || (it.scrollWidth > holder.clientWidth && getComputedStyle(holder).overflowX !== 'auto');
      }).length`;
        expect(await page.evaluate(cut)).toBe(0);
      },
    );

    it('is reached with the keyboard alone: the way past the contents first, then every figure and table', async () => {
      const { page } = await visit(version);
      await page.keyboard.press('Tab');
      expect(await focused(page)).toMatchObject({ name: 'skip', ring: true, inView: true });
      const wanted = await page.locator('.wide, .paper, summary').count();
      let met = 0;
      for (let steps = 0; steps < 200; steps++) {
        await page.keyboard.press('Tab');
        const { name, ring, inView } = await focused(page);
        if (name === 'BODY' || name === 'HTML') break;
        expect([name, ring, inView]).toEqual([name, true, true]);
        if (/^(?:wide|paper|rule)$/.test(name)) met += 1;
      }
      expect(met).toBe(wanted);
    });

    it('tells a screen reader its landmarks, headings, tables and figures', async () => {
      const { page } = await visit(version);
      for (const role of ['banner', 'navigation', 'main', 'contentinfo'] as const) {
        expect(await page.getByRole(role).count(), role).toBe(1);
      }
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Twelve eyes worked by hand');
      expect(await page.getByRole('heading', { level: 2 }).count()).toBeGreaterThanOrEqual(8);
      expect(await page.getByRole('table', { name: /Refractive accuracy/ }).count()).toBe(1);
      expect(await page.getByRole('figure').count()).toBe(figures);
      expect(await page.getByRole('img', { name: /^Histogram of the prediction error/ }).count()).toBe(1);
      expect(await page.getByRole('rowheader').count()).toBeGreaterThan(50);
    });

    it('is dark where the reader wants it dark, its figures on white paper', async () => {
      const colour = async (scheme: 'light' | 'dark', of: string): Promise<string> => {
        const { page } = await visit(version, { colorScheme: scheme });
        return page.evaluate(`getComputedStyle(document.querySelector('${of}')).backgroundColor`);
      };
      expect(await colour('light', 'body')).toBe('rgb(252, 251, 248)');
      expect(await colour('dark', 'body')).toBe('rgb(20, 25, 30)');
      expect(await colour('dark', '.paper')).toBe('rgb(255, 255, 255)');
    });

    it.each(['A4', 'Letter'])(
      'prints on %s without its contents, and splits neither rows nor figures',
      async (format) => {
        const { page } = await visit(version);
        const pdf = await page.pdf({ format });
        expect(pdf.subarray(0, 5).toString('latin1')).toBe('%PDF-');
        await page.emulateMedia({ media: 'print' });
        const style = (of: string, what: string): Promise<string> =>
          page.evaluate(`getComputedStyle(document.querySelector('${of}')).${what}`);
        expect(await style('nav', 'display')).toBe('none');
        for (const of of ['table', 'tr', 'tbody', 'figure', '.number'])
          expect(await style(of, 'breakInside'), of).toBe('avoid');
        expect(await style('thead', 'display')).toBe('table-header-group');
        // Text width of the sheet at 96 px an inch, less margins of 16 mm.
        const sheet = format === 'A4' ? 210 : 215.9;
        await page.setViewportSize({ width: Math.floor(((sheet - 32) / 25.4) * 96), height: 900 });
        const overflow = `document.documentElement.scrollWidth - document.documentElement.clientWidth`;
        expect(await page.evaluate(overflow)).toBeLessThanOrEqual(0);
      },
    );
  });

  describe('values of single eyes', () => {
    const tip = (page: Page): Promise<string | null> => page.locator('.tip').textContent();

    it('are told on hover on the page that stays in the clinic', async () => {
      const { page } = await visit('internal');
      const mark = page.locator('#figure-double-angle svg [aria-label]').first();
      await mark.scrollIntoViewIfNeeded();
      const name = await mark.getAttribute('aria-label');
      // The scroll that brought the mark into view takes the tip away once more when it ends.
      const hovered = async (): Promise<string | null> => {
        await mark.dispatchEvent('pointerover', { bubbles: true });
        return tip(page);
      };
      await expect.poll(hovered).toBe(name);
      expect(name).toMatch(/^ZQX\d{4} (?:right|left)/);
    });

    it('are walked with the arrow keys, from left to right and round', async () => {
      const { page } = await visit('internal');
      const paper = page.locator('#figure-double-angle .paper');
      const marks = await paper.locator('svg [aria-label]').count();
      await paper.focus();
      await page.keyboard.press('ArrowRight');
      const first = await tip(page);
      // Focus scrolls figures into view, and readers scroll on: what the keys have reached stays.
      await page.evaluate(
        `new Promise((done) => { addEventListener('scroll', () => done(), { once: true }); scrollBy(0, 20); })`,
      );
      expect(await tip(page)).toBe(first);
      const place = (): Promise<number> =>
        page.evaluate(`document.querySelector('.here').getBoundingClientRect().left`);
      let left = await place();
      for (let step = 1; step < marks; step++) {
        await page.keyboard.press('ArrowRight');
        expect(await place()).toBeGreaterThanOrEqual(left);
        left = await place();
      }
      await page.keyboard.press('ArrowRight');
      expect(await tip(page)).toBe(first);
      await page.keyboard.press('Escape');
      expect(await tip(page)).toBe('');
    });

    it('are told nowhere on the page that may be sent', async () => {
      const { page } = await visit('publication');
      expect(await page.locator('.tip, script, [data-walk]').count()).toBe(0);
      expect(await page.locator('figure svg [aria-label]').count()).toBe(0);
    });
  });
});
