import type { Sample } from '../analysis/sample.js';
import type { ResultRow } from '../records/result.js';
import { standardisedDifference, standardisedShareDifference } from '../statistics/cohorts/standardised-difference.js';
import { fewestPatients } from '../statistics/estimate.js';
import { meanOf, standardDeviationOf } from '../statistics/moments.js';

/** A standardised difference beyond this is an imbalance. Austin PC. Stat Med 2009;28:3083–3107. */
const imbalance = 0.1;

function shareOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function differenceOf(compared: Sample, reference: Sample): number | undefined {
  if (compared.measure.kind === 'share') {
    return standardisedShareDifference(shareOf(compared.values), shareOf(reference.values));
  }
  const of = ({ values }: Sample) => {
    const finite = values.filter(Number.isFinite);
    return { mean: meanOf(finite), sd: standardDeviationOf(finite) };
  };
  const [a, b] = [of(compared), of(reference)];
  if (a.mean === undefined || b.mean === undefined || a.sd === undefined || b.sd === undefined) return undefined;
  return standardisedDifference({ mean: a.mean, sd: a.sd }, { mean: b.mean, sd: b.sd });
}

/**
 * Standardised difference of one value between two cohorts, compared − reference: per patient where the eyes of a
 * patient share the value, else per eye. No test: cohorts differ in what they are, by chance or not.
 *
 * @param group      of the comparison
 * @param statistic  'standardised_difference', of vectors with the component behind it
 * @param patients   with a value in either cohort
 * @source Austin PC. Stat Med 2009;28:3083–3107
 */
export function standardisedRow(
  group: string,
  statistic: string,
  compared: Sample,
  reference: Sample,
  patients: number,
): ResultRow {
  const few = Math.min(compared.patients.count, reference.patients.count) < fewestPatients;
  const value = few ? undefined : differenceOf(compared, reference);
  const because = few ? 'not-estimable:few-patients' : 'not-estimable:no-spread';
  const uneven = value !== undefined && Math.abs(value) > imbalance ? 'imbalance' : '';
  const { measure } = compared;
  return {
    measure: measure.vector?.name ?? measure.name,
    group,
    statistic,
    value,
    ci_low: undefined,
    ci_high: undefined,
    n: compared.values.length + reference.values.length,
    eyes: compared.eyes + reference.eyes,
    patients,
    unit: '',
    method: 'standardised-difference',
    note: value === undefined ? because : uneven,
  };
}
