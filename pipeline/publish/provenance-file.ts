import { csvLine } from '../../src/format/csv.js';
import type { Figure, TypesetTable } from '../../src/records/report.js';
import type { Words } from '../../src/words/index.js';
import { rowsBehind } from '../provenance.js';
import { type OutputFile, textFile } from './replace.js';

/** provenance.csv: for every table and figure, by its id, the rows of results.csv that it prints. */
export function provenanceFile(
  path: string,
  tables: readonly TypesetTable[],
  figures: readonly Figure[],
  { page, provenance }: Words,
): OutputFile {
  const lines = [
    ...tables.map((table) => ({ ...table, exhibit: page.table(table.number), from: rowsBehind(table) })),
    ...figures.map((figure) => ({ ...figure, exhibit: page.figure(figure.number) })),
  ].flatMap(({ provenance: id = '', exhibit, id: name, from }) =>
    from.map((key) => csvLine([id, exhibit, name, ...keyParts(key)], ',')),
  );
  return textFile(path, [csvLine(provenance.head, ','), ...lines].join(''));
}

/** Measure, group and statistic of a key; a group may hold the mark that joins them. */
function keyParts(key: string): readonly string[] {
  const [first, last] = [key.indexOf('|'), key.lastIndexOf('|')];
  return [key.slice(0, first), key.slice(first + 1, last), key.slice(last + 1)];
}
