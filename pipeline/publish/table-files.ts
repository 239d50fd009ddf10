import type { Plan } from '../../src/records/plan.js';
import type { TypesetTable } from '../../src/records/report.js';
import { tableCsv } from '../../src/tables/render/csv.js';
import { latexDocument, tableLatex } from '../../src/tables/render/latex.js';
import { tableMarkdown } from '../../src/tables/render/markdown.js';
import type { Words } from '../../src/words/index.js';
import { wordTables } from '../documents/word.js';
import { type OutputFile, textFile } from './replace.js';

const folder = 'publication/tables';
const nameOf = ({ number, id }: TypesetTable): string => `${number}-${id}`;

/** Tables in the forms asked for; Word and LaTeX have one more document that holds them all. */
export async function tableFiles(
  tables: readonly TypesetTable[],
  { outputs }: Plan,
  words: Words,
): Promise<readonly OutputFile[]> {
  const files: OutputFile[] = [];
  const inWord = (shown: readonly TypesetTable[]) => wordTables(shown, outputs.table_font, words);
  for (const table of tables) {
    const path = `${folder}/${nameOf(table)}`;
    // A byte-order mark tells spreadsheets that the text is UTF-8.
    const csv = () => textFile(`${path}.csv`, `\ufeff${tableCsv(table, outputs.spreadsheet, words)}`);
    if (outputs.tables.includes('csv')) files.push(csv());
    if (outputs.tables.includes('md')) files.push(textFile(`${path}.md`, tableMarkdown(table, words)));
    if (outputs.tables.includes('docx')) files.push({ path: `${path}.docx`, bytes: await inWord([table]) });
    if (outputs.tables.includes('tex')) files.push(textFile(`${path}.tex`, tableLatex(table, words)));
  }
  if (tables.length === 0) return files;
  if (outputs.tables.includes('docx')) files.push({ path: `${folder}/tables.docx`, bytes: await inWord(tables) });
  const listed = tables.map((table) => ({ file: nameOf(table), table }));
  if (outputs.tables.includes('tex')) files.push(textFile(`${folder}/tables.tex`, latexDocument(listed)));
  return files;
}
