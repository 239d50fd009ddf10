import type { FieldReading } from '../records/canonical.js';
import { type ReadCell, readingsByFile, tellMinority } from './minority.js';
import type { Rule } from './rule.js';

/** Cells of a file by the sign of their cylinder; a cylinder of nothing has none. */
function bySign(readings: readonly FieldReading[]): { minus: ReadCell[]; plus: ReadCell[] } {
  const cells = { minus: [] as ReadCell[], plus: [] as ReadCell[] };
  for (const reading of readings) {
    for (let row = 0; row < reading.words.length; row++) {
      const value = reading.values[reading.words.codes[row] as number] as number;
      if (value < 0) cells.minus.push({ reading, row });
      else if (value > 0) cells.plus.push({ reading, row });
    }
  }
  return cells;
}

/** A file that writes most cylinders with one sign: one with the other may have lost it. */
export const cylinderNotation: Rule = {
  id: 'cylinder-notation',
  tells: ['cylinder-notation', 'cylinder-notation-file'],
  judge(context) {
    for (const readings of readingsByFile(context.tables.readings, ['cylinder']).values()) {
      const { minus, plus } = bySign(readings);
      const fewer = plus.length <= minus.length ? plus : minus;
      tellMinority('cylinder-notation', fewer, minus.length + plus.length, context);
    }
  },
};
