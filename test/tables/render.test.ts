import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { tabulate } from '../../pipeline/6-tabulate.js';
import type { TypesetTable } from '../../src/records/report.js';
import { indexResults } from '../../src/results/index.js';
import { tableCsv } from '../../src/tables/render/csv.js';
import { tableHtml } from '../../src/tables/render/html.js';
import { latexDocument, latexText, tableLatex } from '../../src/tables/render/latex.js';
import { tableLayout } from '../../src/tables/render/layout.js';
import { tableMarkdown } from '../../src/tables/render/markdown.js';
import { en } from '../../src/words/index.js';
import { comparedRows } from './compared.js';
import { planOf } from './plan.js';

const tables = tabulate(indexResults(comparedRows), planOf(), en);

/** A table with everything that a format could stumble over. */
const awkward: TypesetTable = {
  id: 'awkward',
  number: 7,
  title: 'Signs <b> & "quotes" | pipes',
  head: [{ text: 'Value' }, { text: 'a;b', n: 2911 }],
  rows: [
    { label: 'Block', indent: 0, cells: [] },
    { label: '=SUM(1)', indent: 1, cells: [{ text: '\u22120.06 (\u22120.10 to 1,234.50)*', from: [] }] },
    { label: '=SUM(2)', indent: 0, cells: [{ text: '1,371/2,911, 47.1', from: [] }] },
  ],
  footnotes: ['* 5 _few_'],
};

/** Numbers of a text, signs and thousands made alike. */
const numbers = (text: string): readonly string[] =>
  text
    .replaceAll('\u2212', '-')
    .replace(/(?<=\d),(?=\d{3}(?!\d))/g, '')
    .match(/-?\d+(?:\.\d+)?/g) ?? [];

const cellTexts = (table: TypesetTable) => table.rows.flatMap(({ cells }) => cells.map(({ text }) => text));

describe('renderers', () => {
  it.each(tables.map((table) => [table.id, table] as const))(
    'carry the same numbers in every format: %s',
    (_, table) => {
      const wanted = numbers(cellTexts(table).join(' '));
      const csv: string[][] = parse(tableCsv(table, 'point', en));
      const csvCells = csv.slice(2, 2 + table.rows.length).flatMap((line) => line.slice(1));
      expect(numbers(csvCells.join(' '))).toEqual(wanted);
      const html = [...tableHtml(table, en).matchAll(/<td>(.*?)<\/td>/g)].map((found) => found[1]);
      expect(numbers(html.join(' '))).toEqual(wanted);
      const markdown = tableMarkdown(table, en)
        .split('\n')
        .slice(4, 4 + table.rows.length)
        .flatMap((line) => line.split(/(?<!\\) \| /).slice(1));
      expect(numbers(markdown.join(' '))).toEqual(wanted);
      const latex = tableLatex(table, en).split('\\endfoot\n')[1]?.split('\\end{longtable}')[0] ?? '';
      const cells = latex.split('\n').flatMap((line) => line.split(/(?<!\\) & /).slice(1));
      expect(numbers(cells.join(' ').replaceAll('$-$', '-'))).toEqual(wanted);
      expect(wanted.length).toBeGreaterThan(20);
    },
  );
});

describe('tableCsv', () => {
  it('writes lines of one width, hyphens for minus, no thousands marks', () => {
    const lines: string[][] = parse(tableCsv(awkward, 'point', en));
    expect(lines).toEqual([
      ['Table 7. Signs <b> & "quotes" | pipes', ''],
      ['Value', 'a;b (n = 2911)'],
      ['Block', ''],
      ['  =SUM(1)', '-0.06 (-0.10 to 1234.50)*'],
      ["'=SUM(2)", '1371/2911, 47.1'],
      ['* 5 _few_', ''],
    ]);
  });

  it('writes semicolons and decimal commas where spreadsheets read commas', () => {
    const lines: string[][] = parse(tableCsv(awkward, 'comma', en), { delimiter: ';' });
    expect(lines[1]).toEqual(['Value', 'a;b (n = 2911)']);
    expect(lines[3]).toEqual(['  =SUM(1)', '-0,06 (-0,10 to 1234,50)*']);
  });
});

