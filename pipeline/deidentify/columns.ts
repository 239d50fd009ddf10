import { type KnownPersons, knownPersons } from '../../src/deidentify/known-persons.js';
import { type Role, rolesOf } from '../../src/deidentify/roles.js';
import { surgeonsIn } from '../../src/deidentify/surgeons.js';
import { foldedHeader } from '../../src/findings/header.js';
import { headerIdentifier } from '../../src/intake/identifier-header.js';
import { nearest } from '../../src/plan/nearest.js';
import { columnOf } from '../../src/propose/exported.js';
import { headersOf, type SettledPatient } from './choose.js';
import type { ReadFile } from './read-files.js';
import type { Obstacle, Reason, Request } from './request.js';

/** A file of which it is known what becomes of each column. */
export interface PlannedFile extends ReadFile {
  roles: readonly Role[];
  patient: SettledPatient;
}

/** What was typed that no file has, or that may not be kept. */
export function optionFault(files: readonly ReadFile[], request: Request): Obstacle | undefined {
  const headers = files.flatMap(({ of }) => of.file.header);
  const known = new Set(headers.map(foldedHeader));
  const typed = [
    ...request.patient.map((column) => ({ option: '--patient', column })),
    ...request.surgeryDate.map((column) => ({ option: '--surgery-date', column })),
    ...request.keep.map((column) => ({ option: '--keep', column })),
  ];
  const missing = typed.find(({ column }) => !known.has(foldedHeader(column)));
  // A header that is near may be a cell where a file has no header: only words of few letters are told.
  if (missing)
    return {
      kind: 'no-column',
      ...missing,
      nearest: nearest(
        missing.column,
        headers.filter((one) => !/\d/.test(one)),
      ),
    };
  const identifies = request.keep.find((column) => headerIdentifier(column) !== undefined);
  return identifies === undefined ? undefined : { kind: 'keep-identifier', column: identifies };
}

/** Words of the columns that are headed like names. */
export function namedPersons(files: readonly ReadFile[]): KnownPersons {
  return knownPersons(
    files.flatMap(({ of }) =>
      of.file.header.flatMap((header, index) =>
        headerIdentifier(header) === 'header-name' ? columnOf(of.file, index).words : [],
      ),
    ),
  );
}

/** Names and numbers of everybody in the files: patients, surgeons, and whoever else has a column. */
export function personsIn(files: readonly PlannedFile[]): KnownPersons {
  const isNaming = (role: Role): boolean =>
    role.kind === 'patient' || (role.kind === 'left-out' && naming.has(role.why));
  return knownPersons(
    files.flatMap(({ of, roles }) => [
      ...roles.flatMap((role, index) => (isNaming(role) ? columnOf(of.file, index).words : [])),
      ...roles.flatMap((role, index) => (role.kind === 'surgeon' ? surgeonsIn(of, index) : [])),
    ]),
  );
}

const naming = new Set<string>(['header-name', 'value-person', 'header-number', 'patient-number', 'own-number']);

/** What becomes of every column of every file. */
export function plannedFiles(
  files: readonly ReadFile[],
  patients: readonly SettledPatient[],
  { keep, surgeryDate }: Request,
): readonly PlannedFile[] {
  const [reviewed, surgical] = [new Set(keep.map(foldedHeader)), new Set(surgeryDate.map(foldedHeader))];
  return files.map((file, at) => {
    const patient = patients[at] as SettledPatient;
    const roles = rolesOf(file.of, {
      patient: patient.index,
      isReviewed: (header) => reviewed.has(foldedHeader(header)),
      isSurgeryDate: (header) => surgical.has(foldedHeader(header)),
      isRead: file.isRead,
    });
    return { ...file, roles, patient };
  });
}

/** Dates, and no operation to count them from. */
export function withoutSurgeryDate(files: readonly PlannedFile[], persons: KnownPersons): readonly Reason[] {
  const hasKind = (kind: Role['kind']): boolean => files.some(({ roles }) => roles.some((role) => role.kind === kind));
  if (hasKind('surgery-date') || !(hasKind('date') || hasKind('birth'))) return [];
  const headers = files.flatMap((file) => headersOf(file, file.roles, 'date', persons));
  return [{ file: '', why: 'no-surgery-date', headers: [...new Set(headers)] }];
}
