import type { ColumnTable } from 'arquero';
import { categoriesOf, fitNumbersOf, hasColumn, integersOf, numbersOf } from '../columns/table.js';
import { splitCodes } from '../intake/codes.js';
import { fieldNamed } from '../plan/fields.js';
import { type CanonicalTables, type Kind, noDay } from '../records/canonical.js';
import type { Assembly, ChosenRows } from '../visits/assemble.js';
import type { Lookup, Value } from './condition.js';
import { constantOfOtherFamily } from './constant-family.js';

/** Where an examination's field stands: its table and column. */
export const examColumns: Readonly<Record<string, { kind: Kind; column: string }>> = {
  sphere: { kind: 'refractions', column: 'sphere' },
  cylinder: { kind: 'refractions', column: 'recordedCylinder' },
  axis: { kind: 'refractions', column: 'axis' },
  vertex_mm: { kind: 'refractions', column: 'vertex' },
  lane_m: { kind: 'refractions', column: 'lane' },
  udva: { kind: 'uncorrected', column: 'logMAR' },
  cdva: { kind: 'corrected', column: 'logMAR' },
  unva: { kind: 'near', column: 'logMAR' },
  uiva: { kind: 'intermediate', column: 'logMAR' },
  k_flat: { kind: 'keratometries', column: 'flat' },
  k_steep: { kind: 'keratometries', column: 'steep' },
  k_steep_axis: { kind: 'keratometries', column: 'steepAxis' },
  total_corneal_cylinder: { kind: 'totalCorneas', column: 'cylinder' },
  total_corneal_axis: { kind: 'totalCorneas', column: 'axis' },
  lens_axis: { kind: 'lensAxes', column: 'axis' },
  ecd: { kind: 'endothelia', column: 'ecd' },
  iop: { kind: 'pressures', column: 'iop' },
  cct: { kind: 'thicknesses', column: 'cct' },
};

/** Corneal fields that are worked out from the flat and the steep power. */
const cornealFields: Readonly<Record<string, (flat: number, steep: number) => number>> = {
  k_mean: (flat, steep) => (flat + steep) / 2,
  k_cylinder: (flat, steep) => steep - flat,
};

/**
 * A column of the eyes as numbers, values that rules set aside taken as missing.
 *
 * @returns undefined where no export has the field
 */
export function eyeNumbers(eyes: ColumnTable, field: string): Float64Array | undefined {
  return hasColumn(eyes, field) ? fitNumbersOf(eyes, field) : undefined;
}

const numberOrMissing = (value: number): Value => (Number.isNaN(value) ? undefined : value);

function eyeLookup(eyes: ColumnTable, field: string): (eye: number) => Value {
  if (field === 'surgery_date') {
    const day = integersOf(eyes, 'surgeryDay');
    return (eye) => (day[eye] === noDay ? undefined : day[eye]);
  }
  if (field === 'eye') {
    const laterality = integersOf(eyes, 'laterality');
    return (eye) => (laterality[eye] === 0 ? 'right' : 'left');
  }
  if (field === 'constant_of_other_family') {
    const is = constantOfOtherFamily(eyes);
    return (eye) => (is ? numberOrMissing(is[eye] as number) : undefined);
  }
  const name = field === 'surgery_year' ? 'year' : field;
  if (!hasColumn(eyes, name)) return () => undefined;
  if (!(eyes.column(name) instanceof Float64Array)) {
    const column = categoriesOf(eyes, name);
    if (fieldNamed(name)?.type !== 'codes') return (eye) => column.at(eye);
    const byName = column.names.map(splitCodes);
    return (eye) => (column.codes[eye] ? byName[column.codes[eye] as number] : undefined);
  }
  const values = eyeNumbers(eyes, name) as Float64Array;
  return (eye) => numberOrMissing(values[eye] as number);
}

/** Values of eyes and of their examinations, for conditions. */
export function lookupIn(tables: CanonicalTables, assembly: Assembly): Lookup {
  const rowsAt = (at: string | undefined): ChosenRows => {
    if (at === 'before') return assembly.before;
    return assembly.visits.find((visit) => visit.rule.name === at)?.rows ?? assembly.outcome;
  };
  return (field, at) => {
    const cornea = cornealFields[field];
    if (cornea) {
      const { keratometries } = tables.measurements;
      const [flat, steep] = [numbersOf(keratometries, 'flat'), numbersOf(keratometries, 'steep')];
      const rows = rowsAt(at).keratometries;
      return (eye) => {
        const row = rows[eye] as number;
        return row < 0 ? undefined : numberOrMissing(cornea(flat[row] as number, steep[row] as number));
      };
    }
    const exam = examColumns[field];
    if (!exam) return eyeLookup(tables.eyes, field);
    const rows = rowsAt(at)[exam.kind];
    const values = fitNumbersOf(tables.measurements[exam.kind], exam.column);
    return (eye) => ((rows[eye] as number) < 0 ? undefined : numberOrMissing(values[rows[eye] as number] as number));
  };
}
