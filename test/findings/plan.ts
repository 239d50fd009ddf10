import type { BlockPlan, ColumnPlan, Plan, Reading, SourcePlan } from '../../src/records/plan.js';

const automatic: Reading = {
  delimiter: 'auto',
  decimal: 'auto',
  date_order: 'auto',
  encoding: 'auto',
  header_row: 1,
  units_row: 'auto',
  missing: [],
};

/** A column of a test's plan: a header, or a header with more. */
export type ColumnForm = string | (Partial<ColumnPlan> & { line?: number });

function columnPlan(field: string, form: ColumnForm): ColumnPlan {
  const nothing = {
    position: undefined,
    occurrence: undefined,
    unit: undefined,
    index: undefined,
    view: undefined,
    numbers: undefined,
    notation: undefined,
    plane: undefined,
    from: undefined,
    words: undefined,
    type: undefined,
    line: 7,
  };
  return { ...nothing, field, column: undefined, ...(typeof form === 'string' ? { column: form } : form) };
}

interface BlockForm extends Partial<Omit<BlockPlan, 'columns' | 'covariates'>> {
  columns?: Readonly<Record<string, ColumnForm>>;
  covariates?: Readonly<Record<string, ColumnForm>>;
}

function blockPlan({ columns = {}, covariates = {}, ...rest }: BlockForm): BlockPlan {
  const plans = (forms: Readonly<Record<string, ColumnForm>>): readonly ColumnPlan[] =>
    Object.entries(forms).map(([field, form]) => columnPlan(field, form));
  return {
    holds: 'exam',
    visit: undefined,
    formula: 'planned',
    constants: {},
    only: [],
    blank_means: {},
    ...rest,
    columns: plans(columns),
    covariates: plans(covariates),
  };
}

export interface SourceForm extends BlockForm {
  file: string | readonly string[];
  reading?: Partial<Reading>;
  blocks?: readonly BlockForm[];
}

/** A source of a test's plan: one block from `columns`, or those of `blocks`. */
function sourcePlan({ file, reading = {}, blocks, ...block }: SourceForm): SourcePlan {
  return {
    file: typeof file === 'string' ? [file] : file,
    line: 5,
    reading: { ...automatic, ...reading },
    blocks: (blocks ?? [block]).map(blockPlan),
    letters_per_line: undefined,
    lens_power_is: 'se',
  };
}

/** A plan with every default, for the sources of a test. */
export function planOf(sources: readonly SourceForm[], more: Partial<Plan> = {}): Plan {
  return {
    title: 'Test',
    name: 'test',
    period: { from: undefined, to: undefined },
    data_until: undefined,
    allow_outside: false,
    sources: sources.map(sourcePlan),
    values: {},
    complications: {},
    prefer: [],
    identifiers_reviewed: [],
    follow_up: {
      visits: [{ name: 'outcome', days: [28, 120], aim: 74, labels: [] }],
      before: { within_days: 400, labels: [] },
      day_of_surgery: 'neither',
      outcome: ['outcome'],
      visit_by: 'date',
      after_second_operation: 'leave-out',
    },
    eligibility: { preset: 'none', eyes_per_patient: 'both', exclude: [] },
    cohorts: { by: undefined, define: [], reference: undefined, compare: [] },
    subgroups: [],
    bands: {},
    predictions: { primary_formula: undefined, recompute: [], constants: {}, incision_effect: undefined },
    policies: { vertex_mm: 12, lane: 'as-recorded', lens_plane_ratio: 'each-eye' },
    acuity: {
      low_vision: { count_fingers: 1.9, hand_movements: 2.3, light_perception: 2.7, no_light_perception: 3 },
      distance_target: [-0.5, 0.5],
    },
    quality: { limits: {}, off: [], answers: [] },
    statistics: { confidence: 0.95, seed: 1, primary: [], margins: {}, differences: {}, adjust_for: [] },
    monitoring: undefined,
    benchmarks: { published: 'all', former_report: undefined },
    outputs: {
      folder: 'reports',
      language: 'en',
      artwork: 'journal-single',
      profiles: {},
      panels: [],
      tables: ['csv', 'md'],
      table_font: 'Times New Roman',
      figures: ['svg', 'png'],
      spreadsheet: 'point',
      small_cells: 0,
      operator_min_eyes: 50,
      eye_rows: 'auto',
      order: [],
      leave_out: [],
    },
    ...more,
  };
}
