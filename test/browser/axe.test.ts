// axe-core, the rules of WCAG 2.0 to 2.2 levels A and AA and its best practices, run inside the opened report.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { folderWith, report, runIn, textOf } from '../pipeline/publish-audit.js';
import { browserPresent, launchBrowser } from './chromium.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'halfdiopter-axe-'));
const versions = ['publication', 'internal'] as const;
let browser: Browser;

beforeAll(async () => {
  if (!browserPresent) return;
  const io = folderWith();
  await runIn(io);
  for (const version of versions) {
    writeFileSync(join(folder, `${version}.html`), textOf(io, `${report}/${version}/index.html`));
  }
  browser = await launchBrowser();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true });
});

/** 'rule: first place', for every rule broken; and how many rules the page kept. */
async function judged(path: string, width: number, colorScheme: 'light' | 'dark') {
  const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme });
  const page = await context.newPage();
  await page.goto(pathToFileURL(path).href);
  await page.evaluate(axe);
  const told = (await page.evaluate(`axe.run().then(({ violations, passes }) => ({
    violations: violations.map(({ id, nodes }) => id + ': ' + nodes[0].html.slice(0, 120)),
    passes: passes.length,
  }))`)) as { violations: readonly string[]; passes: number };
  await context.close();
  return told;
}

describe.skipIf(!browserPresent).each(versions)('axe-core in the %s page', (version) => {
  it.each([
    [1200, 'light'],
    [1200, 'dark'],
    [360, 'light'],
  ] as const)('finds no violation at %i px, %s', async (width, scheme) => {
    const { violations, passes } = await judged(join(folder, `${version}.html`), width, scheme);
    expect(violations).toEqual([]);
    expect(passes).toBeGreaterThan(20);
  });

  it('finds a violation where there is one', async () => {
    const spoiled = join(folder, `${version}-spoiled.html`);
    const text = readFileSync(join(folder, `${version}.html`), 'utf8');
    writeFileSync(spoiled, text.replace(/<html lang="[^"]*"/, '<html'));
    const { violations } = await judged(spoiled, 1200, 'light');
    expect(violations.map((told) => told.split(':')[0])).toContain('html-has-lang');
  });
});
