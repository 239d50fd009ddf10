import { type CategoryColumn, categoryColumnBuilder } from '../../src/columns/category-column.js';
import { clockPosition } from '../../src/intake/clock.js';
import { sphericalEquivalent } from '../../src/optics/spherical-equivalent.js';
import { type Field, fieldNamed, fields } from '../../src/plan/fields.js';
import type { ColumnPlan, Plan } from '../../src/records/plan.js';
import { type Block, columnOf, mappedColumn } from './blocks.js';
import { covariateNumbers, type NumberCells, numberCells } from './cells.js';
import { agree, differs, type RowPlace, rankOf, rowToTell, tolerances } from './join.js';
import type { ReadContext } from './read-context.js';
import { codeTextCells, type TextCells, textCells, textColumn } from './words.js';

/** Rows that describe one eye, in canonical order. */
export interface FactRow {
  /** Index into the list of all blocks. */
  at: number;
  row: number;
}

export interface FactContext {
  blocks: readonly Block[];
  contexts: readonly ReadContext[];
  /** For each eye, the rows of its operation, then the rows of `eye` sources. */
  rowsOfEye: readonly (readonly FactRow[])[];
  plan: Plan;
}

function tellConflict(context: FactContext, field: string, { at, row }: FactRow, eye: number): void {
  const block = context.blocks[at] as Block;
  const column = mappedColumn(block, field);
  context.contexts[at]?.findings.add({
    ...differs,
    source: block.source,
    row: block.raw.rowNumber(row),
    column: column?.header,
    field,
    written: column?.words.at(row),
    eye,
    effect: 'value left out',
  });
}

/** A value of an eye, and the row that gives it. */
interface Given<V> {
  value: V;
  place: FactRow & RowPlace;
  rank: number;
}

/** Preferred files first, then files in their order; inside a file by value, so that the order of rows does not matter. */
function inOrder<V>(a: Given<V>, b: Given<V>): number {
  if (a.rank !== b.rank) return a.rank - b.rank;
  if (a.place.at !== b.place.at) return a.place.at - b.place.at;
  if (a.value !== b.value) return a.value < b.value ? -1 : 1;
  return a.place.row - b.place.row;
}

function givenAt<V>(row: FactRow, value: V, { blocks, plan }: FactContext): Given<V> {
  const { source, block, raw } = blocks[row.at] as Block;
  return { value, place: { ...row, source, block }, rank: rankOf(raw.file, plan) };
}

/**
 * One value an eye from all rows that give one: values that agree are one, values that differ leave the field out
 * unless audit.yaml says which file is to be preferred.
 */
function joined<V extends number | string>(
  field: string,
  context: FactContext,
  written: (row: FactRow) => V | undefined,
  same: (a: V, b: V) => boolean,
): (V | undefined)[] {
  return context.rowsOfEye.map((rows, eye) => {
    const giving = rows.filter((row) => written(row) !== undefined);
    if (giving.length < 2) return giving[0] && written(giving[0]);
    const [kept, ...others] = giving.map((row) => givenAt(row, written(row) as V, context)).sort(inOrder) as [
      Given<V>,
      ...Given<V>[],
    ];
    const rivals = others.filter(({ value, rank }) => rank === kept.rank && !same(kept.value, value));
    for (const { place } of rivals) tellConflict(context, field, rowToTell(place, kept.place), eye);
    return rivals.length > 0 ? undefined : kept.value;
  });
}

/** How far two records of a field may differ, and the circle that its directions lie on: an axis has no half-turn. */
function toleranceOf({ unit, type }: Field): { tolerance: number; period?: number } {
  if (unit === 'D') return { tolerance: tolerances.D };
  if (unit === 'mm') return { tolerance: tolerances.mm };
  if (unit !== 'deg') return { tolerance: tolerances.exact };
  return { tolerance: tolerances.deg, period: type === 'clock-or-degrees' ? 360 : 180 };
}

type CellsOf<C> = (block: Block, context: ReadContext) => C | undefined;

/** The readers of one field for every block that describes eyes. */
function readers<C>({ blocks, contexts }: FactContext, cellsOf: CellsOf<C>): (C | undefined)[] {
  return blocks.map((block, at) => {
    const describes = block.plan.holds === 'surgery' || block.plan.holds === 'eye';
    return describes ? cellsOf(block, contexts[at] as ReadContext) : undefined;
  });
}

/** A clock hour becomes a position; everything else is in its canonical unit already. */
function positioned(
  block: Block,
  field: string,
  cells: NumberCells | undefined,
  lateralityOf: (row: number) => number,
) {
  const plan = mappedColumn(block, field)?.plan;
  if (!cells || plan?.unit !== 'clock') return cells;
  const view = plan.view ?? 'facing';
  return (row: number) => clockPosition(cells(row), view, lateralityOf(row) === 0 ? 'right' : 'left');
}

/** A column of numbers, one an eye; undefined where no source maps the field. */
function numberFact(field: Field, context: FactContext, sideOfEye: Int32Array): Float64Array | undefined {
  const cells = readers(context, (block, read) => {
    const sideOf = (row: number): number => sideOfEye[read.eyes[row] as number] ?? 0;
    return positioned(block, field.name, numberCells(block, field.name, read), sideOf);
  });
  return numbersFrom(field.name, cells, context, toleranceOf(field));
}

