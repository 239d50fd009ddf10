import { analysedEyes, codesOf, type EyeGroup, pick, type SampleColumns } from '../analysis/sample.js';
import { type Cohorts, recogniseDesign } from '../statistics/cohorts/design.js';
import type { Basis } from './compared.js';

/** The eyes of two cohorts that have a value, and the design that their patients form. */
export interface Pair {
  /** Values of the cohort that is compared: differences are these less those of the reference. */
  compared: Float64Array;
  reference: Float64Array;
  /** Eyes behind the values: those of the compared cohort, then those of the reference. */
  eyes: Int32Array;
  /** `a` is the compared cohort, `b` the reference. */
  cohorts: Cohorts;
}

/** Two cohorts in one measure. */
export interface Pairs {
  /** Eyes of both cohorts in the family's analysis, with or without a value. */
  eyes: number;
  on(basis: Basis): Pair;
}

/** What tells the two cohorts apart, and what they are compared by. */
export interface PairColumns extends SampleColumns {
  compared: EyeGroup;
  reference: EyeGroup;
}

const isThere = (value: number): boolean => !Number.isNaN(value);

function pairOf(values: Float64Array, holds: (value: number) => boolean, columns: PairColumns): Pair {
  const { analysed, patient } = columns;
  const eyesOf = ({ eyes }: EyeGroup): Int32Array =>
    analysedEyes(eyes, analysed).filter((eye) => holds(values[eye] as number));
  const [compared, reference] = [eyesOf(columns.compared), eyesOf(columns.reference)];
  const eyes = new Int32Array(compared.length + reference.length);
  eyes.set(compared);
  eyes.set(reference, compared.length);
  return {
    compared: pick(values, compared),
    reference: pick(values, reference),
    eyes,
    cohorts: recogniseDesign(codesOf(patient, compared), codesOf(patient, reference)),
  };
}

/**
 * The eyes of two cohorts in one measure, picked once for each set of values that statistics ask for.
 *
 * @param columns  the measure's values; NaN is missing
 */
export function pairsOf(columns: PairColumns): Pairs {
  const { values, absolute = values, analysed, compared, reference } = columns;
  const counted = ({ eyes }: EyeGroup): number => analysedEyes(eyes, analysed).length;
  const made = new Map<Basis, Pair>();
  const make = (basis: Basis): Pair => {
    if (basis === 'measured') return pairOf(values, Number.isFinite, columns);
    if (basis === 'values') return pairOf(values, isThere, columns);
    if (basis === 'absolute') return absolute === values ? on('values') : pairOf(absolute, isThere, columns);
    const signed = on('absolute');
    return { ...signed, compared: signed.compared.map(Math.abs), reference: signed.reference.map(Math.abs) };
  };
  const on = (basis: Basis): Pair => {
    const pair = made.get(basis) ?? make(basis);
    made.set(basis, pair);
    return pair;
  };
  return { eyes: counted(compared) + counted(reference), on };
}
