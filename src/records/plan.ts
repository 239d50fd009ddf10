/**
 * audit.yaml, resolved: every default filled in, every word checked. A plan is plain data, so that the
 * manifest can show it whole. Meaning of each key: the table of `src/plan/schema.ts`.
 */

export type Holds = 'surgery' | 'eye' | 'exam' | 'prediction';

export interface Reading {
  delimiter: 'auto' | 'comma' | 'semicolon' | 'tab' | 'pipe';
  decimal: 'auto' | 'point' | 'comma';
  date_order: 'auto' | 'day-first' | 'month-first' | 'year-first';
  encoding: string;
  header_row: number;
  units_row: 'auto' | 'yes' | 'no';
  missing: readonly string[];
}

/** Where one field, or covariate, is found in a file, and how its cells are to be read. */
export interface ColumnPlan {
  /** Our name. */
  field: string;
  /** Their header, as written in audit.yaml; undefined where `position` is given. */
  column: string | undefined;
  /** 1-based position of the column, instead of a header. */
  position: number | undefined;
  /** Which of several columns of the same header, 1-based. */
  occurrence: number | undefined;
  unit: 'D' | 'mm' | 'deg' | 'clock' | undefined;
  /** Keratometric index of a K in dioptres, where it is not 1.3375. */
  index: number | undefined;
  view: 'facing' | 'surgeon-superior' | 'surgeon-temporal' | undefined;
  numbers: 'decimal' | 'logmar' | 'letters' | undefined;
  notation: 'signed' | 'minus' | 'plus' | undefined;
  plane: 'corneal' | 'spectacle' | undefined;
  from: 'front' | 'back' | undefined;
  /** Our value → the words written for it in this column. */
  words: Readonly<Record<string, readonly string[]>> | undefined;
  /** Covariates only. */
  type: 'number' | 'category' | undefined;
  /** Line of audit.yaml, so that a message can name it. */
  line: number;
}

export type Operator =
  | 'is'
  | 'is_not'
  | 'below'
  | 'at_most'
  | 'above'
  | 'at_least'
  | 'between'
  | 'worse_than'
  | 'better_than';

export interface Condition {
  where: string;
  at: string | undefined;
  operator: Operator;
  value: string | number | readonly (string | number)[];
  and: readonly Condition[];
}

/** One kind of row inside a source. A source without `blocks` has exactly one. */
export interface BlockPlan {
  holds: Holds;
  visit: string | undefined;
  formula: string;
  columns: readonly ColumnPlan[];
  covariates: readonly ColumnPlan[];
  constants: Readonly<Record<string, string | number>>;
  only: readonly Condition[];
  blank_means: Readonly<Record<string, string | number>>;
}

export interface SourcePlan {
  /** Paths or patterns as written. */
  file: readonly string[];
  line: number;
  reading: Reading;
  blocks: readonly BlockPlan[];
  letters_per_line: number | undefined;
  lens_power_is: 'se' | 'sphere';
}

export interface Visit {
  name: string;
  /** Days after surgery, both ends included; undefined where every row is labelled. */
  days: readonly [number, number] | undefined;
  aim: number | undefined;
  labels: readonly string[];
}

export interface Limits {
  possible: readonly [number, number] | undefined;
  usual: readonly [number, number] | undefined;
  reason: string | undefined;
}

/** What a journal, or any other place, asks of figures. */
export interface ArtworkProfile {
  width_mm: number;
  type_pt: number;
  dpi: number;
  tiff_dpi: number;
  colours: 'colour' | 'okabe-ito' | 'grey';
}

/** Figures that stand together in one, with letters. */
export interface PanelPlan {
  name: string;
  figures: readonly string[];
  /** Side by side. */
  columns: number;
  /** Profile of the whole. */
  artwork: string;
}

export interface NamedCondition {
  name: string;
  condition: Condition;
}

export interface Plan {
  title: string;
  name: string;
  /** yyyy-mm-dd or a year, as written; undefined: no limit. */
  period: { from: string | undefined; to: string | undefined };
  data_until: string | undefined;
  allow_outside: boolean;
  sources: readonly SourcePlan[];
  values: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>>;
  complications: Readonly<Record<string, readonly string[]>>;
  prefer: readonly string[];
  identifiers_reviewed: readonly { file: string; column: string; reason: string }[];
  follow_up: {
    visits: readonly Visit[];
    before: { within_days: number; labels: readonly string[] };
    day_of_surgery: 'neither' | 'before' | 'after';
    outcome: readonly string[];
    visit_by: 'date' | 'label';
    after_second_operation: 'leave-out' | 'keep';
  };
  eligibility: {
    preset: 'none' | 'publication';
    eyes_per_patient: 'both' | 'first' | 'right' | 'left' | 'random';
    exclude: readonly { condition: Condition; reason: string }[];
  };
  cohorts: {
    by: string | undefined;
    define: readonly NamedCondition[];
    reference: string | undefined;
    compare: readonly string[];
  };
  subgroups: readonly string[];
  bands: Readonly<Record<string, readonly number[]>>;
  predictions: {
    primary_formula: string | undefined;
    recompute: readonly string[];
    constants: Readonly<Record<string, Readonly<Record<string, number>>>>;
    incision_effect: { magnitude: number; at: 'incision' } | undefined;
  };
  policies: { vertex_mm: number; lane: 'as-recorded' | 'to-infinity'; lens_plane_ratio: 'each-eye' | number };
  acuity: {
    low_vision: {
      count_fingers: number;
      hand_movements: number;
      light_perception: number;
      no_light_perception: number;
    };
    distance_target: readonly [number, number];
  };
  quality: {
    limits: Readonly<Record<string, Limits>>;
    off: readonly { rule: string; reason: string }[];
    answers: readonly string[];
  };
  statistics: {
    confidence: number;
    seed: number;
    primary: readonly string[];
    margins: Readonly<Record<string, number>>;
    differences: Readonly<Record<string, number>>;
    adjust_for: readonly string[];
  };
  monitoring: { outcome: string; acceptable: number; unacceptable: number; false_alarm: number } | undefined;
  benchmarks: { published: 'all' | 'none' | readonly string[]; former_report: string | undefined };
  outputs: {
    folder: string;
    language: string;
    artwork: string;
    /** Profiles of artwork of the reader's own, by name. */
    profiles: Readonly<Record<string, ArtworkProfile>>;
    panels: readonly PanelPlan[];
    tables: readonly ('csv' | 'md' | 'docx' | 'tex')[];
    /** Of Word documents. */
    table_font: string;
    figures: readonly ('svg' | 'png' | 'pdf' | 'tiff')[];
    spreadsheet: 'point' | 'comma';
    small_cells: number;
    operator_min_eyes: number;
    eye_rows: 'auto' | 'always' | 'never';
    order: readonly string[];
    leave_out: readonly string[];
  };
}

/** One fault of audit.yaml, told with all the others. */
export interface Fault {
  line: number;
  column: number;
  /** What is wrong, without the remedy. */
  message: string;
  /** Expected form, nearest known word, an example: one line each. */
  advice: readonly string[];
  /** The field or key that is missing, where that is the fault. */
  lacks?: string;
}
