import type { TableRow, TypesetTable } from '../../records/report.js';
import type { Words } from '../../words/index.js';
import { headTexts, tableLayout } from './layout.js';

/**
 * A table as LaTeX: three rules of booktabs, the head repeated on every page, footnotes below. To be read into a
 * manuscript with \input; `latexDocument` shows the packages it needs.
 *
 * @example tableLatex(table, words) // '% Table 3 …\n\setcounter{table}{2}…'
 */
export function tableLatex(table: TypesetTable, words: Words): string {
  const { id, number, title, footnotes } = table;
  const head = `${cellsLatex(headTexts(table, words))}\n\\midrule`;
  return [
    `% ${words.page.table(number)}: array, booktabs, longtable`,
    `\\setcounter{table}{${number - 1}}`,
    '\\begingroup\\footnotesize\\setlength{\\tabcolsep}{3pt}',
    `\\begin{longtable}{@{}${columnsLatex(tableLayout(table).shares)}@{}}`,
    `\\caption{${latexText(title)}}\\label{tab:${id}}\\\\`,
    `\\toprule\n${head}\n\\endfirsthead`,
    `\\toprule\n${head}\n\\endhead`,
    '\\bottomrule\n\\endfoot',
    ...table.rows.map((row) => rowLatex(row, table.head.length)),
    '\\end{longtable}',
    ...footnotes.map((note) => `\\noindent ${latexText(note)}\\par`),
    '\\endgroup',
    '',
  ].join('\n');
}

/** A document that reads all tables in and compiles as it stands; tables wider than a page lie on their side. */
export function latexDocument(tables: readonly { file: string; table: TypesetTable }[]): string {
  return [
    '\\documentclass[10pt]{article}',
    '\\usepackage[utf8]{inputenc}',
    '\\usepackage[T1]{fontenc}',
    '\\usepackage{textcomp}',
    '\\usepackage[a4paper,margin=20mm]{geometry}',
    '\\usepackage{array,booktabs,longtable,lscape}',
    '\\begin{document}',
    ...tables.map(({ file, table }) => {
      const input = `\\input{${file}}`;
      return tableLayout(table).isWide ? `\\begin{landscape}\n${input}\n\\end{landscape}` : `${input}\n\\clearpage`;
    }),
    '\\end{document}',
    '',
  ].join('\n');
}

function columnsLatex(shares: readonly number[]): string {
  return shares
    .map((share, column) => {
      const side = column === 0 ? '\\raggedright' : '\\raggedleft';
      const width = `\\dimexpr ${share.toFixed(4)}\\linewidth-2\\tabcolsep\\relax`;
      return `>{${side}\\arraybackslash}p{${width}}`;
    })
    .join('');
}

function rowLatex({ label, indent, cells }: TableRow, width: number): string {
  if (cells.length === 0) return `\\multicolumn{${width}}{@{}l}{\\textbf{${latexText(label)}}}\\\\`;
  const stub = indent === 1 ? `\\hspace*{1em}${latexText(label)}` : latexText(label);
  return `${[stub, ...cells.map(({ text }) => latexText(text))].join(' & ')} \\\\`;
}

function cellsLatex(texts: readonly string[]): string {
  return `${texts.map(latexText).join(' & ')} \\\\`;
}

/** Signs that LaTeX reads as its own, and those that its text fonts lack. */
const signs: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}',
  '{': '\\{',
  '}': '\\}',
  $: '\\$',
  '&': '\\&',
  '#': '\\#',
  '%': '\\%',
  _: '\\_',
  '^': '\\textasciicircum{}',
  '~': '\\textasciitilde{}',
  '<': '$<$',
  '>': '$>$',
  '"': "''",
  '[': '{[}',
  '*': '{*}',
  '\u2212': '$-$',
  '\u00b1': '$\\pm$',
  '\u00d7': '$\\times$',
  '\u00b7': '$\\cdot$',
  '\u2264': '$\\leq$',
  '\u2265': '$\\geq$',
  '\u2260': '$\\neq$',
  '\u2248': '$\\approx$',
  '\u221a': '$\\surd$',
  '\u03a3': '$\\Sigma$',
  '\u2211': '$\\sum$',
  '\u0394': '$\\Delta$',
  '\u03bc': '$\\mu$',
  '\u03c6': '$\\varphi$',
  '\u03c7': '$\\chi$',
  '\u00b0': '\\textdegree{}',
  '\u00b2': '\\textsuperscript{2}',
  '\u00b3': '\\textsuperscript{3}',
  '\u2020': '\\dag{}',
  '\u2021': '\\ddag{}',
  '\u2192': '$\\rightarrow$',
  '\u2190': '$\\leftarrow$',
  '\u2016': '$\\|$',
  '\u00b6': '\\P{}',
  '\u00a7': '\\S{}',
  '\u2003': '\\quad{}',
  '\u202f': '\\,',
  '\u00a0': '~',
};

/** Text whose signs LaTeX does not read as its own; letters of European languages stand as they are. */
export function latexText(text: string): string {
  return Array.from(text, (sign) => signs[sign] ?? sign).join('');
}
