import { integersOf } from '../columns/table.js';
import { type CanonicalTables, type Kind, kinds } from '../records/canonical.js';
import type { Rule } from './rule.js';

/** For each eye, whether any file measured it. */
function examined({ eyes, measurements }: CanonicalTables): Uint8Array {
  const seen = new Uint8Array(eyes.numRows());
  for (const kind of Object.keys(kinds) as Kind[]) {
    for (const eye of integersOf(measurements[kind], 'eye')) if (eye >= 0) seen[eye] = 1;
  }
  return seen;
}

/** An operated eye that no examination names: its code or its side may be written differently in another file. */
export const surgeryWithoutExam: Rule = {
  id: 'surgery-without-exam',
  judge({ tables, raw, plan, report }) {
    if (!plan.sources.some((source) => source.blocks.some((block) => block.holds === 'exam'))) return;
    const source = integersOf(tables.eyes, 'source');
    const row = integersOf(tables.eyes, 'row');
    examined(tables).forEach((seen, eye) => {
      if (seen === 1) return;
      const file = source[eye] as number;
      const at = raw[file]?.rowNumber(row[eye] as number) ?? 0;
      report({ rule: 'surgery-without-exam', severity: 'query', source: file, row: at, eye, effect: 'kept' });
    });
  },
};
