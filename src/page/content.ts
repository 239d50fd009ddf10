import type { Figure, TypesetTable } from '../records/report.js';

/** Where an estimate and its interval lie on a scale that is drawn below the number. */
export interface Strip {
  from: number;
  to: number;
  low: number | undefined;
  high: number | undefined;
  value: number;
  /** Places that the scale marks: 0 and 100 %, or no error. */
  marks: readonly { at: number; label: string }[];
}

/** One of the numbers that an audit is judged by, typeset. */
export interface BigNumber {
  label: string;
  value: string;
  /** What it counts, its interval, what belongs to it, what to know of it: one line each. */
  details: readonly string[];
  strip: Strip | undefined;
}

/** A figure as drawn, ready to stand in the page. */
export interface DrawnFigure {
  figure: Figure;
  svg: string;
}

/** A question of the reader's, and what answers it. */
export interface Section {
  /** Anchor of the section, a–z and hyphens. */
  id: string;
  question: string;
  /** The answer in sentences. */
  answer: readonly string[];
  figures: readonly DrawnFigure[];
  tables: readonly TypesetTable[];
  /** Doubts about the data, where they are the answer. */
  findings?: readonly FindingGroup[];
}

/** All findings of one rule. */
export interface FindingGroup {
  rule: string;
  severity: 'set aside' | 'query' | 'note';
  sentence: string;
  count: number;
  /** Internal page only: the first places, as text. */
  places: readonly string[];
}

/** One eye to look at again. */
export interface ReviewEye {
  patient: string;
  laterality: string;
  year: string;
  reasons: readonly string[];
}

/** What only the page that stays in the clinic shows. */
export interface InternalContent {
  review: readonly ReviewEye[];
  /** Where the whole lists stand, relative to the page. */
  files: readonly { file: string; holds: string }[];
}

export interface PageContent {
  language: string;
  title: string;
  /** 'Operated January 2025 to December 2025'; '' where no period is known. */
  period: string;
  cohort: string;
  numbers: readonly BigNumber[];
  sentences: readonly string[];
  warnings: readonly string[];
  sections: readonly Section[];
  /** methods.md without the cautions, which end the page. */
  methods: string;
  cautions: readonly string[];
  internal: InternalContent | undefined;
}
