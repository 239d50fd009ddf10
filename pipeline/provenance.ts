import type { Figure, TypesetTable } from '../src/records/report.js';
import type { ResultRow } from '../src/records/result.js';
import { type Results, resultKey } from '../src/results/index.js';
import type { Words } from '../src/words/index.js';
import { sha256 } from './publish/digest.js';
import { resultLine } from './publish/results-file.js';

/** Keys of all results rows that a table prints, each once, in the order of their first place. */
export function rowsBehind({ rows }: Pick<TypesetTable, 'rows'>): readonly string[] {
  return [...new Set(rows.flatMap((row) => row.cells.flatMap((cell) => cell.from)))];
}

/**
 * Tables with a short id that leads from any printout to its rows: it follows from the rows themselves, so that it
 * changes when a number does. It stands in the last footnote, in provenance.csv and in the manifest.
 */
export function tracedTables(tables: readonly TypesetTable[], results: Results, words: Words): readonly TypesetTable[] {
  const idOf = idsOf(results);
  return tables.map((table) => {
    const provenance = idOf('t', table.id, rowsBehind(table));
    return { ...table, provenance, footnotes: [...table.footnotes, words.provenance.note(provenance)] };
  });
}

/** Figures with an id of the same kind, at the end of their legends. */
export function tracedFigures(figures: readonly Figure[], results: Results, words: Words): readonly Figure[] {
  const idOf = idsOf(results);
  return figures.map((figure) => {
    const provenance = idOf('f', figure.id, figure.from);
    return { ...figure, provenance, legend: `${figure.legend} ${words.provenance.note(provenance)}` };
  });
}

function idsOf({ rows }: Results): (kind: 't' | 'f', name: string, from: readonly string[]) => string {
  const byKey = new Map<string, ResultRow>(rows.map((row) => [resultKey(row), row]));
  return (kind, name, from) => {
    const lines = from.map((key) => {
      const row = byKey.get(key);
      if (!row) throw new RangeError(`provenance: ${name} prints ${key}; expected a row of the results`);
      return resultLine(row);
    });
    return `${kind}-${sha256(Buffer.from([name, ...lines].join('\n'))).slice(0, 8)}`;
  };
}
