import { ageColumn } from './age-column.js';
import { type CopiedRole, copiedCells } from './cells.js';
import { type CopyColumn, dateColumns, surgeryColumns, type TimeContext } from './dated-columns.js';
import { distinctHeaders, shownHeader, writtenHeader } from './headers.js';
import type { KnownPersons } from './known-persons.js';
import type { Role } from './roles.js';
import { surgeonColumn } from './surgeons.js';

/** What became of one column. */
export interface ColumnRecord {
  /** The header as it may be shown. */
  header: string;
  role: Role;
  /** Headers of the columns that stand in its place; none where it was left out. */
  became: readonly string[];
  /** Cells with a value. */
  cells: number;
  /** Cells in whose place `removed` stands. */
  removed: number;
  /** Dates of eyes without an operation, for which there is no day to count from. */
  withoutSurgery: number;
}

/** One file as it leaves the clinic. */
export interface Copy {
  header: readonly string[];
  /** A row of units below the header; undefined where the file has none. */
  units: readonly string[] | undefined;
  /** Rows of the file in the order in which they are written. */
  rows: readonly number[];
  cellsOf(row: number): readonly string[];
  columns: readonly ColumnRecord[];
}

/** What is needed to copy one file. */
export interface CopyContext extends TimeContext {
  /** Cells of the row of units below the header; none where there is no such row. */
  units: readonly string[];
  /** Code of each patient. */
  codes: readonly string[];
  codeOfSurgeon(written: string): string;
  persons: KnownPersons;
}

interface Made extends ColumnRecord {
  columns: readonly CopyColumn[];
}

const byUnit = (a = '', b = ''): number => (a < b ? -1 : a > b ? 1 : 0);

/**
 * Rows by code, and within a patient as they stood: the order of an export tells who came first. Rows without a patient
 * come last.
 */
function rowOrder(patients: Int32Array, codes: readonly string[]): readonly number[] {
  const sorted = [...codes.keys()].sort((a, b) => byUnit(codes[a], codes[b]));
  const ranks = new Map(sorted.map((patient, rank) => [patient, rank]));
  const rankOf = (row: number): number => ranks.get(patients[row] as number) ?? codes.length;
  return Array.from(patients.keys()).sort((a, b) => rankOf(a) - rankOf(b) || a - b);
}

/** A column that is copied as it stands. */
function sameColumn(context: CopyContext, index: number, role: CopiedRole): CopyColumn {
  const { of, patients, persons } = context;
  const header = writtenHeader(of.file, index, persons);
  return { header, ...copiedCells(of.file, index, role, patients, persons), withoutSurgery: 0 };
}

/** Births and ages of one file make one column, where the ages stand. */
function ageColumns(context: CopyContext, index: number, kind: 'birth' | 'age'): readonly CopyColumn[] {
  const { roles } = context;
  const birth = roles.findIndex((role) => role.kind === 'birth');
  const age = roles.findIndex((role) => role.kind === 'age');
  if (birth < 0) return [sameColumn(context, index, { kind: 'age' })];
  if (kind === 'birth') return age < 0 && index === birth ? [ageColumn(context, birth, undefined)] : [];
  return index === age ? [ageColumn(context, birth, sameColumn(context, age, { kind: 'age' }))] : [];
}

function columnsFor(context: CopyContext, index: number): readonly CopyColumn[] {
  const { of, roles, patients, codes, persons } = context;
  const role = roles[index] as Role;
  switch (role.kind) {
    case 'left-out':
      return [];
    case 'patient': {
      const cell = (row: number): string => codes[patients[row] as number] ?? '';
      return [{ header: 'patient', cell, removed: 0, withoutSurgery: 0 }];
    }
    case 'surgery-date':
      return surgeryColumns(context, index, role.side);
    case 'date':
      return dateColumns(context, index, role, writtenHeader(of.file, index, persons));
    case 'birth':
    case 'age':
      return ageColumns(context, index, role.kind);
    case 'surgeon':
      return [surgeonColumn(of, index, context.codeOfSurgeon)];
    default:
      return [sameColumn(context, index, role)];
  }
}

function made(context: CopyContext, index: number): Made {
  const { of, roles, persons } = context;
  const columns = columnsFor(context, index);
  return {
    header: shownHeader(of.file.header[index] ?? '', index, persons),
    role: roles[index] as Role,
    became: columns.map(({ header }) => header),
    cells: of.profiles[index]?.filled ?? 0,
    removed: columns.reduce((most, one) => Math.max(most, one.removed), 0),
    withoutSurgery: columns.reduce((sum, one) => sum + one.withoutSurgery, 0),
    columns,
  };
}

/** The units of the columns that are copied as they stand. */
function unitsRow({ units }: CopyContext, all: readonly Made[]): readonly string[] | undefined {
  if (units.every((unit) => unit.trim() === '')) return undefined;
  const isSame = ({ role }: Made): boolean => role.kind === 'numbers' || role.kind === 'labels';
  return all.flatMap((one, index) => one.columns.map(() => (isSame(one) ? (units[index] ?? '') : '')));
}

/** Makes the copy of a file: every column by its role. */
export function copyOf(context: CopyContext): Copy {
  const all = context.of.file.header.map((_, index) => made(context, index));
  const columns = all.flatMap((one) => one.columns);
  const header = distinctHeaders(columns.map((one) => one.header));
  let at = 0;
  const records = all.map(({ columns: own, ...record }) => {
    const became = header.slice(at, at + own.length);
    at += own.length;
    return { ...record, became };
  });
  return {
    header,
    units: unitsRow(context, all),
    rows: rowOrder(context.patients, context.codes),
    cellsOf: (row) => columns.map(({ cell }) => cell(row)),
    columns: records,
  };
}
