import { categoriesOf, hasColumn } from '../src/columns/table.js';
import type { Derived } from '../src/records/derived.js';
import type { Plan } from '../src/records/plan.js';
import { groupPair, indexResults, type Results } from '../src/results/index.js';
import { suppressed } from '../src/results/suppress.js';

/** Operators with fewer eyes than are shown by name, as groups. */
function smallOperators({ tables: { eyes } }: Derived, { outputs }: Plan): ReadonlySet<string> {
  if (!hasColumn(eyes, 'surgeon')) return new Set();
  const { names, codes } = categoriesOf(eyes, 'surgeon');
  const sizes = new Array<number>(names.length).fill(0);
  for (const code of codes) sizes[code] = (sizes[code] as number) + 1;
  const small = names.filter((_, code) => code > 0 && (sizes[code] as number) < outputs.operator_min_eyes);
  return new Set(small.map((name) => groupPair('surgeon', name)));
}

/** The results that publication/ is made from; the same object where nothing has to be hidden. */
export function sharedResults(results: Results, derived: Derived, plan: Plan): Results {
  const rule = { smallCells: plan.outputs.small_cells, hiddenPairs: smallOperators(derived, plan) };
  const rows = suppressed(results.rows, rule);
  return rows === results.rows ? results : indexResults(rows);
}
