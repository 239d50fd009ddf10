import { type Sample, sampleOf } from '../../src/analysis/sample.js';
import type { Measure } from '../../src/records/measure.js';
import type { ResultRow } from '../../src/records/result.js';

const plain: Measure = {
  name: 'error',
  family: 'refraction',
  kind: 'continuous',
  unit: 'D',
  inputs: [],
  formula: 'as given',
  source: 'the test',
  groupings: 'all',
  of: (value) => value,
};

/** All eyes as one group; each of a patient of its own unless patients are given. */
export function sampleFrom(
  values: readonly number[],
  measure: Partial<Measure> = {},
  { patients = values.map((_, i) => i), absolute }: { patients?: readonly number[]; absolute?: readonly number[] } = {},
): Sample {
  const eyes = Int32Array.from(values, (_, i) => i);
  return sampleOf(
    { ...plain, ...measure },
    { key: 'all', eyes },
    {
      values: Float64Array.from(values),
      absolute: absolute && Float64Array.from(absolute),
      patient: Int32Array.from(patients),
      analysed: new Uint8Array(values.length).fill(1),
    },
    { confidence: 0.95, auditIcc: new Map() },
  );
}

/** The row of a statistic. @throws where there is none, or more than one */
export function rowIn(rows: readonly ResultRow[], statistic: string): ResultRow {
  const found = rows.filter((row) => row.statistic === statistic);
  const [row] = found;
  if (!row || found.length > 1) throw new RangeError(`rowIn: ${found.length} rows of ${statistic}`);
  return row;
}
