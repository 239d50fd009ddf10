import { type EyeGroup, pick } from '../../src/analysis/sample.js';
import { integersOf, numbersOf } from '../../src/columns/table.js';
import { type About, rowAbout } from '../../src/comparison/rows.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import { fixed, numberStyles } from '../../src/format/number.js';
import { trendErrors, trendFields, trendName } from '../../src/measures/trends.js';
import type { Derived } from '../../src/records/derived.js';
import type { Family } from '../../src/records/measure.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import type { Estimate } from '../../src/statistics/estimate.js';
import { indexPatients, type PatientIndex } from '../../src/statistics/patients.js';
import { smoothOf, straightLine } from '../../src/statistics/smooth.js';
import type { Groups } from './groups.js';

/** Places at which a curve is told, from one end of the data to the other. */
const places = 33;

/** Two values of the same eyes. */
export interface Pairs {
  about: About;
  x: Float64Array;
  y: Float64Array;
  patients: PatientIndex;
}

/** The analysed eyes of a group that have both values, columns of the eyes. */
export function pairsOf(
  { eyes, membership }: Derived,
  { measure, family: of }: { measure: string; family: Family },
  group: EyeGroup,
  across: Float64Array,
  up: Float64Array,
): Pairs {
  const patient = integersOf(eyes, 'patient');
  const analysed = analysedIn(membership[of]);
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

function estimated({ about }: Pairs, statistic: string, found: Estimate, unit: string): ResultRow {
  return rowAbout(about, found, {
    statistic,
    value: found.value,
    ci_low: found.low,
    ci_high: found.high,
    unit,
    method: found.method,
    note: found.notes.join(';'),
  });
}

/** Least-squares line of the achieved on the planned change, in all eyes and in each cohort. */
function changeRows(derived: Derived, group: EyeGroup, confidence: number): readonly ResultRow[] {
  const about = { measure: 'achieved_change', family: 'refraction' } as const;
  const column = (name: string) => numbersOf(derived.eyes, name);
  const pairs = pairsOf(derived, about, group, column('planned_change'), column('achieved_change'));
  return [...presenceRows(pairs), ...lineRows(pairs, '', confidence)];
}

/**
 * A least-squares line, where eyes differ in x at all.
 *
 * @param suffix  behind the names of its statistics, where the measure has others
 */
export function lineRows(pairs: Pairs, suffix: string, confidence: number): readonly ResultRow[] {
  const { about, x, y, patients } = pairs;
  const line = straightLine(x, y, patients);
  if (!line) return [];
  const of = { n: x.length, patients: patients.count };
  const { rSquared: value } = line;
  const squared = { statistic: `r_squared${suffix}`, value, method: 'least-squares' };
  return [
    estimated(pairs, `slope${suffix}`, line.slope(confidence), ''),
    estimated(pairs, `intercept${suffix}`, line.at(0, confidence), 'D'),
    ...(value === undefined ? [] : [rowAbout(about, of, squared)]),
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
    return estimated(pairs, name, smooth.at(place, confidence), 'D');
  };
  return [
    ...presenceRows(pairs),
    estimated(pairs, 'slope', line.slope(confidence), `D/${unit}`),
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
        const about = { measure: trendName(field, name), family: 'refraction' } as const;
        const pairs = pairsOf(
          derived,
          about,
          all,
          numbersOf(derived.eyes, field.measure),
          numbersOf(derived.eyes, name),
        );
        return trendRows(pairs, field.unit, confidence);
      }),
    ),
  ];
}
