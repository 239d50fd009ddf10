import { lineOfLogMAR } from '../acuity/lines.js';
import { logMAROfFraction } from '../acuity/log-mar.js';
import type { ResultRow } from '../records/result.js';
import { indexPatients, type PatientIndex } from '../statistics/patients.js';
import { correlationRows, locationRows, presence } from './location.js';
import type { Sample } from './sample.js';
import { hitsOf, shareRows } from './shares.js';

/**
 * Stands in medians for light perception and its absence, which are ranks and no values: worse than everything
 * measured. A statistic that would show it is not estimable.
 */
const worstRank = 99;

/** Eyes whose acuity is a value: everything but light perception and its absence. */
function measured(sample: Sample, codes: Int32Array): Sample {
  const eyes = [...sample.values.keys()].filter((i) => Number.isFinite(sample.values[i]));
  const patients: PatientIndex = indexPatients(Int32Array.from(eyes, (i) => codes[i] as number));
  return { ...sample, values: Float64Array.from(eyes, (i) => sample.values[i] as number), patients };
}

function ranked(sample: Sample): Sample {
  return { ...sample, values: sample.values.map((value) => Math.min(value, worstRank)) };
}

/** A quantile that falls on a rank without a value cannot be printed. */
function withoutRanks(row: ResultRow): ResultRow {
  const beyond = (value: number | undefined): boolean => value !== undefined && value > 4;
  if (beyond(row.value)) {
    return { ...row, value: undefined, ci_low: undefined, ci_high: undefined, note: 'not-estimable:light-perception' };
  }
  return beyond(row.ci_high)
    ? { ...row, ci_low: undefined, ci_high: undefined, note: 'not-estimable:light-perception' }
    : row;
}

/**
 * An acuity: means over measured values and counted low-vision words, medians by rank, cumulative shares by line.
 * Perception of light counts in every share, as not reaching the line.
 */
export function acuityRows(sample: Sample): readonly ResultRow[] {
  const finite = measured(sample, sample.patients.of);
  const isMean = (row: ResultRow): boolean => row.statistic === 'mean' || row.statistic === 'sd';
  const byRank = locationRows(ranked(sample)).filter((row) => !isMean(row));
  return [
    ...presence(sample),
    ...locationRows(finite).filter(isMean),
    ...byRank.map(withoutRanks),
    ...correlationRows(finite),
    ...lineRows(sample),
  ];
}

function lineRows(sample: Sample): readonly ResultRow[] {
  return (sample.measure.lines ?? []).flatMap((line) =>
    shareRows(sample, {
      share: `share_at_or_better_${line}`,
      count: `count_at_or_better_${line}`,
      hits: hitsOf(sample.values, reaching(line)),
      patients: sample.patients,
      method: 'wilson',
    }),
  );
}

/** Whether an acuity, logMAR, is at or better than a Snellen line such as '20/40'. */
export function reaching(line: string): (logMAR: number) => boolean {
  const [numerator, denominator] = line.split('/').map(Number);
  const reached = lineOfLogMAR(logMAROfFraction(numerator as number, denominator as number));
  return (logMAR) => lineOfLogMAR(logMAR) <= reached;
}
