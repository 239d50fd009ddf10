import { acuityRows } from '../../src/analysis/acuity.js';
import { continuousRows, errorRows } from '../../src/analysis/continuous.js';
import { type Sample, sampleOf } from '../../src/analysis/sample.js';
import { propertyRows } from '../../src/analysis/share.js';
import { vectorRows } from '../../src/analysis/vector.js';
import type { Derived } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { columnsOf } from './columns.js';
import type { Groups } from './groups.js';
import { lowVisionRow } from './low-vision.js';

/** The rows of one measure in one group, by what kind of quantity it is. */
function rowsFor(sample: Sample, y: Float64Array): readonly ResultRow[] {
  const { measure } = sample;
  if (measure.kind === 'vector') return vectorRows(sample, y);
  if (measure.kind === 'share') return propertyRows(sample);
  if (measure.lines) return acuityRows(sample);
  return measure.bins ? errorRows(sample) : continuousRows(sample);
}

/** One measure in every group that it is given for. */
export function measureRows(measure: Measure, derived: Derived, groups: Groups, plan: Plan): readonly ResultRow[] {
  const columns = columnsOf(measure, derived);
  const settings = { confidence: plan.statistics.confidence, auditIcc: new Map<string, number | undefined>() };
  const inGroups = [groups.all, ...groups.cohorts, ...(measure.groupings === 'all' ? groups.subgroups : [])];
  return inGroups.flatMap((group) => {
    const sample = sampleOf(measure, group, columns, settings);
    const second = columns.second && sampleOf(measure, group, { ...columns, values: columns.second }, settings);
    const rows = rowsFor(sample, second?.values ?? sample.values);
    return measure.lines ? [...rows, lowVisionRow(sample, group, measure, derived)] : rows;
  });
}
