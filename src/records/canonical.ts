import type { ColumnTable } from 'arquero';
import type { WordColumn } from '../columns/word-column.js';

/** A day or a date that is not known. */
export const noDay = -(2 ** 31);

/** Column of the eyes, 1 where audit.yaml says that the eye's source predicts the cylinder at the spectacle plane. */
export const spectacleMark = 'predicted_cylinder.spectacle';

/** The kinds of measurement, each with a table of its own, and the columns that belong to it alone. */
export const kinds = {
  refractions: ['sphere', 'cylinder', 'axis', 'recordedCylinder', 'vertex', 'lane'],
  uncorrected: ['logMAR', 'lowVision'],
  corrected: ['logMAR', 'lowVision'],
  near: ['logMAR', 'lowVision'],
  intermediate: ['logMAR', 'lowVision'],
  keratometries: ['flat', 'steep', 'steepAxis'],
  totalCorneas: ['cylinder', 'axis'],
  posteriorCorneas: ['cylinder', 'axis'],
  lensAxes: ['axis'],
  endothelia: ['ecd'],
  pressures: ['iop'],
  thicknesses: ['cct'],
} as const;

export type Kind = keyof typeof kinds;

/**
 * Which cells a field was read from: the words and, parallel to them, the values. `words.codes[row]` is the
 * code of both. Rules on single values look at words, not at cells.
 */
export interface FieldReading {
  /** Index into the raw tables. */
  source: number;
  /** Index into that source's blocks. */
  block: number;
  field: string;
  /** Header as written. */
  column: string;
  words: WordColumn;
  /** One value a word, in the canonical unit, sign as recorded; NaN: blank, or not readable. */
  values: Float64Array;
  /** Eye index of every row of the file; −1 where the row belongs to no operated eye. */
  eyes: Int32Array;
}

/** Books of one file: rows read = rows used + rows set aside by reason. */
export interface FileBooks {
  source: number;
  read: number;
  used: number;
  setAside: Readonly<Record<string, number>>;
}

/**
 * Everything in our names, units and order: patient code by UTF-16 unit, right before left, then day, then
 * source, then row. All tables are arquero tables over typed arrays.
 *
 * eyes          patient (code index), laterality (0 right, 1 left), surgeryDay, year, order, every mapped surgery
 *               and eye field, covariates, source, block, row; `<field>.state` beside a field that rules judge
 * events        eye, day, procedure, source, block, row
 * measurements  eye (−1: no operated eye), day, visit (index into plan visits + 1; 0 none; −1 labelled before),
 *               device (code), source, block, row, state (0 kept, 1 queried, 2 set aside), axisGiven (1 where an
 *               axis was written), unread (1 where what the kind needs was written and could not be read), own
 *               columns (`kinds`)
 * predictions   eye, formula (code), predictedSe, constant, source, block, row, state
 */
export interface CanonicalTables {
  /** Patient codes as written, in canonical order. */
  patients: readonly string[];
  eyes: ColumnTable;
  events: ColumnTable;
  measurements: Readonly<Record<Kind, ColumnTable>>;
  predictions: ColumnTable;
  /** Names behind the codes of `device` and `formula`. */
  devices: readonly string[];
  formulas: readonly string[];
  /** File behind each raw table's index, as in audit.yaml. */
  files: readonly string[];
  readings: readonly FieldReading[];
  /** The export's day: declared, or the latest date in any file; `noDay` where there are no dates. */
  dataUntil: number;
  books: readonly FileBooks[];
}
