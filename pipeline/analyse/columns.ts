import type { SampleColumns } from '../../src/analysis/sample.js';
import { integersOf, numbersOf } from '../../src/columns/table.js';
import type { Basis } from '../../src/comparison/compared.js';
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

/** The values that a share stands on: of a centred error those that were centred without the eye's own patient. */
export function valuesOn(basis: Basis, { values, absolute }: MeasureColumns): Float64Array {
  return basis === 'absolute' ? (absolute ?? values) : values;
}
