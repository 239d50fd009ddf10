import { parseRefraction } from '../intake/refraction-cell.js';
import { plainSigns } from '../intake/signs.js';
import type { FieldReading } from '../records/canonical.js';
import type { Plan } from '../records/plan.js';
import type { RawTable } from '../records/raw-table.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** The sign written before a cylinder: −1, 1, or 0 where it has none. */
function writtenSign(word: string, inOneCell: boolean, { read }: RawTable): number {
  if (inOneCell) {
    const refraction = parseRefraction(word, read.decimal);
    return refraction?.cylinderSigned ? Math.sign(refraction.cylinder) : 0;
  }
  const [first] = plainSigns(word);
  return first === '-' ? -1 : Number(first === '+');
}

/** The sign that audit.yaml gives to every cylinder of the column, and whether sphere and axis stand in its cells. */
function declared(
  { block, field }: FieldReading,
  { source }: RawTable,
  plan: Plan,
): [sign: number, inOneCell: boolean] {
  const columns = plan.sources[source]?.blocks[block]?.columns ?? [];
  const column = columns.find((one) => one.field === field) ?? columns.find((one) => one.field === 'refraction');
  const sign = { minus: -1, plus: 1, signed: 0 }[column?.notation ?? 'signed'];
  return [sign, column?.field === 'refraction'];
}

/**
 * A column declared to hold cylinders of one sign, with the other sign written before some of them. They are read as
 * declared; where the lane did transpose, sphere and axis are then wrong as well: a habit of it stops, a slip is asked
 * about.
 */
export const notationContradicted: Rule = {
  id: 'notation-contradicted',
  judge({ tables, raw, plan, report }) {
    for (const reading of tables.readings) {
      const { source, column, field, words, values } = reading;
      const table = raw[source];
      if (!table || (field !== 'cylinder' && field !== 'predicted_cylinder')) continue;
      const [sign, inOneCell] = declared(reading, table, plan);
      if (sign === 0) continue;
      const against = Uint8Array.from(words.words, (word, code) =>
        values[code] && writtenSign(word, inOneCell, table) === -sign ? 1 : 0,
      );
      const rows = Array.from(words.codes.keys()).filter((row) => against[words.codes[row] as number] === 1);
      const [first] = rows;
      if (first === undefined) continue;
      const at = { source, row: table.rowNumber(first), column, field, written: words.at(first) };
      const counts = { detail: rows.length, other: words.length };
      const isHabit = rows.length >= words.length * thresholdOf('minority', plan);
      const weight = isHabit
        ? ({ severity: 'stop', effect: 'nothing published' } as const)
        : ({ severity: 'query', effect: 'kept' } as const);
      report({ rule: 'notation-contradicted', ...weight, ...at, ...counts });
    }
  },
};
