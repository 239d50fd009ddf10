import type { CategoryColumn } from '../../src/columns/category-column.js';
import { hasColumn } from '../../src/columns/table.js';
import { eyeNumbers } from '../../src/eligibility/lookup.js';
import { fieldNamed } from '../../src/plan/fields.js';
import type { Derived } from '../../src/records/derived.js';
import { numberCell, type Spreadsheet } from './csv-file.js';

/** One column of eyes.csv: its header, units in the name, and its cells. */
export interface EyeColumn {
  header: string;
  cell(eye: number): string;
}

/** Columns of the eye table that only the pipeline needs; a date of surgery is never written. */
const inner = new Set(['patient', 'laterality', 'surgeryDay', 'year', 'source', 'block', 'row']);

/** Units of the columns of measurements that are no fields of their own. */
const units: Readonly<Record<string, string>> = {
  flat: 'D',
  steep: 'D',
  steepAxis: 'deg',
  recordedCylinder: 'D',
  vertex: 'mm',
  lane: 'm',
  udva: 'logMAR',
  cdva: 'logMAR',
};

const names: Readonly<Record<string, string>> = {
  flat: 'k_flat',
  steep: 'k_steep',
  steepAxis: 'k_steep_axis',
  recordedCylinder: 'cylinder_recorded',
};

/**
 * The columns of eyes.csv: who and when, what was harmonised, every measure of the registry, and for every family
 * the reason that leaves the eye out. What no eye has is left out.
 */
export function eyeColumns(derived: Derived, spreadsheet: Spreadsheet): readonly EyeColumn[] {
  const measured = derived.registry.map(({ name, unit }) => column(derived, name, header(name, unit), spreadsheet));
  const taken = new Set(measured.map(({ header }) => header));
  const fields = derived.eyes
    .columnNames()
    .filter((name) => isShown(name) && !derived.registry.some((measure) => measure.name === name))
    .map((name) => column(derived, name, fieldHeader(name), spreadsheet))
    .filter(({ header }) => !taken.has(header));
  return [...identity(derived, spreadsheet), ...fields, ...measured, ...reasons(derived)];
}

/** Values that a rule set aside, what audit.yaml says of every eye, centring means and days of single measurements are steps, not facts of the eye. */
function isShown(name: string): boolean {
  return (
    !inner.has(name) &&
    !/^(policy|treatment)\.|\.(state|day@\w+|group_mean\w*|vertex|planned|spectacle|sphere)$/.test(name)
  );
}

function identity({ eyes, tables }: Derived, spreadsheet: Spreadsheet): readonly EyeColumn[] {
  const at = (name: string) => eyes.column(name) as unknown as { at(eye: number): number };
  const [patient, laterality, year] = [at('patient'), at('laterality'), at('year')];
  return [
    { header: 'patient', cell: (eye) => tables.patients[patient.at(eye)] ?? '' },
    { header: 'eye', cell: (eye) => (laterality.at(eye) === 0 ? 'right' : 'left') },
    { header: 'surgery_year', cell: (eye) => numberCell(year.at(eye), spreadsheet) },
  ];
}

/** A field as it was harmonised, what rules set aside left blank; else what was worked out under this name. */
function column({ eyes, tables }: Derived, name: string, header: string, spreadsheet: Spreadsheet): EyeColumn {
  const own = hasColumn(tables.eyes, name) ? tables.eyes : eyes;
  const values = own.column(name) as unknown as ArrayLike<number> | CategoryColumn;
  if ('names' in values) return { header, cell: (eye) => values.at(eye) ?? '' };
  const numbers = values instanceof Float64Array ? (eyeNumbers(own, name) ?? values) : values;
  return { header, cell: (eye) => numberCell(numbers[eye] ?? Number.NaN, spreadsheet) };
}

function reasons({ membership }: Derived): readonly EyeColumn[] {
  return Object.values(membership).map(({ family, steps, code }) => ({
    header: `${family}_family`,
    cell: (eye) => steps[code[eye] as number] ?? '',
  }));
}

/** `sphere@outcome` → `sphere_outcome_D`; a field that says its unit itself is left as it is. */
function fieldHeader(name: string): string {
  const [own = '', at] = name.split('@');
  const plain = own.split(':')[0] ?? own;
  return header(
    [names[own] ?? own, at].filter((part) => part !== undefined).join('_'),
    units[own] ?? fieldNamed(plain)?.unit ?? '',
  );
}

function header(name: string, unit: string): string {
  const plain = unit === 'cells/mm²' ? 'per_mm2' : unit;
  return plain === '' || plain === 'share' || name.endsWith(`_${plain}`) ? name : `${name}_${plain}`;
}
