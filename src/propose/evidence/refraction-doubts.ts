import { refractionAt } from '../eye-rows.js';
import type { Placed, RecognisedFile } from '../placed.js';

/** What is odd about the cylinders of one column. */
export interface CylinderDoubts {
  /** The sign that fewer cylinders have, how many, of how many, and the first rows. */
  minority: { sign: 'plus' | 'minus'; cells: number; of: number; rows: readonly number[] } | undefined;
  /** Rows whose sphere, cylinder and axis look moved by one column. */
  shifted: readonly number[];
}

/** Rows that a comment names. */
const mostRows = 3;

const isMissing = Number.isNaN;
const isQuarter = (value: number): boolean => Number.isInteger(value * 4);
const isPower = (value: number): boolean => isQuarter(value) && Math.abs(value) <= 8;
const isAxis = (value: number): boolean => Number.isInteger(value) && value >= 0 && value <= 180;

/**
 * Whether three cells make a refraction only when they are moved by one column: the axis is none but could be a cylinder
 * and the sphere is blank, or the cylinder could only be an axis and the axis is blank.
 *
 * @example isShifted(NaN, 0.5, -1) // true: +0.50 −1.00, without an axis
 */
export function isShifted(sphere: number, cylinder: number, axis: number): boolean {
  const toTheRight = isMissing(sphere) && isPower(cylinder) && !isMissing(axis) && !isAxis(axis) && isPower(axis);
  const toTheLeft = isMissing(axis) && Math.abs(cylinder) > 12 && isAxis(cylinder) && isPower(sphere);
  return toTheRight || toTheLeft;
}

/** Cylinders whose sign is not that of most, and rows whose cells look moved. */
export function cylinderDoubts(of: RecognisedFile, cylinder: Placed): CylinderDoubts {
  const { file } = of;
  const written = refractionAt(of, cylinder);
  const rows: Record<'plus' | 'minus' | 'shifted', number[]> = { plus: [], minus: [], shifted: [] };
  for (let row = 0; row < file.rows; row++) {
    const value = written.cylinder(row);
    if (value > 0) rows.plus.push(row);
    if (value < 0) rows.minus.push(row);
    if (isShifted(written.sphere(row), value, written.axis(row))) rows.shifted.push(row);
  }
  const sign = rows.plus.length < rows.minus.length ? 'plus' : 'minus';
  const named = (list: readonly number[]): readonly number[] =>
    list.slice(0, mostRows).map((row) => file.rowNumber(row));
  const cells = rows[sign].length;
  const minority =
    cells === 0
      ? undefined
      : ({ sign, cells, of: rows.plus.length + rows.minus.length, rows: named(rows[sign]) } as const);
  return { minority, shifted: named(rows.shifted) };
}
