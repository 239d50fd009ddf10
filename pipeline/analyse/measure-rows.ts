import { acuityRows } from '../../src/analysis/acuity.js';
import { categoryRows } from '../../src/analysis/change.js';
import { continuousRows, errorRows } from '../../src/analysis/continuous.js';
import { presence } from '../../src/analysis/location.js';
import { type EyeGroup, type Sample, sampleOf } from '../../src/analysis/sample.js';
import { propertyRows } from '../../src/analysis/share.js';
import { vectorRows } from '../../src/analysis/vector.js';
import type { Derived } from '../../src/records/derived.js';
import type { Family, Measure } from '../../src/records/measure.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { columnsOf } from './columns.js';
import { both, type Groups } from './groups.js';
import { lowVisionRow } from './low-vision.js';
import { ofMachines } from './machines.js';
import { ratioOfMeans } from './ratio-of-means.js';

/** The rows of one measure in one group, by what kind of quantity it is. */
function rowsFor(sample: Sample, y: Float64Array): readonly ResultRow[] {
  const { measure } = sample;
  if (measure.kind === 'vector') return vectorRows(sample, y);
  if (measure.kind === 'share') return propertyRows(sample);
  if (measure.kind === 'category') return categoryRows(sample);
  if (measure.lines) return acuityRows(sample);
  return measure.better === 'nearer zero' ? errorRows(sample) : continuousRows(sample);
}

/** All eyes, cohorts, subgroups, and the groups of the measure's own table. */
function groupsFor({ groupings, strata = [], unpooled }: Measure, groups: Groups): readonly EyeGroup[] {
  const own = groups.strata.filter(({ field }) => strata.includes(field)).flatMap((one) => one.groups);
  if (unpooled) return own.flatMap((group) => [group, ...groups.cohorts.map((cohort) => both(group, cohort))]);
  return [groups.all, ...groups.cohorts, ...(groupings === 'all' ? groups.subgroups : []), ...own];
}

/** Families that many audits have no eye of: what nobody has is told by its counts alone. */
const sparse: ReadonlySet<Family> = new Set(['cornea', 'toric']);

/** Whether a group is one of the measure's own table: it is left out where no eye of it has a value. */
function isOfStratum({ strata = [] }: Measure, { key }: EyeGroup): boolean {
  return strata.some((field) => key.split(';').some((pair) => pair.startsWith(`${field}=`)));
}

/** What some measures have beside their own values: words among acuities, the classic form of an index. */
function besideRows(sample: Sample, group: EyeGroup, measure: Measure, derived: Derived): readonly ResultRow[] {
  if (measure.lines) return [lowVisionRow(sample, group, measure, derived)];
  return measure.ratioOf ? [ratioOfMeans(sample, group, measure, measure.ratioOf, derived)] : [];
}

/** Whether any eye analysed has a value. */
function isAnyones({ values, analysed }: ReturnType<typeof columnsOf>): boolean {
  return values.some((value, eye) => analysed[eye] === 1 && !Number.isNaN(value));
}

/** One measure in every group that it is given for. */
export function measureRows(measure: Measure, derived: Derived, groups: Groups, plan: Plan): readonly ResultRow[] {
  const columns = columnsOf(measure, derived);
  const settings = { confidence: plan.statistics.confidence, auditIcc: new Map<string, number | undefined>() };
  // A group without an eye of what others have keeps its rows: tables ask for them, and show that there is none.
  const isNobodys = sparse.has(measure.family) && !isAnyones(columns);
  return groupsFor(measure, groups).flatMap((group) => {
    const sample = sampleOf(measure, group, columns, settings);
    if (sample.values.length === 0 && isOfStratum(measure, group)) return [];
    if (isNobodys) return presence(sample);
    const second = columns.second && sampleOf(measure, group, { ...columns, values: columns.second }, settings);
    const rows = rowsFor(sample, second?.values ?? sample.values);
    const noted = measure.family === 'resources' ? ofMachines(rows, group, columns, derived) : rows;
    return [...noted, ...besideRows(sample, group, measure, derived)];
  });
}