describe('tableHtml', () => {
  const html = tableHtml(awkward, en);

  it('escapes what is text', () => {
    expect(html).toContain('<caption>Table 7. Signs &lt;b&gt; &amp; &quot;quotes&quot; | pipes</caption>');
  });

  it('tells screen readers which head belongs to which cells', () => {
    expect(html).toContain('<th scope="col">a;b <span class="n">(n = 2,911)</span></th>');
    expect(html).toContain('<tr class="block"><th scope="rowgroup" colspan="2">Block</th></tr>');
    expect(html).toContain('<tr class="inner"><th scope="row">=SUM(1)</th>');
    expect(html).toContain('<tfoot>\n<tr><td colspan="2">* 5 _few_</td></tr>\n</tfoot>');
  });

  it('puts each block into a row group', () => {
    expect(html.match(/<tbody>/g)).toHaveLength(2);
  });
});

describe('tableMarkdown', () => {
  it('keeps its signs from being read as Markdown', () => {
    const lines = tableMarkdown(awkward, en).split('\n');
    expect(lines[0]).toBe('**Table 7. Signs \\<b> & "quotes" \\| pipes**');
    expect(lines[2]).toBe('| Value | a;b (n = 2,911) |');
    expect(lines[4]).toBe('| **Block** |  |');
    expect(lines[5]).toBe('| \u2003=SUM(1) | \u22120.06 (\u22120.10 to 1,234.50)\\* |');
    expect(lines).toContain('\\* 5 \\_few\\_');
  });
});

describe('tableLatex', () => {
  it('has three rules, a head for every page, and the number that all other forms have', () => {
    const lines = tableLatex(awkward, en).split('\n');
    expect(lines).toContain('\\setcounter{table}{6}');
    expect(lines).toContain("\\caption{Signs $<$b$>$ \\& ''quotes'' | pipes}\\label{tab:awkward}\\\\");
    expect(lines.filter((line) => line === '\\toprule')).toHaveLength(2);
    expect(lines.filter((line) => line === '\\midrule')).toHaveLength(2);
    expect(lines.filter((line) => line === '\\bottomrule')).toHaveLength(1);
    expect(lines).toContain('\\multicolumn{2}{@{}l}{\\textbf{Block}}\\\\');
    expect(lines).toContain('\\hspace*{1em}=SUM(1) & $-$0.06 ($-$0.10 to 1,234.50){*} \\\\');
    expect(lines.join('\n')).not.toContain('|c|');
  });

  // The ten signs that TeX reads as its own: Knuth, The TeXbook (1984), chapter 7.
  it('escapes all that TeX reads as its own', () => {
    expect(latexText('a\\b{c}$d&e#f%g_h^i~j')).toBe(
      'a\\textbackslash{}b\\{c\\}\\$d\\&e\\#f\\%g\\_h\\textasciicircum{}i\\textasciitilde{}j',
    );
  });

  it('reads every table into one document, the wide ones on their side', () => {
    const wide = { ...awkward, head: Array.from({ length: 9 }, (_, i) => ({ text: `A long column head ${i}` })) };
    const text = latexDocument([
      { file: '7-awkward', table: awkward },
      { file: '8-wide', table: wide },
    ]);
    expect(text).toContain('\\input{7-awkward}\n\\clearpage');
    expect(text).toContain('\\begin{landscape}\n\\input{8-wide}');
  });
});

describe('tableLayout', () => {
  it.each(tables.map((table) => [table.id, table] as const))('shares the whole width out: %s', (_, table) => {
    const { shares } = tableLayout(table);
    expect(shares).toHaveLength(table.head.length);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(Math.min(...shares)).toBeGreaterThan(0.03);
  });
});
