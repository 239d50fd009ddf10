import type { Plan } from '../src/records/plan.js';
import type { TypesetTable } from '../src/records/report.js';
import type { Results } from '../src/results/index.js';
import { publishedTables } from '../src/tables/index.js';
import type { Words } from '../src/words/index.js';

/**
 * Stage 6 · tabulate: which numbers does the reader see, and in what words?
 *
 * in       results rows, from analyse
 * out      typeset tables, numbered
 * promise  every number of a cell is value, limit or n of a results row, by key; no arithmetic beyond typesetting
 *
 * Tables named in `outputs.order` come first, in that order, the others behind them in the order of the report;
 * `outputs.leave_out` leaves out. Tables that the data do not allow take no number.
 */
export function tabulate(results: Results, plan: Plan, words: Words): readonly TypesetTable[] {
  return tableOrder(plan)
    .flatMap((id) => publishedTables.get(id)?.(results, plan, words) ?? [])
    .map((table, index) => ({ ...table, number: index + 1 }));
}

function tableOrder({ outputs }: Plan): readonly string[] {
  const wanted = new Set([...outputs.order, ...publishedTables.keys()]);
  return [...wanted].filter((id) => publishedTables.has(id) && !outputs.leave_out.includes(id));
}
