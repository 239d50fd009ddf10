import { integersOf } from '../columns/table.js';
import { locateColumn } from '../findings/header.js';
import type { Finding } from '../records/finding.js';
import { keptColumn } from '../records/raw-table.js';
import type { Exams } from './exams.js';
import type { RuleContext } from './rule.js';

/** What a finding quotes: where a cell stands, and what is written there. */
export type CellPlace = Pick<Finding, 'source' | 'row' | 'column' | 'field' | 'written'>;

/** A row of a file as one of its blocks reads it. */
interface BlockRow {
  source: number;
  block: number;
  row: number;
}

interface LocatedColumn {
  field: string;
  header: string;
  written(row: number): string;
}

/** The first of some fields that a block maps; undefined where it maps none. */
function locate(
  { raw, plan }: Pick<RuleContext, 'raw' | 'plan'>,
  { source, block }: Omit<BlockRow, 'row'>,
  fields: readonly string[],
): LocatedColumn | undefined {
  const table = raw[source];
  const of = table && plan.sources[table.source]?.blocks[block];
  const columns = [...(of?.columns ?? []), ...(of?.covariates ?? [])];
  const column = fields.map((field) => columns.find((one) => one.field === field)).find((one) => one !== undefined);
  const index = table && column && locateColumn(table.header, column).index;
  if (!table || !column || index === undefined) return undefined;
  const words = keptColumn(table, index);
  return { field: column.field, header: table.header[index] ?? '', written: (row) => words.at(row) };
}

/**
 * Finds the cell that a finding should name: of some fields the first that the row's block maps, else the row alone.
 *
 * @example const cellOf = cellFinder(context); cellOf({ source, block, row }, ['sphere', 'refraction'])
 */
export function cellFinder(
  context: Pick<RuleContext, 'raw' | 'plan'>,
): (at: BlockRow, fields: readonly string[]) => CellPlace {
  const known = new Map<string, LocatedColumn | undefined>();
  return (at, fields) => {
    const key = `${at.source} ${at.block} ${fields.join(' ')}`;
    if (!known.has(key)) known.set(key, locate(context, at, fields));
    const column = known.get(key);
    return {
      source: at.source,
      row: context.raw[at.source]?.rowNumber(at.row) ?? 0,
      column: column?.header,
      field: column?.field,
      written: column?.written(at.row),
    };
  };
}

/** The fields that hold each kind in a file, the likeliest to be mistyped first. */
const fieldsOfKind: Readonly<Partial<Record<Exams['kind'], readonly string[]>>> = {
  refractions: ['sphere', 'refraction', 'cylinder'],
  uncorrected: ['udva'],
  corrected: ['cdva'],
  keratometries: ['k1', 'k_flat', 'k_mean'],
  lensAxes: ['lens_axis'],
  endothelia: ['ecd'],
};

/** The cell of a measurement, with its eye and day. */
export function examPlace(
  context: Pick<RuleContext, 'raw' | 'plan'>,
): (exams: Exams, i: number, fields?: readonly string[]) => CellPlace & Pick<Finding, 'eye' | 'day'> {
  const cellOf = cellFinder(context);
  return (exams, i, fields = fieldsOfKind[exams.kind] ?? []) => ({
    ...cellOf(
      { source: exams.source[i] as number, block: exams.block[i] as number, row: exams.row[i] as number },
      fields,
    ),
    eye: exams.eye[i] as number,
    day: exams.day[i] as number,
  });
}

/** Rows that give a number of each eye: where several do, one whose value the eye holds. */
function rowsGiving(field: string, { tables }: RuleContext): ReadonlyMap<number, BlockRow> {
  const kept = tables.eyes.column(field) as { at(row: number): unknown } | undefined;
  const found = new Map<number, BlockRow>();
  for (const { field: name, source, block, values, words, eyes } of tables.readings) {
    if (name !== field) continue;
    eyes.forEach((eye, row) => {
      const value = values[words.codes[row] as number] as number;
      if (eye < 0 || Number.isNaN(value)) return;
      if (!found.has(eye) || kept?.at(eye) === value) found.set(eye, { source, block, row });
    });
  }
  return found;
}

/** The cell that gives a field of an eye: the one its number was read from, else its cell on the surgery list. */
export function eyePlace(context: RuleContext): (eye: number, field: string) => CellPlace & Pick<Finding, 'eye'> {
  const cellOf = cellFinder(context);
  const known = new Map<string, ReadonlyMap<number, BlockRow>>();
  const { eyes } = context.tables;
  const [source, block, row] = ['source', 'block', 'row'].map((name) => integersOf(eyes, name)) as [
    Int32Array,
    Int32Array,
    Int32Array,
  ];
  return (eye, field) => {
    const giving = known.get(field) ?? rowsGiving(field, context);
    known.set(field, giving);
    const operation = { source: source[eye] as number, block: block[eye] as number, row: row[eye] as number };
    return { ...cellOf(giving.get(eye) ?? operation, [field]), eye };
  };
}
