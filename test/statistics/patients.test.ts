import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { indexPatients, patientSums, patientsOf, patientVariance } from '../../src/statistics/patients.js';

describe('indexPatients', () => {
  it('numbers patients in the order in which they are met, adjacent or not', () => {
    const { of, sizes, count, meanSize, bilateral } = indexPatients(Int32Array.of(9, 4, 9, 7));
    expect([...of]).toEqual([0, 1, 0, 2]);
    expect([...sizes]).toEqual([2, 1, 1]);
    // Σm²/n = (4 + 1 + 1)/4.
    expect({ count, meanSize, bilateral }).toEqual({ count: 3, meanSize: 1.5, bilateral: 1 });
  });

  it('gives the same index for dense and for scattered codes', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 30 })), (codes) => {
        const dense = indexPatients(Int32Array.from(codes));
        const scattered = indexPatients(Int32Array.from(codes, (code) => code * 60_000_000 - 900_000_000));
        expect(scattered).toEqual(dense);
      }),
    );
  });

  it('is empty without eyes', () => {
    expect(indexPatients(new Int32Array())).toMatchObject({ count: 0, eyes: 0, meanSize: 0, bilateral: 0 });
  });
});

describe('patient sums', () => {
  it('add deviations over the eyes of each patient', () => {
    const patients = indexPatients(Int32Array.of(1, 2, 1));
    expect([...patientSums(Float64Array.of(5, 6, 7), patients, 4)]).toEqual([4, 2]);
  });

  it('have a variance of G/(G − 1)·Σu² from two patients on', () => {
    expect(patientVariance(Float64Array.of(1, -2, 1))).toBe(9);
    expect(patientVariance(Float64Array.of(1))).toBeUndefined();
  });

  it('refuse columns that are not parallel', () => {
    expect(() => patientsOf('mean', Float64Array.of(1), Int32Array.of(1, 2))).toThrow(
      'mean: columns of 1 and 2; expected one length',
    );
  });
});
