import { fewestForCentring, manyForCentring } from '../measures/centring.js';
import { type Estimate, type EstimateNote, estimate, type Limits } from '../statistics/estimate.js';
import { meanVariance, tHalfWidth } from '../statistics/mean.js';
import { meanOf, sumOf } from '../statistics/moments.js';
import { type PatientIndex, patientSums } from '../statistics/patients.js';
import { type ConstantEyes, constantFor, errorsAt, slopesAt } from './lens-constant.js';

/** The constant of a lens, and what the constants of the other patients make of each eye. */
export interface FoundConstant {
  estimate: Estimate;
  /** Error of each eye with the constant found without its patient, dioptres; undefined where there is none. */
  leftOut: Float64Array | undefined;
}

/**
 * Error of each eye with the constant that the other patients' eyes lead to: one Newton step away from the constant of
 * all, so that the difference is of second order in one patient's part of the eyes.
 */
function errorsWithoutOwn(of: ConstantEyes, constant: number, patients: PatientIndex): Float64Array {
  const errors = errorsAt(of, constant);
  const slopes = slopesAt(of, constant, errors);
  const [ownErrors, ownSlopes] = [patientSums(errors, patients, 0), patientSums(slopes, patients, 0)];
  const allSlopes = sumOf(slopes);
  const constants = errors.map((_, eye) => {
    const patient = patients.of[eye] as number;
    return constant - (ownErrors[patient] as number) / (allSlopes - (ownSlopes[patient] as number));
  });
  return errorsAt(of, constants);
}

/** The two constants at which the mean error is t(G − 1)·√V away from zero; V at the constant found. */
function limitsOf(of: ConstantEyes, constant: number, patients: PatientIndex, confidence: number) {
  const errors = errorsAt(of, constant);
  const half = tHalfWidth(confidence, patients, meanVariance(errors, meanOf(errors) as number, patients));
  // The mean error falls as the constant grows: at the lower limit it is still positive.
  const [low, high] = [constantFor(of, half), constantFor(of, -half)];
  return low === undefined || high === undefined ? 'not-estimable:no-constant-limit' : ([low, high] satisfies Limits);
}

/**
 * The lens constant that makes the mean prediction error zero, with its interval: the two constants at which the mean
 * error equals ± t(G − 1)·√V, V from the patients' sums of the errors at the constant found.
 *
 * @param of        eyes of one lens family; a formula that does not refuse them
 * @param patients  of the same eyes
 * @returns no value below 10 eyes, nor where no constant of the bracket brings the mean error to zero; marked
 * provisional below 30 eyes
 * @source Wang L, Koch DD, Hill W, Abulafia A. J Cataract Refract Surg 2017;43:999–1002 (requirement); numbers of eyes
 * are judgements of the project
 * @example lensConstant(eyes, patients, 0.95).estimate.value // 119.03
 */
export function lensConstant(of: ConstantEyes, patients: PatientIndex, confidence: number): FoundConstant {
  const about = { n: of.eyes.length, patients: patients.count, method: 'constant-zero-mean' } as const;
  const none = (note: EstimateNote): FoundConstant => ({
    estimate: { ...about, value: undefined, low: undefined, high: undefined, notes: [note] },
    leftOut: undefined,
  });
  if (about.n === 0) return none('not-estimable:no-eyes');
  if (about.n < fewestForCentring) return none('not-estimable:few-eyes');
  const constant = constantFor(of, 0);
  if (constant === undefined) return none('not-estimable:no-constant');
  const marks: readonly EstimateNote[] = about.n < manyForCentring ? ['provisional:constant'] : [];
  return {
    estimate: estimate(about, constant, () => limitsOf(of, constant, patients, confidence), marks),
    leftOut: patients.count > 1 ? errorsWithoutOwn(of, constant, patients) : undefined,
  };
}
