import type { Context } from './context.js';
import type { ExportedFile } from './exported.js';
import type { Profile } from './profile.js';
import type { HeaderReading } from './read-header.js';
import type { Term } from './vocabulary/vocabulary.js';

/** What a column was recognised by. */
type Basis = 'header' | 'part of header' | 'neighbours' | 'cells';

/** A column whose meaning is known. */
export interface Placed {
  index: number;
  term: Term;
  context: Context;
  by: Basis;
  /** Share of the cells that look like it. */
  likeness: number;
  /** What the header says, where the cells contradict it. */
  against: Term | undefined;
}

export type LeftReason =
  /** Neither the header nor the cells are known. */
  | 'unknown'
  | 'free text'
  /** The header names a term, the cells do not look like it. */
  | 'unlike'
  /** Another column gives the same. */
  | 'second'
  /** Known, but an audit has no use for it. */
  | 'not needed'
  | 'which acuity'
  | 'which axis'
  /** Says nothing without another column that is not there. */
  | 'alone'
  /** Another form of the same measurement is taken. */
  | 'other form'
  /** The same values as a column of another file. */
  | 'repeated'
  /** Says something of an operation, and the file has none. */
  | 'no operation';

export interface Left {
  index: number;
  why: LeftReason;
  /** What it would have been. */
  term: Term | undefined;
}

/** A file with what is known of its columns. */
export interface RecognisedFile {
  file: ExportedFile;
  profiles: readonly Profile[];
  headers: readonly HeaderReading[];
  placed: readonly Placed[];
  left: readonly Left[];
  language: string | undefined;
}
