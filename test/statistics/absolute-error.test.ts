import { describe, expect, it } from 'vitest';
import { meanAbsolute, medianAbsolute } from '../../src/statistics/absolute-error.js';
import { referencePresent } from '../shared-reference.js';
import { opticsErrors, single } from './made-up-eyes.js';
import { agrees, example } from './reference-examples.js';

/** t(4) at 0.975 (SciPy 1.17.1, t.ppf). */
const t4 = 2.7764451051977934;

// Made-up eyes of `cluster-mean-icc` (shared/reference/stat-examples.json), 12 patients; intervals as printed on the
// statistics page under "Check values".
describe.skipIf(!referencePresent)('the check values of the statistics page', () => {
  const read = (): [Float64Array, Int32Array] => {
    const { input } = example('cluster-mean-icc');
    return [Float64Array.from(input.y), Int32Array.from(input.patient)];
  };

  it('MAE 0.4005263, 0.251508515274 to 0.637836573705', () => {
    const found = meanAbsolute(...read(), 0.95);
    expect(found.value).toBeCloseTo(0.4005263, 7);
    expect(found.low).toBeCloseTo(0.251508515274, 12);
    expect(found.high).toBeCloseTo(0.637836573705, 12);
    expect(found).toMatchObject({ n: 19, patients: 12, method: 'log-patient-t', notes: [] });
  });

  it('MedAE 0.37, 0.2432025929 to 0.5067974071', () => {
    const found = medianAbsolute(...read(), 0.95);
    expect(found.value).toBeCloseTo(0.37, 12);
    expect(found.low).toBeCloseTo(0.2432025929, 10);
    expect(found.high).toBeCloseTo(0.5067974071, 10);
    expect(found).toMatchObject({ n: 19, patients: 12, method: 'rank-effective-n', notes: [] });
  });

  it('the estimates themselves are those of base R', () => {
    const { expected, tolerance } = example('bootstrap-patient-deterministic');
    expect(agrees(meanAbsolute(...read(), 0.95).value, expected.mae.theta, tolerance)).toBe(true);
    expect(agrees(medianAbsolute(...read(), 0.95).value, expected.medae.theta, tolerance)).toBe(true);
  });
});

// Optics page section 5, ids 5.mae and 5.medae.
it('gives MAE and MedAE of the 20 prediction errors', () => {
  expect(meanAbsolute(opticsErrors, single(20), 0.95).value).toBeCloseTo(0.508, 10);
  expect(medianAbsolute(opticsErrors, single(20), 0.95).value).toBeCloseTo(0.34, 10);
});

describe('meanAbsolute', () => {
  it('is the delta interval of the logarithm, by hand', () => {
    // |e| = 1 1 2 2 4: mean 2, s² = 6/4, V = 0.3; half width t·√0.3/2.
    const found = meanAbsolute(Float64Array.of(-1, 1, 2, -2, 4), single(5), 0.95);
    expect(found.value).toBe(2);
    expect(found.low).toBeCloseTo(2 * Math.exp((-t4 * Math.sqrt(0.3)) / 2), 12);
    expect(found.high).toBeCloseTo(2 * Math.exp((t4 * Math.sqrt(0.3)) / 2), 12);
  });

  it('of errors that are all zero is 0 without an interval', () => {
    expect(meanAbsolute(new Float64Array(10), single(10), 0.95)).toMatchObject({
      value: 0,
      low: undefined,
      notes: ['not-estimable:no-spread'],
    });
  });
});
