import { calendarFromDays } from '../intake/calendar.js';
import { parseLaterality } from '../intake/laterality.js';
import { eyeCode } from '../propose/eye-codes.js';
import type { Days } from '../units.js';
import type { Draw } from './code-book.js';

/** One operation as a row tells it. */
export interface Operation {
  /** Number of the patient among all patients of the files. */
  patient: number;
  /** As `eyeKey` gives it; '' where the file does not say which eye. */
  eye: string;
  /** Days since 1970-01-01. */
  day: Days;
  /** What was done, as written; undefined where the file does not say. */
  procedure: string | undefined;
}

/** An eye as files are compared by it: right, left, or the cell's own word where it names neither. */
export function eyeKey(word: string): string {
  return parseLaterality(word) ?? eyeCode(word) ?? word.trim().toLowerCase();
}

/** Operations that follow a lens's. Days count from the lens's own. */
const later = new Set(['reposition', 'exchange', 'enhancement', 'other']);

const isLens = ({ procedure }: Operation): boolean => !later.has((procedure ?? '').trim().toLowerCase());

/** The day from which an eye's days count, and how it was found. */
export interface DayZeros {
  /** First lens operation of an eye; undefined where the files tell of none. */
  ofEye(patient: number, eye: string): Days | undefined;
  /** First lens operation of a patient, whichever eye. */
  ofPatient(patient: number): Days | undefined;
  /** Eyes with more than one lens operation. */
  repeated: number;
}

/**
 * The first lens operation of every eye. Where a surgery list does not say which eye, its day stands for both.
 *
 * @param operations  of all files
 */
export function dayZeros(operations: readonly Operation[]): DayZeros {
  const eyes = new Map<string, Set<Days>>();
  const patients = new Map<number, Days>();
  for (const one of operations.filter(isLens)) {
    const key = `${one.patient} ${one.eye}`;
    eyes.set(key, (eyes.get(key) ?? new Set()).add(one.day));
    patients.set(one.patient, Math.min(one.day, patients.get(one.patient) ?? one.day));
  }
  const first = (key: string): Days | undefined => {
    const days = eyes.get(key);
    return days && Math.min(...days);
  };
  return {
    ofEye: (patient, eye) => first(`${patient} ${eye}`) ?? first(`${patient} `),
    ofPatient: (patient) => patients.get(patient),
    repeated: [...eyes.values()].filter((days) => days.size > 1).length,
  };
}

/** More than two numbers out of this many are seldom the same. */
const ties = 2 ** 47;

/**
 * Rank of each operation in its year, 1 the first. Operations of one day stand in a random order; rows that tell of one
 * operation (patient, eye and day) have one rank.
 *
 * @returns in the order of `operations`
 * @example ranksInYear([{ patient: 0, eye: 'right', day: 20089, procedure: undefined }], draw) // [1]
 */
export function ranksInYear(operations: readonly Operation[], draw: Draw): readonly number[] {
  const keyOf = ({ patient, eye, day }: Operation): string => `${patient} ${eye} ${day}`;
  const distinct = new Map(operations.map((one) => [keyOf(one), one.day]));
  const drawn = [...distinct].map(([key, day]) => ({ key, day, tie: draw(ties) }));
  drawn.sort((a, b) => a.day - b.day || a.tie - b.tie);
  const met = new Map<number, number>();
  const ranks = new Map<string, number>();
  for (const { key, day } of drawn) {
    const { year } = calendarFromDays(day);
    met.set(year, (met.get(year) ?? 0) + 1);
    ranks.set(key, met.get(year) as number);
  }
  return operations.map((one) => ranks.get(keyOf(one)) as number);
}
