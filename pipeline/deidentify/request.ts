import type { BookFault } from '../../src/deidentify/code-book.js';
import type { DateOrder } from '../../src/intake/date.js';
import type { QuestionText } from '../../src/screens/propose.js';
import type { Unfit } from './open-file.js';
import type { Misplaced } from './places.js';

/** What was asked for on the command line. */
export interface Request {
  files: readonly string[];
  codebook: string;
  out: string;
  /** Headers of the patient's number. */
  patient: readonly string[];
  /** Headers of dates of surgery. */
  surgeryDate: readonly string[];
  /** For files whose dates may be read both ways. */
  dateOrder?: DateOrder | undefined;
  /** Headers of free text that people have read through. */
  keep: readonly string[];
  /** Whether operations get their rank in the year. */
  order: boolean;
  /** Takes the likelier answer and asks nothing. */
  yes: boolean;
}

/** Puts a question to somebody at the terminal; undefined is the answer in brackets. */
export type Ask = (question: QuestionText) => Promise<string | undefined>;

/** Why the files stop the work. `file` is a name that may be shown. */
export type Reason =
  | { file: string; why: 'unfit'; unfit: Unfit }
  | { file: string; why: 'patient-none' }
  /** `headers` may be shown. */
  | { file: string; why: 'patient-open'; headers: readonly string[] }
  | { file: string; why: 'date-order-open' | 'date-order-mixed' }
  /** `headers`: columns of dates, of which none is known to be that of surgery. */
  | { file: ''; why: 'no-surgery-date'; headers: readonly string[] };

/** Why nothing was begun. */
export type Obstacle =
  | Misplaced
  | { kind: 'book-locked'; lock: string }
  | { kind: 'book-fault'; fault: BookFault }
  | { kind: 'out-foreign' | 'out-other-book' | 'out-other-names' }
  /** A header that was typed and that no file has. */
  | { kind: 'no-column'; option: string; column: string; nearest: string | undefined }
  /** A column that identifies persons and was to be kept. */
  | { kind: 'keep-identifier'; column: string };
