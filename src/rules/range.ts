import { integersOf } from '../columns/table.js';
import { type FieldReading, type Kind, noDay } from '../records/canonical.js';
import type { Effect, Severity } from '../records/finding.js';
import { millionths } from '../units.js';
import type { FieldLimits, Range } from './field-limit.js';
import { heldPower } from './lens-sphere.js';
import { limitsOf } from './limits.js';
import { joinedRow, rowsOfBlock } from './rows.js';
import type { Place, Rule, RuleContext, SideValue } from './rule.js';

/** Where a field stands, and what an impossible value of it spoils. */
export interface Judged {
  table: Kind | 'eyes';
  effect: Effect;
  /** Whether the measurement as a whole is set aside, or stands without this value. */
  spoils: 'measurement' | 'value';
  /** A value beside the measurement that is set aside alone. */
  value?: SideValue;
  /** What is unusual of it another rule tells. */
  onlyImpossible?: true;
}

/** Verdicts on a word, from harmless to impossible. */
const fine = 0;
const unusualAfter = 1;
const unusual = 2;
const impossible = 3;

/** How far outside a range: 0 inside, else the limit that is passed. Compared in millionths, like every threshold. */
function passed(value: number, [low, high]: Range): number | undefined {
  if (millionths(value) < millionths(low)) return low;
  return millionths(value) > millionths(high) ? high : undefined;
}

/** A value that lies where another unit would put it, brought into the unit of its field; undefined elsewhere. */
function inOtherUnit(value: number, { otherUnit }: FieldLimits): number | undefined {
  return otherUnit && value > 0 && value < otherUnit.below ? value * otherUnit.factor : undefined;
}

/** Whether a value cannot be: a number outside its possible range, or of another unit. */
export function isImpossible(value: number, limits: FieldLimits): boolean {
  const size = limits.magnitude ? Math.abs(value) : value;
  return passed(size, limits.possible) !== undefined || inOtherUnit(value, limits) !== undefined;
}

function verdict(value: number, limits: FieldLimits, { onlyImpossible }: Judged): number {
  const size = limits.magnitude ? Math.abs(value) : value;
  if (isImpossible(value, limits)) return impossible;
  if (onlyImpossible) return fine;
  if (limits.usual && passed(size, limits.usual) !== undefined) return unusual;
  if (limits.usualAfter && passed(size, limits.usualAfter) !== undefined) return unusualAfter;
  return fine;
}

/** The limit that a value of this verdict has passed. */
function limitPassed(value: number, limits: FieldLimits, is: number): number {
  const range = is === impossible ? limits.possible : is === unusual ? limits.usual : limits.usualAfter;
  return (range && passed(limits.magnitude ? Math.abs(value) : value, range)) ?? Number.NaN;
}

/** Judges the words of one reading, then tells of every cell whose word failed. */
function judgeReading(reading: FieldReading, judged: Judged, rule: string, context: RuleContext): void {
  const limits = limitsOf(reading.field, context.plan);
  const raw = context.raw[reading.source];
  if (!limits || !raw) throw new RangeError(`${rule}: no limits or no file for ${reading.field}`);
  const verdicts = Uint8Array.from(reading.values, (value) => verdict(value, limits, judged));
  if (verdicts.every((one) => one === fine)) return;

  const cells = cellsOf(reading, judged, context);
  for (let row = 0; row < reading.words.length; row++) {
    const code = reading.words.codes[row] as number;
    const is = verdicts[code] as number;
    const eye = reading.eyes[row] as number;
    // Measurements of eyes that are not part of the audit are told once, by exam-without-surgery.
    if (is === fine || eye < 0) continue;
    const { place, day } = cells(row, reading.values[code] as number);
    if (is === unusualAfter && !(day > 0)) continue;
    const severity: Severity = is === impossible ? 'set aside' : limits.unusual;
    const as = is === impossible && (judged.spoils === 'measurement' || judged.value) ? 'set aside' : 'queried';
    const marks = place && severity !== 'note' ? [{ ...place, as } as const] : [];
    context.report(
      {
        rule,
        severity,
        source: reading.source,
        row: raw.rowNumber(row),
        column: reading.column,
        field: reading.field,
        written: reading.words.words[code],
        eye,
        day,
        effect: is === impossible ? judged.effect : 'kept',
        detail: limitPassed(reading.values[code] as number, limits, is),
        other: inOtherUnit(reading.values[code] as number, limits) ?? Number.NaN,
      },
      ...marks,
    );
  }
}

/** The measurement that the cell of a row and its value went to, and its day. */
export type Cells = (row: number, value: number) => { place: Place | undefined; day: number };

/** Where the cells of a reading went: the row of a measurement table, or the eye itself. */
export function cellsOf(reading: FieldReading, judged: Pick<Judged, 'table' | 'value'>, context: RuleContext): Cells {
  const { tables } = context;
  if (judged.table === 'eyes') {
    const power = reading.field === 'lens_power' ? heldPower(context, reading.source) : undefined;
    const kept = tables.eyes.column(reading.field) as { at(row: number): unknown } | undefined;
    return (row, value) => {
      const eye = reading.eyes[row] as number;
      // The eye may hold the value of another file, which this doubt does not touch.
      const held = kept?.at(eye) === (power?.(eye, value) ?? value);
      return { place: held ? { table: 'eyes', row: eye, field: reading.field } : undefined, day: noDay };
    };
  }
  const kind = judged.table;
  const table = tables.measurements[kind];
  const rows = rowsOfBlock(table, reading.source, reading.block, reading.words.length);
  const joined = joinedRow(table, kind);
  const days = integersOf(table, 'day');
  return (row, value) => {
    const own = rows[row] as number;
    const at = own >= 0 ? own : joined(reading.eyes[row] as number, value);
    if (at < 0) return { place: undefined, day: noDay };
    const place = { table: kind, row: at, ...(judged.value ? { value: judged.value } : {}) };
    return { place, day: days[at] as number };
  };
}

/**
 * A rule that sets single values aside outside their possible range, and asks or notes outside the usual one. It
 * looks at each distinct word once and at cells only where a word fails.
 *
 * @param id      name of the rule
 * @param fields  the fields it judges, each with the table it stands in and what an impossible value spoils
 */
export function rangeRule(id: string, fields: Readonly<Record<string, Judged>>): Rule {
  return {
    id,
    judge(context) {
      for (const reading of context.tables.readings) {
        const judged = fields[reading.field];
        if (judged) judgeReading(reading, judged, id, context);
      }
    },
  };
}
