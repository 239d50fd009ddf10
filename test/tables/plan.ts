import type { Plan } from '../../src/records/plan.js';

const base: Plan = {
  title: 'Made-up audit',
  name: 'made-up-audit',
  period: { from: undefined, to: undefined },
  data_until: undefined,
  allow_outside: false,
  sources: [],
  values: {},
  complications: {},
  prefer: [],
  identifiers_reviewed: [],
  follow_up: {
    visits: [
      { name: '1 month', days: [21, 45], aim: 33, labels: [] },
      { name: '3 months', days: [46, 135], aim: 90, labels: [] },
    ],
    before: { within_days: 400, labels: [] },
    day_of_surgery: 'neither',
    outcome: ['3 months', '1 month'],
    visit_by: 'date',
    after_second_operation: 'leave-out',
  },
  eligibility: {
    preset: 'none',
    eyes_per_patient: 'both',
    exclude: [
      {
        condition: { where: 'axial_length', at: undefined, operator: 'above', value: 30, and: [] },
        reason: 'Axial length over 30 mm',
      },
    ],
  },
  cohorts: { by: 'technique', define: [], reference: 'manual', compare: [] },
  subgroups: ['lens_model', 'surgeon', 'year', 'axial_length'],
  bands: { axial_length: [22, 24.5, 26] },
  predictions: { primary_formula: 'planned', recompute: [], constants: {}, incision_effect: undefined },
  policies: { vertex_mm: 12, lane: 'as-recorded', lens_plane_ratio: 'each-eye' },
  acuity: {
    low_vision: { count_fingers: 1.9, hand_movements: 2.3, light_perception: 2.7, no_light_perception: 3 },
    distance_target: [-0.5, 0.5],
  },
  quality: { limits: {}, off: [], answers: [] },
  statistics: { confidence: 0.95, seed: 1, primary: [], margins: {}, differences: {}, adjust_for: [] },
  monitoring: undefined,
  benchmarks: { published: 'none', former_report: undefined },
  outputs: {
    folder: 'reports',
    language: 'en',
    artwork: 'journal-single',
    profiles: {},
    panels: [],
    tables: ['csv', 'md'],
    table_font: 'Times New Roman',
    figures: ['svg'],
    spreadsheet: 'point',
    small_cells: 0,
    operator_min_eyes: 50,
    eye_rows: 'auto',
    order: [],
    leave_out: [],
  },
};

/** A made-up plan with two visits and two cohorts; sections given replace those of the plan. */
export function planOf(sections: Partial<Plan> = {}): Plan {
  return { ...base, ...sections };
}
