import { randomInt } from 'node:crypto';
import { rm } from 'node:fs/promises';
import { type CodeBook, newCodeBook } from '../../src/deidentify/code-book.js';
import { recordText } from '../../src/deidentify/record-text.js';
import type { RunRecord } from '../../src/deidentify/run-record.js';
import { en } from '../../src/words/index.js';
import { Interrupted } from '../commands/interrupt.js';
import type { Io, Say } from '../io.js';
import { isLocked, takeLock } from '../publish/lock.js';
import { moveIntoPlace } from '../publish/replace.js';
import { version } from '../publish/version.js';
import { closeBook, readBook, writeBook } from './book-file.js';
import { chooseDateOrders, choosePatients } from './choose.js';
import { namedPersons, optionFault, type PlannedFile, plannedFiles, withoutSurgeryDate } from './columns.js';
import { type Former, formerCopies } from './former.js';
import { type MadeCopies, makeCopies } from './make-copies.js';
import { type Places, placesFor } from './places.js';
import { labelsOf, pathsOf, type ReadFile, readFiles } from './read-files.js';
import type { Ask, Obstacle, Reason, Request } from './request.js';
import { copyText, writeFolder } from './write-copies.js';

/** How the command ends; what its screen tells is made from it. */
export type DeidentifyOutcome =
  | { kind: 'done'; record: RunRecord; replaced: boolean }
  | { kind: 'stopped'; reasons: readonly Reason[] }
  | { kind: 'refused'; obstacle: Obstacle };

/** What the command needs of the world. */
export interface Surroundings {
  io: Io;
  say: Say;
  signal: AbortSignal;
  /** Undefined where nobody is there to answer. */
  ask: Ask | undefined;
}

/** Name of the written record. */
export const recordName = 'deidentification-record.md';

/** Chance from the operating system's own source: no code may be foretold. */
const draw = (below: number): number => randomInt(below);

const refused = (obstacle: Obstacle): DeidentifyOutcome => ({ kind: 'refused', obstacle });
const stopped = (reasons: readonly Reason[]): DeidentifyOutcome => ({ kind: 'stopped', reasons });

/**
 * Copies of exports without what identifies persons, a code book that leads back to them, and a written record.
 *
 * promise  the exports stay as they are; copies, record and book appear whole or not at all; the book is there before
 *          any copy is; nothing that is written beside the book, shown or recorded holds a cell that identifies a person
 */
export async function deidentify(request: Request, around: Surroundings): Promise<DeidentifyOutcome> {
  const paths = await pathsOf(request.files, around.io);
  const places = await placesFor({ ...request, files: paths });
  if ('kind' in places) return refused(places);
  const { lock } = places.copies;
  if ((await isLocked(around.io, lock)) || !(await takeLock(around.io, lock)))
    return refused({ kind: 'book-locked', lock });
  try {
    return await withBook(request, paths, places, around);
  } finally {
    await rm(lock, { force: true });
  }
}

async function withBook(
  request: Request,
  paths: readonly string[],
  places: Places,
  around: Surroundings,
): Promise<DeidentifyOutcome> {
  const found = await readBook(places.book, around.io);
  if (found && 'fault' in found) return refused({ kind: 'book-fault', fault: found });
  const book = found ?? newCodeBook(draw);
  const former = await formerCopies(places.copies.target, around.io);
  const obstacle = formerObstacle(former, book);
  if (obstacle) return refused(obstacle);
  const read = await readFiles(paths, request, around.io, around.say);
  if ('reasons' in read) return stopped(read.reasons);
  const fault = optionFault(read.files, request);
  if (fault) return refused(fault);
  const planned = await settle(read.files, request, around);
  if ('reasons' in planned) return stopped(planned.reasons);
  const { files, dateOrders } = planned;
  around.say('publish', 0, 1);
  const made = makeCopies(files, dateOrders, book, request, draw);
  if (former.kind === 'copies' && !areSame(former.names, made)) return refused({ kind: 'out-other-names' });
  await place(made, places, found, around);
  return { kind: 'done', record: made.record, replaced: former.kind === 'copies' };
}

function formerObstacle(former: Former, { id }: CodeBook): Obstacle | undefined {
  if (former.kind === 'foreign') return { kind: 'out-foreign' };
  return former.kind === 'copies' && former.book !== id ? { kind: 'out-other-book' } : undefined;
}

const namesOf = ({ copies }: MadeCopies): readonly string[] => [...copies.map(({ name }) => name), recordName];

function areSame(former: readonly string[], made: MadeCopies): boolean {
  return [...former].sort().join('/') === [...namesOf(made)].sort().join('/');
}

/** Settles which column holds the patient's number, what becomes of each column, and in which order dates are written. */
async function settle(
  read: readonly ReadFile[],
  request: Request,
  { ask }: Surroundings,
): Promise<
  | { files: readonly PlannedFile[]; dateOrders: readonly Parameters<typeof makeCopies>[1][number][] }
  | { reasons: readonly Reason[] }
> {
  const persons = namedPersons(read);
  const labels = labelsOf(
    read.map(({ path }) => path),
    persons,
  );
  const files = read.map((file, at) => ({ ...file, label: labels[at] as string }));
  const patients = await choosePatients(files, persons, request, ask);
  if ('reasons' in patients) return patients;
  const planned = plannedFiles(files, patients.each, request);
  const missing = withoutSurgeryDate(planned, persons);
  if (missing.length > 0 && !request.yes) return { reasons: missing };
  const dateOrders = await chooseDateOrders(planned, request, ask);
  return 'reasons' in dateOrders ? dateOrders : { files: planned, dateOrders: dateOrders.each };
}

/** Puts everything in its place: copies aside, then the book, then the copies. A code is never lost. */
async function place(
  { copies, book, record }: MadeCopies,
  { copies: folder, book: bookPath }: Places,
  former: CodeBook | undefined,
  { io, signal }: Surroundings,
): Promise<void> {
  const texts = copies.map(({ name, copy, delimiter }) => ({ file: name, pieces: copyText(copy, delimiter) }));
  try {
    await writeFolder(
      folder.fresh,
      book.id,
      [...texts, { file: recordName, pieces: [recordText(record, version, en)] }],
      signal,
    );
    if (signal.aborted) throw new Interrupted();
    if (former && former.entries.length === book.entries.length) await closeBook(bookPath);
    else await writeBook(bookPath, book);
    await moveIntoPlace(io, folder);
  } catch (error) {
    await rm(folder.fresh, { recursive: true, force: true });
    throw error;
  }
}
