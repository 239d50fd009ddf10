import { type EyeGroup, pick } from '../../src/analysis/sample.js';
import { integersOf, numbersOf } from '../../src/columns/table.js';
import { type About, estimated, rowAbout } from '../../src/comparison/rows.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import { fixed, numberStyles } from '../../src/format/number.js';
import { trendErrors, trendFields, trendName } from '../../src/predictions/trends.js';
import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { indexPatients, type PatientIndex } from '../../src/statistics/patients.js';
import { smoothOf, straightLine } from '../../src/statistics/smooth.js';
import type { Groups } from './groups.js';

/** Places at which a curve is told, from one end of the data to the other. */
const places = 33;

/** Two values of the same eyes. */
interface Pairs {
  about: About;
  x: Float64Array;
  y: Float64Array;
  patients: PatientIndex;
}

/** The analysed eyes of a group that have both values. */
function pairsOf(derived: Derived, measure: string, group: EyeGroup, x: string, y: string): Pairs {
  const { eyes, membership } = derived;
  const [across, up, patient] = [numbersOf(eyes, x), numbersOf(eyes, y), integersOf(eyes, 'patient')];
  const analysed = analysedIn(membership.refraction);
  const family = group.eyes.filter((eye) => analysed[eye] === 1);
  const both = family.filter((eye) => Number.isFinite((across[eye] as number) + (up[eye] as number)));
  return {
    about: { measure, group: group.key, eyes: family.length, unit: 'D' },
    x: pick(across, both),
    y: pick(up, both),
    patients: indexPatients(both.map((eye) => patient[eye] as number)),
  };
}

function presenceRows({ about, x, patients }: Pairs): readonly ResultRow[] {
  const of = { n: x.length, patients: patients.count };
  const counted = (statistic: string, value: number): ResultRow =>
    rowAbout(about, of, { statistic, value, unit: 'eyes', method: 'count' });
  return [counted('n', x.length), counted('missing', about.eyes - x.length)];
}

/** Least-squares line of the achieved on the planned change, in all eyes and in each cohort. */
function changeRows(derived: Derived, group: EyeGroup, confidence: number): readonly ResultRow[] {
  const pairs = pairsOf(derived, 'achieved_change', group, 'planned_change', 'achieved_change');
  const { about, x, y, patients } = pairs;
  const line = straightLine(x, y, patients);
  if (!line) return presenceRows(pairs);
  const of = { n: x.length, patients: patients.count };
  const { rSquared: value } = line;
  return [
    ...presenceRows(pairs),
    estimated(pairs.about, 'slope', line.slope(confidence), ''),
    estimated(pairs.about, 'intercept', line.at(0, confidence), 'D'),
    ...(value === undefined ? [] : [rowAbout(about, of, { statistic: 'r_squared', value, method: 'least-squares' })]),
  ];
}

/** The curve at places from end to end, and the slope of a straight line, where eyes differ in x at all. */
function trendRows(pairs: Pairs, unit: string, confidence: number): readonly ResultRow[] {
  const { x, y, patients } = pairs;
  const [smooth, line] = [smoothOf(x, y, patients), straightLine(x, y, patients)];
  if (!smooth || !line) return presenceRows(pairs);
  const [low, high] = [x.reduce((a, b) => Math.min(a, b)), x.reduce((a, b) => Math.max(a, b))];
  const at = (place: number): ResultRow => {
    const name = `smooth_at_${fixed(place, 4, numberStyles.filePoint)}`;
    return estimated(pairs.about, name, smooth.at(place, confidence), 'D');
  };
  return [
    ...presenceRows(pairs),
    estimated(pairs.about, 'slope', line.slope(confidence), `D/${unit}`),
    ...Array.from({ length: places }, (_, i) => at(low + ((high - low) * i) / (places - 1))),
  ];
}

/** How the achieved change follows the planned one, and every prediction error the eye's length and cornea. */
export function trendsOf(derived: Derived, { all, cohorts }: Groups, plan: Plan): readonly ResultRow[] {
  const { confidence } = plan.statistics;
  const hasPrediction = numbersOf(derived.eyes, 'prediction_error').some(Number.isFinite);
  return [
    ...[all, ...cohorts].flatMap((group) => changeRows(derived, group, confidence)),
    ...trendErrors(derived.registry, hasPrediction).flatMap(({ name }) =>
      trendFields.flatMap((field) => {
        const pairs = pairsOf(derived, trendName(field, name), all, field.measure, name);
        return trendRows(pairs, field.unit, confidence);
      }),
    ),
  ];
}
