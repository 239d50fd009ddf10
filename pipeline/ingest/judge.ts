import type { FindingParts } from '../../src/findings/builder.js';
import { acuityScale } from '../../src/intake/acuity-scale.js';
import { judgeDateOrder } from '../../src/intake/date-order.js';
import { judgeDecimalMark } from '../../src/intake/decimal-mark.js';
import type { FieldType } from '../../src/plan/fields.js';
import type { Reading } from '../../src/records/plan.js';
import type { ReadAs } from '../../src/records/raw-table.js';
import type { TableRead } from './read-table.js';
import { placeOf, stopAt, type Used, usedColumns } from './used-columns.js';

/** How numbers and dates of a file are read, and what speaks against reading them at all. */
export interface Judged extends Pick<ReadAs, 'decimal' | 'dateOrder'> {
  doubts: readonly FindingParts[];
}

const numeric: readonly (FieldType | undefined)[] = ['number', 'refraction', 'acuity', 'clock-or-degrees'];

/** Judges the decimal mark of a file from all its distinct numbers; what audit.yaml says wins. */
function decimalOf(columns: readonly Used[], declared: Reading['decimal']): Pick<Judged, 'decimal' | 'doubts'> {
  if (declared !== 'auto') return { decimal: declared, doubts: [] };
  const asked = columns.filter(({ wanted }) => numeric.includes(wanted.type));
  const judged = judgeDecimalMark(asked.flatMap(({ words }) => words));
  if (judged.mark !== undefined) return { decimal: judged.mark, doubts: [] };
  const rule = { undecided: 'decimal-open', contradictory: 'decimal-mixed', thousands: 'thousands-marks' }[
    judged.doubt
  ];
  return { decimal: 'none', doubts: [stopAt(rule, asked, judged.examples)] };
}

/** Judges the order of day, month and year from all distinct dates of a file; what audit.yaml says wins. */
function dateOrderOf(columns: readonly Used[], declared: Reading['date_order']): Pick<Judged, 'dateOrder' | 'doubts'> {
  if (declared !== 'auto') return { dateOrder: declared, doubts: [] };
  const asked = columns.filter(({ wanted }) => wanted.type === 'date');
  const judged = judgeDateOrder(asked.flatMap(({ words }) => words));
  if (judged.order !== undefined) return { dateOrder: judged.order, doubts: [] };
  const rule = judged.doubt === 'undecided' ? 'date-order-open' : 'date-order-mixed';
  // A date is read and never written: the rows are told, of which the second contradicts the first.
  const rows = judged.examples.map((word) => placeOf(asked, word).row);
  const doubt = { ...stopAt(rule, asked, judged.examples), written: undefined, detail: rows[1] ?? Number.NaN };
  return { dateOrder: 'none', doubts: [doubt] };
}

/**
 * Bare numbers in an acuity column whose scale nobody has named; `detail` is how many different ones. While the decimal
 * mark is in doubt both are tried, so that all reasons to stop are told at once.
 */
function scaleDoubts(columns: readonly Used[], marks: readonly ReadAs['decimal'][]): readonly FindingParts[] {
  const asked = columns.filter(({ wanted }) => wanted.type === 'acuity' && !wanted.scaleDeclared);
  return asked.flatMap((used) => {
    const bare = marks.map((mark) => acuityScale(used.words, mark)).find(({ bareNumbers }) => bareNumbers > 0);
    return bare
      ? [{ ...stopAt('acuity-scale-open', [used], bare.examples.slice(0, 1)), detail: bare.bareNumbers }]
      : [];
  });
}

/**
 * Judges how a file writes its numbers and dates, from all distinct words of the columns that hold them. Nothing is
 * guessed: what stays open, or contradicts itself, stops the run.
 */
export function judge(table: TableRead, reading: Reading): Judged {
  const columns = usedColumns(table, reading.missing);
  const { decimal, doubts: decimalDoubts } = decimalOf(columns, reading.decimal);
  const { dateOrder, doubts: dateDoubts } = dateOrderOf(columns, reading.date_order);
  const marks: readonly ReadAs['decimal'][] = decimalDoubts.length > 0 ? ['point', 'comma'] : [decimal];
  return { decimal, dateOrder, doubts: [...decimalDoubts, ...dateDoubts, ...scaleDoubts(columns, marks)] };
}
