import type { Plan } from '../records/plan.js';

/** One limit of a comparison between values. */
export interface Threshold {
  value: number;
  unit: 'D' | 'mm' | '°' | 'logMAR' | 'days' | 'rows' | 'share';
  reason: string;
  source: string;
}

const own = 'judgement';
const biometry = 'common practice in UK biometry guidance; from memory';

function limit(value: number, unit: Threshold['unit'], reason: string, source = own): Threshold {
  return { value, unit, reason, source };
}

/**
 * Every limit on what two values, or a whole column, say of one another. An audit overrides one under
 * `quality.limits` by its name: the second number of `usual` takes its place.
 */
export const thresholds = {
  corrected_worse: limit(0.05, 'logMAR', 'half a line: correction does not make an eye worse'),
  corrected_loss: limit(0.19, 'logMAR', 'two lines, less the tolerance with which they are read'),
  uncorrected_good: limit(0, 'logMAR', 'the line that an eye out of focus by 1.50 D does not read'),
  uncorrected_behind: limit(0.4, 'logMAR', 'four lines are more than 0.50 D of defocus cost'),
  in_focus_equivalent: limit(0.5, 'D', 'so small an equivalent blurs by less than two lines'),
  in_focus_cylinder: limit(0.75, 'D', 'so small a cylinder blurs by less than two lines'),
  short_sighted: limit(1.5, 'D', 'so much myopia blurs by four lines or more'),
  long_sighted: limit(2, 'D', 'so much hyperopia blurs an eye that cannot accommodate'),
  minority: limit(0.2, 'share', 'under a fifth of the rows is a slip in each; more is a habit of the file'),
  endothelium_rise: limit(0.1, 'share', 'cells do not grow again; 10 % is more than counting varies'),
  prediction_possible: limit(5, 'D', 'nobody implants a lens that is predicted to miss the target by more'),
  prediction_usual: limit(1, 'D', 'lenses come in half dioptres: a prediction this far off was chosen, or mistyped'),
  surprise: limit(2, 'D', 'beyond what formulas miss; a lens or a sign may have been exchanged'),
  surprise_noted: limit(1, 'D', 'eyes to look at again'),
  surprise_resolved: limit(0.75, 'D', 'what an opposite sign must leave to be named as the likely slip'),
  axial_length_sides: limit(1.5, 'mm', 'rare without a known difference between the eyes'),
  axial_length_sides_noted: limit(0.7, 'mm', 'the measurement is commonly repeated', biometry),
  keratometry_sides: limit(2, 'D', 'rare without corneal disease of one eye'),
  keratometry_sides_noted: limit(0.9, 'D', 'the measurement is commonly repeated', biometry),
  meridians_apart: limit(5, '°', 'the two meridians of a regular cornea are 90° apart, give or take'),
  exchanged_turn: limit(20, '°', 'a steep meridian that turned by 90°, give or take'),
  exchanged_cylinder: limit(1, 'D', 'smaller astigmatism may turn by surgery alone'),
  fellow_apart: limit(0.9, 'D', 'how far K must stand from all other measurements of its own eye'),
  fellow_near: limit(0.45, 'D', 'how near K must stand to the fellow eye: two devices differ by less'),
  fellow_length_apart: limit(0.3, 'mm', 'ten times what a length varies when it is measured again'),
  fellow_length_near: limit(0.1, 'mm', 'three times what a length varies when it is measured again'),
  lens_power: limit(4, 'D', 'a regression this simple misses by less in eyes of 22 to 26 mm'),
  lens_power_extreme: limit(6, 'D', 'the same in shorter and longer eyes, where it fits less well'),
  equivalent: limit(0.13, 'D', 'an eighth, and what rounding to two decimals adds'),
  sign_slip_size: limit(0.25, 'D', 'one step of a refraction: what two visits differ by anyway'),
  sign_slip_least: limit(0.5, 'D', 'smaller equivalents change their sign by chance'),
  grid: limit(0.006, 'D', 'eighths rounded to two decimals are 0.005 from the next eighth'),
  rare_label: limit(0.05, 'share', 'a spelling in fewer rows is likelier a slip than a category of its own'),
  half_blank: limit(0.01, 'share', 'more blanks than this are a habit that has a meaning'),
  constant_rows: limit(20, 'rows', 'fewer rows may agree by chance'),
  copied_rows: limit(5, 'rows', 'so many predictions to a hundredth do not equal the target by chance'),
  exchanged_rows: limit(3, 'rows', 'fewer rows say nothing of two columns'),
  late_exam: limit(730.5, 'days', 'two years: later examinations tell of ageing as much as of surgery'),
  last_exam: limit(3652.5, 'days', 'ten years: a slip of the year is likelier'),
} as const satisfies Readonly<Record<string, Threshold>>;

export type ThresholdName = keyof typeof thresholds;

/**
 * A limit as it holds in this audit.
 *
 * @example thresholdOf('surprise', plan) // 2
 */
export function thresholdOf(name: ThresholdName, plan: Plan): number {
  return plan.quality.limits[name]?.usual?.[1] ?? thresholds[name].value;
}
