// The files as the programs read them that journals and authors have: Writer (LibreOffice), LaTeX, poppler.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { tabulate } from '../../pipeline/6-tabulate.js';
import { tableFiles } from '../../pipeline/publish/table-files.js';
import { indexResults } from '../../src/results/index.js';
import { en } from '../../src/words/index.js';
import { comparedRows } from '../tables/compared.js';
import { planOf } from '../tables/plan.js';
import { isPresent, read } from './present.js';

const plan = planOf();
const tables = tabulate(indexResults(comparedRows), plan, en);
const forms = { ...plan, outputs: { ...plan.outputs, tables: ['docx', 'tex'] as const } };
const folder = mkdtempSync(join(tmpdir(), 'halfdiopter-tables-'));
for (const { path, bytes } of await tableFiles(tables, forms, en)) {
  writeFileSync(join(folder, path.replace('publication/tables/', '')), bytes);
}
afterAll(() => rmSync(folder, { recursive: true }));

/** Numbers of a text, in order, whatever stands between them. */
const numbers = (text: string): readonly string[] => text.match(/\d+(?:[.,]\d+)*/g) ?? [];
const textOf = (pdf: string): string => read('pdftotext', ['-layout', pdf, '-'], folder);
const wanted = tables.flatMap(({ rows }) => rows.flatMap(({ cells }) => cells.flatMap(({ text }) => numbers(text))));

const poppler = isPresent('pdftotext', '-v');

describe.skipIf(!poppler || !isPresent('soffice', '--version'))('Writer', () => {
  it('opens tables.docx and shows every number of every table, each table on pages of its own', () => {
    read(
      'soffice',
      ['--headless', '--convert-to', 'pdf', `-env:UserInstallation=file://${folder}/user`, 'tables.docx'],
      folder,
    );
    const text = textOf('tables.pdf');
    const shown = new Set(numbers(text));
    expect(wanted.filter((number) => !shown.has(number))).toEqual([]);
    expect(text.split('\f').length - 1).toBeGreaterThanOrEqual(tables.length);
    const [table] = tables.filter(({ id }) => id === 'comparison');
    const head = table?.head[0]?.text ?? 'absent';
    const pages = text.split('\f').filter((page) => page.includes(head));
    expect(pages.length).toBeGreaterThan(1);
  }, 120_000);
});

describe.skipIf(!poppler || !isPresent('pdflatex', '--version'))('LaTeX', () => {
  it('compiles tables.tex without a fault or an overfull line, to the same numbers', () => {
    const log = read('pdflatex', ['-interaction=nonstopmode', '-halt-on-error', 'tables.tex'], folder);
    expect(log).not.toMatch(/Overfull|Missing character|undefined/);
    const shown = new Set(numbers(textOf('tables.pdf')));
    expect(wanted.filter((number) => !shown.has(number))).toEqual([]);
  }, 120_000);
});
