import { shownHeader } from '../../src/deidentify/headers.js';
import type { KnownPersons } from '../../src/deidentify/known-persons.js';
import { type PatientColumn, patientColumns } from '../../src/deidentify/patient-column.js';
import type { Role } from '../../src/deidentify/roles.js';
import { dateOrderOf } from '../../src/deidentify/written-dates.js';
import type { DateOrder } from '../../src/intake/date.js';
import type { RecognisedFile } from '../../src/propose/placed.js';
import { en } from '../../src/words/index.js';
import type { Ask, Reason, Request } from './request.js';

/** A file with the name that may be shown. */
export interface NamedFile {
  of: RecognisedFile;
  label: string;
}

/** What was settled for each file, or what is still open. */
export type Settled<T> = { each: readonly T[] } | { reasons: readonly Reason[] };

const { questions } = en.deidentify;

/** Settles files one after the other, so that questions come in order. */
async function settleEach<F, T>(
  files: readonly F[],
  settle: (file: F, at: number) => Promise<T | Reason>,
): Promise<Settled<T>> {
  const each: T[] = [];
  const reasons: Reason[] = [];
  for (const [at, file] of files.entries()) {
    const found = await settle(file, at);
    if (isReason(found)) reasons.push(found);
    else each.push(found);
  }
  return reasons.length > 0 ? { reasons } : { each };
}

const isReason = (found: unknown): found is Reason => typeof found === 'object' && found !== null && 'why' in found;

/** A column of which it is settled that it holds the patient's number. */
export interface SettledPatient extends PatientColumn {
  index: number;
}

/** Asks which of the candidates holds the number; an empty line takes the likelier. */
async function askPatient(
  { of, label }: NamedFile,
  column: SettledPatient,
  { number, asked }: { number: number; asked: number },
  persons: KnownPersons,
  ask: Ask,
): Promise<SettledPatient> {
  const headerOf = (index: number): string => shownHeader(of.file.header[index] ?? '', index, persons);
  const options = column.candidates.map((one) => ({
    value: headerOf(one.index),
    text: questions.candidate(one.keys.size, one.sharedWith),
  }));
  const found = questions.patient;
  const answer = await ask({ number, of: asked, place: label, found, options, likelier: headerOf(column.index) });
  const chosen = column.candidates.find((one) => headerOf(one.index) === answer);
  return chosen ? { ...column, index: chosen.index, names: chosen.names } : column;
}

/** Which column of each file holds the patient's number; asks where two look alike. */
export async function choosePatients(
  files: readonly NamedFile[],
  persons: KnownPersons,
  { patient, yes }: Request,
  ask: Ask | undefined,
): Promise<Settled<SettledPatient>> {
  const columns = patientColumns(
    files.map(({ of }) => of),
    patient,
  );
  const asked = columns.filter(({ doubt, index }) => doubt !== undefined && index !== undefined).length;
  let number = 0;
  return settleEach(files, async (file, at): Promise<SettledPatient | Reason> => {
    const column = columns[at] as PatientColumn;
    const { index, doubt, candidates } = column;
    if (index === undefined) return { file: file.label, why: 'patient-none' };
    if (doubt === undefined || yes) return { ...column, index };
    number++;
    if (ask) return askPatient(file, { ...column, index }, { number, asked }, persons, ask);
    const headers = candidates.map((one) => shownHeader(file.of.file.header[one.index] ?? '', one.index, persons));
    return { file: file.label, why: 'patient-open', headers };
  });
}

const orders = ['day-first', 'month-first', 'year-first'] as const;

/** In which order each file writes its dates; asks where every date may be read in two. */
export async function chooseDateOrders(
  files: readonly (NamedFile & { roles: readonly Role[] })[],
  { dateOrder }: Request,
  ask: Ask | undefined,
): Promise<Settled<DateOrder>> {
  const judged = files.map(({ of, roles }) => dateOrderOf(of.file, roles));
  const open = judged.filter(({ order }) => order === undefined).length;
  let number = 0;
  return settleEach(files, async ({ label }, at): Promise<DateOrder | Reason> => {
    const found = judged[at] as (typeof judged)[number];
    if (found.order !== undefined) return found.order === 'none' ? 'year-first' : found.order;
    number++;
    if (dateOrder) return dateOrder;
    if (found.doubt === 'contradictory') return { file: label, why: 'date-order-mixed' };
    if (!ask) return { file: label, why: 'date-order-open' };
    const options = orders.map((value) => ({ value, text: questions.orders[value] }));
    const answer = await ask({
      number,
      of: open,
      place: label,
      found: questions.dateOrder,
      options,
      likelier: undefined,
    });
    const order = orders.find((one) => one === answer);
    return order ?? { file: label, why: 'date-order-open' };
  });
}

/** Headers of the columns that a role was given to, as they may be shown. */
export function headersOf(
  { of }: NamedFile,
  roles: readonly Role[],
  kind: Role['kind'],
  persons: KnownPersons,
): readonly string[] {
  return roles.flatMap((role, index) =>
    role.kind === kind ? [shownHeader(of.file.header[index] ?? '', index, persons)] : [],
  );
}
