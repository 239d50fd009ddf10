import type { FieldReading } from '../records/canonical.js';
import type { FieldLimits } from './field-limit.js';
import { limitsOf } from './limits.js';
import { isImpossible } from './range.js';
import type { Rule } from './rule.js';

/** Fewer impossible cells than this say nothing of a whole column: they are set aside one by one. */
const fewest = 3;

/** How many cells of a column hold a number, and how many of these cannot be. */
function countCells(
  reading: FieldReading,
  limits: FieldLimits,
): { numbers: number; impossible: number; first: number } {
  const counts = { numbers: 0, impossible: 0, first: -1 };
  const bad = Uint8Array.from(reading.values, (value) => (isImpossible(value, limits) ? 1 : 0));
  for (let row = 0; row < reading.words.length; row++) {
    const code = reading.words.codes[row] as number;
    if (Number.isNaN(reading.values[code] as number)) continue;
    counts.numbers++;
    if (bad[code] === 0) continue;
    if (counts.first < 0) counts.first = code;
    counts.impossible++;
  }
  return counts;
}

/**
 * A column of which more than half is impossible was read in the wrong unit or with the wrong decimal mark: setting
 * it aside cell by cell would hide that.
 */
export const columnImpossible: Rule = {
  id: 'column-impossible',
  judge({ tables, plan, report }) {
    for (const reading of tables.readings) {
      const limits = limitsOf(reading.field, plan);
      if (!limits) continue;
      const { numbers, impossible, first } = countCells(reading, limits);
      if (impossible < fewest || impossible * 2 <= numbers) continue;
      report({
        rule: 'column-impossible',
        severity: 'stop',
        source: reading.source,
        column: reading.column,
        field: reading.field,
        written: reading.words.words[first],
        effect: 'nothing published',
        detail: impossible,
      });
    }
  },
};
