import type { FieldReading } from '../records/canonical.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** Fields that differ from eye to eye: one value throughout was filled down, or is another column. */
const varying = new Set(['target_se', 'predicted_se', 'age', 'axis']);

/** The number that stands in every row that has one, and in how many; undefined where there are two. */
function onlyNumber({ words, values }: FieldReading): { value: number; rows: number; first: number } | undefined {
  let [rows, first] = [0, -1];
  for (let row = 0; row < words.length; row++) {
    const value = values[words.codes[row] as number] as number;
    if (Number.isNaN(value)) continue;
    if (first < 0) first = row;
    if (value !== values[words.codes[first] as number]) return undefined;
    rows++;
  }
  return first < 0 ? undefined : { value: values[words.codes[first] as number] as number, rows, first };
}

/** A column with one and the same value in every row of a file. */
export const constantColumn: Rule = {
  id: 'constant-column',
  judge({ tables, plan, report }) {
    for (const reading of tables.readings) {
      if (!varying.has(reading.field)) continue;
      const only = onlyNumber(reading);
      if (!only || only.rows < thresholdOf('constant_rows', plan)) continue;
      const { source, column, field, words } = reading;
      const written = words.at(only.first);
      report({
        rule: 'constant-column',
        severity: 'query',
        source,
        column,
        field,
        written,
        effect: 'kept',
        detail: only.rows,
      });
    }
  },
};