/**
 * Lens powers as spherical equivalents, whatever a source gives; a lens without a cylinder on record is taken for one
 * that has none.
 *
 * @param cylinder  of the lens, one an eye
 */
function lensPowerFact(field: Field, context: FactContext, cylinder: Float64Array | undefined) {
  const cells = readers(context, (block, read) => {
    const power = numberCells(block, field.name, read);
    if (!power || block.sourcePlan.lens_power_is === 'se') return power;
    return (row: number) => sphericalEquivalent(power(row), cylinder?.[read.eyes[row] as number] || 0);
  });
  return numbersFrom(field.name, cells, context, toleranceOf(field));
}

function numbersFrom(
  name: string,
  cells: readonly (NumberCells | undefined)[],
  context: FactContext,
  { tolerance, period }: { tolerance: number; period?: number },
): Float64Array | undefined {
  if (!cells.some(Boolean)) return undefined;
  const written = ({ at, row }: FactRow): number | undefined => {
    const value = cells[at]?.(row);
    return value === undefined || Number.isNaN(value) ? undefined : value;
  };
  const values = joined(name, context, written, (a, b) => agree(a, b, tolerance, period));
  return Float64Array.from(values, (value) => value ?? Number.NaN);
}

function namesFrom(
  name: string,
  cells: readonly (TextCells | undefined)[],
  context: FactContext,
  first: readonly string[] = [],
): CategoryColumn | undefined {
  if (!cells.some(Boolean)) return undefined;
  const values = joined(
    name,
    context,
    ({ at, row }) => cells[at]?.(row),
    (a, b) => a === b,
  );
  const builder = categoryColumnBuilder(first);
  for (const value of values) builder.push(value);
  return builder.finish();
}

function nameFact(field: Field, context: FactContext): CategoryColumn | undefined {
  const cells = readers(context, (block, read) =>
    field.type === 'codes'
      ? codeTextCells(block, field.name, context.plan)
      : textCells(block, field.name, context.plan, read),
  );
  return namesFrom(field.name, cells, context, field.values);
}

/** Fields that other steps read: the key, and what decides which operation is the first. */
const readElsewhere = new Set([
  'patient',
  'eye',
  'surgery_date',
  'surgery_year',
  'surgery_order',
  'procedure',
  'predicted_se',
]);

export type FactColumn = Float64Array | CategoryColumn;

/** Every mapped surgery and eye field as a column of the eyes. */
export function factColumns(context: FactContext, sideOfEye: Int32Array): Readonly<Record<string, FactColumn>> {
  const columns: Record<string, FactColumn> = {};
  // What a power is depends on the cylinder of the same lens, so that comes first.
  const lensCylinder = numberFact(fieldNamed('lens_cylinder') as Field, context, sideOfEye);
  for (const field of fields) {
    const ofEye = field.holds.includes('surgery') || field.holds.includes('eye');
    if (!ofEye || readElsewhere.has(field.name)) continue;
    const column = factColumn(field, context, sideOfEye, lensCylinder);
    if (column) columns[field.name] = column;
  }
  return { ...columns, ...covariateColumns(context) };
}

function factColumn(
  field: Field,
  context: FactContext,
  sideOfEye: Int32Array,
  lensCylinder: Float64Array | undefined,
): FactColumn | undefined {
  if (field.name === 'lens_cylinder') return lensCylinder;
  if (field.name === 'lens_power') return lensPowerFact(field, context, lensCylinder);
  const isNumber = field.type === 'number' || field.type === 'clock-or-degrees';
  return isNumber ? numberFact(field, context, sideOfEye) : nameFact(field, context);
}

/** Covariates: numbers where declared, or where every word that is there is one; else named values. */
function covariateColumns(context: FactContext): Readonly<Record<string, FactColumn>> {
  const names = new Set(context.blocks.flatMap(({ plan }) => plan.covariates.map(({ field }) => field)));
  const columns: Record<string, FactColumn> = {};
  for (const name of names) {
    const planOf = (block: Block): ColumnPlan | undefined => block.plan.covariates.find(({ field }) => field === name);
    const isNumber = context.blocks.every(
      (block) => (planOf(block)?.type ?? 'number') === 'number' && areNumbers(block, planOf(block)),
    );
    const column = isNumber
      ? numbersFrom(
          name,
          readers(context, (block, read) => mapped(block, planOf(block), (one) => covariateNumbers(block, one, read))),
          context,
          { tolerance: tolerances.exact },
        )
      : namesFrom(
          name,
          readers(context, (block, read) =>
            mapped(block, planOf(block), (one) => textColumn(block, one, context.plan, read)),
          ),
          context,
        );
    if (column) columns[name] = column;
  }
  return columns;
}

function mapped<C>(
  block: Block,
  plan: ColumnPlan | undefined,
  read: (column: ReturnType<typeof columnOf>) => C,
): C | undefined {
  return plan && read(columnOf(block.raw, plan));
}

/** Whether every word of an undeclared covariate is missing or looks like a number. */
function areNumbers(block: Block, plan: ColumnPlan | undefined): boolean {
  if (!plan || plan.type === 'number') return true;
  return columnOf(block.raw, plan).words.words.every(
    (word) => block.isMissing(word) || /^[+\-−]?[\d.,]+$/.test(word.trim()),
  );
}
