import type { Estimate } from './estimate.js';
import { meanInterval } from './mean.js';
import type { Patients } from './patients.js';

/**
 * Geometric mean over eyes: the mean interval of the logarithms, back-transformed. For ratio indices, the correction
 * index, and endothelial counts (after/before).
 *
 * @param values     ratios or other quantities above 0, one an eye
 * @param patients   code of each eye's patient
 * @param confidence such as 0.95
 * @throws {RangeError} at a value not above 0 (its eye is set aside and counted before), or as `meanInterval`
 * @source definition; the arithmetic mean of 0.5 and 2.0 is 1.25, which says over-correction where there is none
 * @example geometricMean(Float64Array.of(0.5, 2), Int32Array.of(1, 2), 0.95).value // 1
 */
export function geometricMean(values: Float64Array, patients: Patients, confidence: number): Estimate {
  for (let i = 0; i < values.length; i++) {
    if (!((values[i] as number) > 0)) {
      throw new RangeError(`geometricMean: value ${i} is ${values[i]}; expected above 0`);
    }
  }
  const logs = meanInterval(values.map(Math.log), patients, confidence);
  const back = (log: number | undefined): number | undefined => (log === undefined ? undefined : Math.exp(log));
  return {
    ...logs,
    value: back(logs.value),
    low: back(logs.low),
    high: back(logs.high),
    method: 'geometric-patient-t',
  };
}
