import { findingsBuilder } from '../src/findings/builder.js';
import type { CanonicalTables } from '../src/records/canonical.js';
import type { Findings } from '../src/records/finding.js';
import type { Plan } from '../src/records/plan.js';
import type { RawTable } from '../src/records/raw-table.js';
import { rounds } from '../src/rules/index.js';
import { type Assembly, assembleVisits } from '../src/visits/assemble.js';
import { allMarks, type TableBooks } from './qualify/marks.js';

export interface Qualified {
  tables: CanonicalTables;
  findings: Findings;
  books: readonly TableBooks[];
}

/**
 * Stage 3 · qualify: which measurements are fit to analyse?
 *
 * in       canonical tables, from harmonise; raw cells, to quote them
 * out      the same tables with `state` set, a finding for every doubt, and the books of every table
 * promise  kept + set aside = rows, per table (checked); order unchanged; no column but states changes
 */
export function qualify(given: CanonicalTables, raw: readonly RawTable[], plan: Plan): Qualified {
  const found = findingsBuilder();
  const marks = allMarks(given);
  const off = new Set(plan.quality.off.map(({ rule }) => rule));
  for (const round of rounds) {
    // What an earlier round set aside is compared with nothing: one slip is told once.
    const tables = marks.tables();
    let assembled: Assembly | undefined;
    const assembly = (): Assembly => {
      assembled ??= assembleVisits(tables, plan);
      return assembled;
    };
    for (const { id, judge } of round) {
      judge({
        tables,
        raw,
        plan,
        assembly,
        report(finding, ...of) {
          if (off.has(finding.rule) || off.has(id)) return;
          found.add(finding);
          for (const mark of of) marks.apply(mark, finding.rule);
        },
      });
    }
  }
  return { tables: marks.tables(), findings: found.build(), books: marks.books() };
}
