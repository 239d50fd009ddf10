import { countRow, type EyeGroup, type Sample } from '../../src/analysis/sample.js';
import { numbersOf } from '../../src/columns/table.js';
import { examColumns } from '../../src/eligibility/lookup.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Derived } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';
import type { ResultRow } from '../../src/records/result.js';

/** How many acuities of a group were words, whose logMAR a table gives. */
export function lowVisionRow(sample: Sample, group: EyeGroup, measure: Measure, derived: Derived): ResultRow {
  const [field = '', at] = (measure.inputs[0] as string).split('@');
  const kind = examColumns[field]?.kind;
  if (!kind) throw new RangeError(`lowVisionRow: ${measure.name} is no acuity`);
  const rows = at === 'before' ? derived.assembly.before[kind] : derived.assembly.outcome[kind];
  const words = numbersOf(derived.tables.measurements[kind], 'lowVision');
  const analysed = analysedIn(derived.membership[measure.family]);
  const isWord = (eye: number): boolean => analysed[eye] === 1 && (words[rows[eye] as number] ?? 0) > 0;
  return countRow(sample, 'substituted', group.eyes.filter(isWord).length);
}
