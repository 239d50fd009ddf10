import { parseClock } from '../../src/intake/clock.js';
import { parseNumber, type WrittenUnit } from '../../src/intake/number.js';
import { parseAxis, parseCylinder, parseSphere } from '../../src/intake/refraction-field.js';
import { wrap180 } from '../../src/optics/axis.js';
import { keratometricIndex, keratometricPower, reindexedPower } from '../../src/optics/keratometry.js';
import { fieldNamed } from '../../src/plan/fields.js';
import type { ColumnPlan } from '../../src/records/plan.js';
import { type Block, type Mapped, mappedColumn } from './blocks.js';
import type { ReadContext } from './read-context.js';
import { tellUnreadable } from './unreadable.js';

/** The value of a field in one row; NaN where the row has none. */
export interface NumberCells {
  (row: number): number;
  /** Whether something is written there that is no number. */
  isUnread?(row: number): boolean;
}

/** A field that the block says nothing of. */
export const nothing: NumberCells = () => Number.NaN;

/** Whether a cell was written and could not be read: it is not blank, and what it should say was recorded. */
export function isUnread(cells: NumberCells, row: number): boolean {
  return cells.isUnread?.(row) ?? false;
}

/** An axis in (0, 180]; NaN for a number that is none. */
export function axisIn(value: number): number {
  return value >= 0 && value <= 180 ? wrap180(value) : Number.NaN;
}

const writtenUnits: readonly string[] = ['D', 'mm', 'µm', 'm', 'deg', 'mmHg', 's', 'min', 'years', 'cells/mm²', '%'];

/** The unit that may stand behind the numbers of a column. */
function unitOf(plan: ColumnPlan): WrittenUnit | undefined {
  const unit = plan.unit ?? fieldNamed(plan.field)?.unit;
  return unit !== undefined && writtenUnits.includes(unit) ? (unit as WrittenUnit) : undefined;
}

/** One word of a column as a number as recorded; undefined where it is none. */
function numberOf(word: string, plan: ColumnPlan, block: Block): number | undefined {
  const { decimal } = block.raw.read;
  if (plan.field === 'sphere') return parseSphere(word, decimal);
  if (plan.field === 'cylinder') return parseCylinder(word, decimal);
  if (plan.unit === 'clock') return parseClock(word);
  if (fieldNamed(plan.field)?.unit === 'deg') return parseAxis(word, decimal);
  if (plan.field === 'age') return parseNumber(word.replace(/\s*\+$/, ''), { decimal, unit: 'years' });
  const unit = unitOf(plan);
  return parseNumber(word, unit ? { decimal, unit } : { decimal });
}

/** Brings a number as recorded into the canonical unit and sign. */
function canonical(value: number, plan: ColumnPlan): number {
  if (plan.unit === 'mm' && fieldNamed(plan.field)?.unit === 'D') return keratometricPower(value);
  if (plan.index !== undefined) return reindexedPower(value, plan.index, keratometricIndex);
  if (plan.notation === 'minus') return -Math.abs(value);
  return plan.notation === 'plus' ? Math.abs(value) : value;
}

/** What the source declares a blank cell to mean; a blank sphere or cylinder depends on what stands beside it. */
function meaningOfBlank(block: Block, field: string): number {
  const declared = block.plan.blank_means[field];
  return declared === undefined || field === 'sphere' || field === 'cylinder' ? Number.NaN : Number(declared);
}

/**
 * Numbers of a mapped column, once a word. Words that are no number are told; the reading is kept for the rules.
 */
function readColumn(block: Block, column: Mapped, context: ReadContext): NumberCells {
  const { words, codes } = column.words;
  const blank = meaningOfBlank(block, column.plan.field);
  const unreadable = new Uint8Array(words.length);
  const values = Float64Array.from(words, (word, code) => {
    if (block.isMissing(word)) return blank;
    const value = numberOf(word, column.plan, block);
    if (value === undefined) unreadable[code] = 1;
    return value === undefined ? Number.NaN : canonical(value, column.plan);
  });
  tellUnreadable(
    block,
    column,
    unreadable,
    { rule: 'number-unreadable', effect: 'value left out', as: 'number' },
    context,
  );
  context.readings.push({
    source: block.source,
    block: block.block,
    field: column.plan.field,
    column: column.header,
    words: column.words,
    values,
    eyes: context.eyes,
  });
  return Object.assign((row: number) => values[codes[row] as number] as number, {
    isUnread: (row: number) => unreadable[codes[row] as number] === 1,
  });
}

/**
 * Numbers of a field: from its column, else the block's constant, else missing everywhere.
 *
 * @returns undefined where the block says nothing of the field
 */
export function numberCells(block: Block, field: string, context: ReadContext): NumberCells | undefined {
  const column = mappedColumn(block, field);
  if (column) return readColumn(block, column, context);
  const constant = block.plan.constants[field];
  if (constant === undefined) return undefined;
  const value = typeof constant === 'number' ? constant : (parseNumber(constant, { decimal: 'point' }) ?? Number.NaN);
  return () => value;
}

/** A covariate of numbers, read as a field without a unit. */
export function covariateNumbers(block: Block, column: Mapped, context: ReadContext): NumberCells {
  return readColumn(block, column, context);
}
