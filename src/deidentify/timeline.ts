import { columnOf } from '../propose/exported.js';
import type { RecognisedFile } from '../propose/placed.js';
import type { Draw } from './code-book.js';
import type { TimeContext } from './dated-columns.js';
import { type DayZeros, dayZeros, type Operation, ranksInYear } from './operations.js';
import { eyesOfRows } from './people.js';
import type { Role } from './roles.js';
import { daysOfRows } from './written-dates.js';

/** A file whose rows are known by patient and whose dates are known by their order. */
export type DatedFile = Pick<TimeContext, 'of' | 'roles' | 'dateOrder' | 'patients'>;

/** When the eyes of all files were operated. */
export interface Timeline {
  zeros: DayZeros;
  /** For each file, the rank in its year of the operation that a column tells in a row. */
  ranks: readonly ((column: number, row: number) => number | undefined)[];
  /** Rows that tell of an operation. */
  operations: number;
}

interface Told extends Operation {
  file: number;
  place: string;
}

const placeOf = (column: number, row: number): string => `${column} ${row}`;

function proceduresOf({ file, placed }: RecognisedFile): ((row: number) => string) | undefined {
  const index = placed.find(({ term }) => term === 'procedure')?.index;
  if (index === undefined) return undefined;
  const column = columnOf(file, index);
  return (row) => column.at(row);
}

/** Operations that one column of dates tells; rows without a patient tell of nobody's. */
function toldBy(
  dated: DatedFile,
  file: number,
  column: number,
  role: Extract<Role, { kind: 'surgery-date' }>,
): readonly Told[] {
  const { of, dateOrder, patients } = dated;
  const day = daysOfRows(of.file, column, dateOrder);
  const eyes = eyesOfRows(of);
  const procedures = proceduresOf(of);
  const told: Told[] = [];
  for (let row = 0; row < of.file.rows; row++) {
    const when = day(row);
    const patient = patients[row] as number;
    if (typeof when !== 'number' || patient < 0) continue;
    const eye = role.side ?? eyes?.(row) ?? '';
    told.push({ patient, eye, day: when, procedure: procedures?.(row), file, place: placeOf(column, row) });
  }
  return told;
}

/** Gathers the operations of all files: from which day each eye's days count, and the rank of each in its year. */
export function timeline(files: readonly DatedFile[], draw: Draw): Timeline {
  const told = files.flatMap((dated, file) =>
    dated.roles.flatMap((role, column) => (role.kind === 'surgery-date' ? toldBy(dated, file, column, role) : [])),
  );
  const ranks = ranksInYear(told, draw);
  const byFile = files.map(() => new Map<string, number>());
  for (const [at, { file, place }] of told.entries()) byFile[file]?.set(place, ranks[at] as number);
  return {
    zeros: dayZeros(told),
    ranks: byFile.map((ranksOf) => (column, row) => ranksOf.get(placeOf(column, row))),
    operations: told.length,
  };
}
