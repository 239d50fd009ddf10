import type { IdentifierKind } from '../findings/detail-kinds.js';
import { headerIdentifier } from '../intake/identifier-header.js';
import { valueIdentifier } from '../intake/identifiers.js';
import type { Laterality } from '../intake/laterality.js';
import type { DecimalMark } from '../intake/number.js';
import { fieldNamed } from '../plan/fields.js';
import { isDate, isWhole } from '../propose/looks.js';
import type { RecognisedFile } from '../propose/placed.js';
import type { Profile, ProfileWord } from '../propose/profile.js';
import type { HeaderReading } from '../propose/read-header.js';
import type { Term } from '../propose/vocabulary/vocabulary.js';
import { isCodeLike, isMeasurement, isPartOfDate } from './harmless.js';
import { isTradeText } from './trade-words.js';

/** Why a column has no copy. */
export type LeftOut =
  | IdentifierKind
  /** Another number of the patient. */
  | 'patient-number'
  /** A number that is different in nearly every row, or a long one: a record's, or a date as a count of days. */
  | 'own-number'
  /** Months and years, or days and months. */
  | 'part-date'
  | 'row-number'
  | 'free-text'
  /** Words whose meaning is not known. */
  | 'unknown-words'
  /** A year of birth without the day: the age at surgery cannot be worked out. */
  | 'birth-year'
  | 'blank';

/** What becomes of a column. */
export type Role =
  | { kind: 'patient' }
  | { kind: 'birth' }
  | { kind: 'age' }
  | { kind: 'surgeon' }
  | { kind: 'reviewed' }
  | { kind: 'surgery-date'; side: Laterality | undefined }
  /** `visit` names the time that its header, or the group above it, tells. */
  | { kind: 'date'; side: Laterality | undefined; visit: string | undefined }
  | { kind: 'numbers'; clock: boolean }
  /**
   * `field`: ours, for cells that list codes; undefined for a single label. `known`: whether the header says what they
   * are; codes of unknown meaning may be the initials of a patient.
   */
  | { kind: 'labels'; field: string | undefined; known: boolean }
  | { kind: 'left-out'; why: LeftOut };

/** What people have decided about columns. */
export interface Choices {
  /** Header index of the patient's number. */
  patient: number;
  isReviewed(header: string): boolean;
  isSurgeryDate(header: string): boolean;
  /** Whether the cells were kept while reading; those of free text, telephones and the like were not. */
  isRead(index: number): boolean;
}

const leftOut = (why: LeftOut): Role => ({ kind: 'left-out', why });

/** What each column of a file is, and so what becomes of it. What is not known to be harmless has no copy. */
export function rolesOf(of: RecognisedFile, choices: Choices): readonly Role[] {
  return of.file.header.map((header, index) => {
    if (index === choices.patient) return { kind: 'patient' };
    return declaredRole(of, index, choices) ?? identifierRole(of, index, header) ?? harmlessRole(of, index, choices);
  });
}

function declaredRole(of: RecognisedFile, index: number, choices: Choices): Role | undefined {
  const header = of.file.header[index] ?? '';
  if (choices.isSurgeryDate(header)) return { kind: 'surgery-date', side: of.headers[index]?.context.side };
  return choices.isReviewed(header) ? { kind: 'reviewed' } : undefined;
}

const isSurgeons = (reading: HeaderReading | undefined): boolean =>
  reading?.matches.some(({ term }) => term === 'surgeon') ?? false;

/** A surgeon who is called by a number already. */
const surgeonCode = /^\p{L}{0,2}\d{1,3}$|^\p{L}$/u;

/** Names and initials of surgeons are turned into codes; codes stay. */
function surgeonRole({ words }: Profile): Role {
  const areCodes = words.every(({ word }) => surgeonCode.test(word.trim()));
  return areCodes ? { kind: 'labels', field: undefined, known: true } : { kind: 'surgeon' };
}

/** A column whose header says that it identifies persons. */
function identifierRole(of: RecognisedFile, index: number, header: string): Role | undefined {
  const kind = headerIdentifier(header);
  if (kind === undefined) return undefined;
  const profile = of.profiles[index] as Profile;
  if (kind === 'header-birth') return profile.share(isDate) >= 0.5 ? { kind: 'birth' } : leftOut('birth-year');
  if (kind === 'header-name' && isSurgeons(of.headers[index])) return surgeonRole(profile);
  return leftOut(kind);
}

