import type { SampleColumns } from '../../src/analysis/sample.js';
import { integersOf, numbersOf } from '../../src/columns/table.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Derived } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';

/** The columns of one measure; a vector has its second component beside the first. */
export interface MeasureColumns extends SampleColumns {
  second: Float64Array | undefined;
}

export function columnsOf(measure: Measure, { eyes, membership }: Derived): MeasureColumns {
  return {
    values: numbersOf(eyes, measure.name),
    absolute: measure.absoluteFrom === undefined ? undefined : numbersOf(eyes, measure.absoluteFrom),
    second: measure.vector && numbersOf(eyes, `${measure.vector.name}_y`),
    patient: integersOf(eyes, 'patient'),
    analysed: analysedIn(membership[measure.family]),
  };
}
