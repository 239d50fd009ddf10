import type { EstimateNote } from './estimate.js';
import { meanOf } from './moments.js';
import type { PatientIndex } from './patients.js';

/** Below this fraction of the whole, what is left without a patient is rounding noise and counts as nothing. */
const noise = 1e-12;

/** Sums of squares of each patient's deviations, and of all. */
interface SquareSums {
  sums: Float64Array;
  squares: Float64Array;
  square: number;
}

function squareSums(values: Float64Array, patients: PatientIndex, centre: number): SquareSums {
  const sums = new Float64Array(patients.count);
  const squares = new Float64Array(patients.count);
  let square = 0;
  for (let i = 0; i < values.length; i++) {
    const g = patients.of[i] as number;
    const deviation = (values[i] as number) - centre;
    sums[g] = (sums[g] as number) + deviation;
    squares[g] = (squares[g] as number) + deviation * deviation;
    square += deviation * deviation;
  }
  return { sums, squares, square };
}

/**
 * Logarithm of the SD (divisor n − 1) without each patient in turn, in closed form from patient sums of y and y².
 *
 * @returns the logarithms, by patient; or why there are none
 * @source definition of the delete-one-cluster jackknife; checked against leaving patients out one by one
 */
export function logDeviationWithout(values: Float64Array, patients: PatientIndex): Float64Array | EstimateNote {
  const { sums, squares, square } = squareSums(values, patients, meanOf(values) ?? 0);
  if (square === 0) return 'not-estimable:no-spread';
  return logsWithout(patients, square, (g, left) => {
    // About the mean of all, so the deviations left sum to −(the patient's sum).
    const rest = square - (squares[g] as number) - (sums[g] as number) ** 2 / left;
    return [rest, left - 1];
  });
}

/** As `logDeviationWithout` for the root mean square, √(Σy²/n). */
export function logRootMeanSquareWithout(values: Float64Array, patients: PatientIndex): Float64Array | EstimateNote {
  const { squares, square } = squareSums(values, patients, 0);
  if (square === 0) return 'not-estimable:no-spread';
  return logsWithout(patients, square, (g, left) => [square - (squares[g] as number), left]);
}

/** ½ ln(sum of squares / divisor) of the eyes left without each patient. */
function logsWithout(
  { sizes, eyes, count }: PatientIndex,
  whole: number,
  without: (g: number, left: number) => [sum: number, divisor: number],
): Float64Array | EstimateNote {
  const logs = new Float64Array(count);
  for (let g = 0; g < count; g++) {
    const [sum, divisor] = without(g, eyes - (sizes[g] as number));
    if (!(divisor > 0 && sum > noise * whole)) return 'not-estimable:one-patient-varies';
    logs[g] = Math.log(sum / divisor) / 2;
  }
  return logs;
}

/**
 * Jackknife variance (G − 1)/G · Σ(l − mean l)² of an estimate without each of G patients.
 *
 * @source Tukey's jackknife by groups (definition)
 * @example jackknifeVariance(Float64Array.of(1, 2, 3)) // 2/3 · 2 = 1.3333
 */
export function jackknifeVariance(logs: Float64Array): number {
  const centre = meanOf(logs) ?? 0;
  let squares = 0;
  for (let g = 0; g < logs.length; g++) squares += ((logs[g] as number) - centre) ** 2;
  return ((logs.length - 1) / logs.length) * squares;
}