/**
 * Our field, or a quantity of the trade, that the column was recognised as. What is known by its cells alone is only
 * believed where nothing else looks like it: years of birth look like counts of cells.
 */
function termOf({ placed, left }: RecognisedFile, index: number): Term | undefined {
  const one = placed.find((each) => each.index === index);
  if (one) return one.by !== 'cells' || sureByCells.has(one.term) ? one.term : undefined;
  const other = left.find((each) => each.index === index);
  return other?.why === 'unlike' ? undefined : other?.term;
}

const sureByCells: ReadonlySet<Term> = new Set(['eye', 'surgery_date', 'exam_date', 'refraction']);

function harmlessRole(of: RecognisedFile, index: number, { isRead }: Choices): Role {
  const profile = of.profiles[index] as Profile;
  const term = termOf(of, index);
  if (!isRead(index)) return leftOut('free-text');
  if (term === 'patient') return leftOut('patient-number');
  if (term === 'remarks') return leftOut('free-text');
  if (term === 'row_number') return leftOut('row-number');
  if (term === 'surgeon') return surgeonRole(profile);
  if (profile.filled === 0) return term === undefined ? leftOut('blank') : { kind: 'numbers', clock: false };
  if (profile.share(isDate) >= 0.5) return dateRole(of, index, term);
  return (term === undefined ? undefined : roleOfTerm(term)) ?? roleOfCells(profile, of.file.decimal);
}

function dateRole({ profiles, headers }: RecognisedFile, index: number, term: Term | undefined): Role {
  const words = (profiles[index] as Profile).words.map(({ word }) => word);
  const { side, visit } = headers[index]?.context ?? { side: undefined, visit: undefined };
  if (valueIdentifier({ words }) === 'value-birth-date') return { kind: 'birth' };
  return term === 'surgery_date' ? { kind: 'surgery-date', side } : { kind: 'date', side, visit: visit?.name };
}

/** By what the header names; the cells are then looked at one by one. */
function roleOfTerm(term: Term): Role | undefined {
  if (term === 'age') return { kind: 'age' };
  const field = fieldNamed(term);
  switch (field?.type) {
    case 'code':
    case 'category':
    case 'laterality':
    case 'yes-no':
      return { kind: 'labels', field: undefined, known: true };
    case 'codes':
      return { kind: 'labels', field: term, known: true };
    case 'date':
      return undefined;
    default:
      return { kind: 'numbers', clock: field?.type === 'clock-or-degrees' };
  }
}

/** Most labels that a column of unknown meaning has. */
const mostLabels = 12;

/** By the cells alone: numbers like those of measurements, or a few short codes. */
function roleOfCells(profile: Profile, decimal: DecimalMark): Role {
  const { words, filled, share } = profile;
  const found = valueIdentifier({ words: words.map(({ word }) => word) });
  if (found) return leftOut(found);
  if (share(({ word }) => isPartOfDate(word)) > 0.5) return leftOut('part-date');
  if (isOwnNumber(profile)) return leftOut('own-number');
  if (share(({ word }) => isMeasurement(word, decimal, false)) >= 0.9) return { kind: 'numbers', clock: false };
  const isFew = words.length <= mostLabels && filled >= 2 * words.length;
  if (isFew && words.every(isPlain)) return { kind: 'labels', field: undefined, known: false };
  return leftOut(words.length > mostLabels ? 'free-text' : 'unknown-words');
}

const isPlain = ({ word }: ProfileWord): boolean => isCodeLike(word) || isTradeText(word);

/** Rows from which on a number that is new in nearly every one is taken for one that tells them apart. */
const leastRows = 20;

/** Years of operations and visits; what is larger than measurements and no such year is a number of something. */
const isYear = ({ value }: ProfileWord): boolean => value >= 1990 && value <= 2100;

function isOwnNumber({ words, filled, share }: Profile): boolean {
  const isLong = share((one) => isWhole(one) && Math.abs(one.value) >= 1000 && !isYear(one)) > 0.5;
  const isDifferent = filled >= leastRows && words.length >= 0.95 * filled && share(isWhole) > 0.9;
  return isLong || isDifferent;
}
