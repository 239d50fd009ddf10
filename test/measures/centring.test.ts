// ../shared/spec/3-measures.md, `prediction_error_centred`: groups under 10 eyes are not centred; shares and absolute
// errors use the mean without the eye's own patient. Means below are worked by hand.
import { describe, expect, it } from 'vitest';
import { fewestForCentring, groupMeans } from '../../src/measures/centring.js';

const close = (values: readonly number[]) =>
  values.map((value) => (Number.isNaN(value) ? Number.NaN : expect.closeTo(value, 12)));

describe('mean of a group', () => {
  // Ten eyes of eight patients: 0.1 … 1.0, sum 5.5; patient 0 has 0.1 and 0.2, patient 1 has 0.3 and 0.4.
  const values = Float64Array.from({ length: 10 }, (_, i) => (i + 1) / 10);
  const patient = Int32Array.of(0, 0, 1, 1, 2, 3, 4, 5, 6, 7);
  const group = new Uint8Array(10).fill(1);

  it('is taken over all its eyes, and without the own patient over the others', () => {
    const { mean, leftOut } = groupMeans(values, group, patient);
    expect(Array.from(mean)).toEqual(close(new Array(10).fill(0.55)));
    // (5.5 − 0.3)/8, (5.5 − 0.7)/8, (5.5 − 0.5)/9 … (5.5 − 1.0)/9.
    expect(Array.from(leftOut)).toEqual(close([0.65, 0.65, 0.6, 0.6, 5 / 9, 4.9 / 9, 4.8 / 9, 4.7 / 9, 4.6 / 9, 0.5]));
  });

  it('does not exist below ten eyes with a value', () => {
    expect(fewestForCentring).toBe(10);
    const { mean, leftOut } = groupMeans(values.slice(0, 9), group.slice(0, 9), patient.slice(0, 9));
    expect([...mean, ...leftOut].every(Number.isNaN)).toBe(true);
    const oneMissing = values.map((value, eye) => (eye === 4 ? Number.NaN : value));
    expect([...groupMeans(oneMissing, group, patient).mean].every(Number.isNaN)).toBe(true);
  });

  it('takes no part of other groups, and eyes of no group have none', () => {
    const eleven = Float64Array.of(...values, 9, 9);
    const { mean, leftOut } = groupMeans(eleven, Uint8Array.of(...group, 0, 2), Int32Array.of(...patient, 8, 9));
    expect(mean[0]).toBeCloseTo(0.55, 12);
    expect([mean[10], mean[11], leftOut[10], leftOut[11]]).toEqual([Number.NaN, Number.NaN, Number.NaN, Number.NaN]);
  });

  it('leaves out the eyes of the patient in the same group alone', () => {
    const other = Float64Array.of(...values, ...values.map((value) => value + 1));
    const groups = Uint8Array.of(...group, ...group.map(() => 2));
    // The patients of the second group are those of the first: nothing of theirs is taken from the other's sum.
    const { leftOut } = groupMeans(other, groups, Int32Array.of(...patient, ...patient));
    expect(leftOut[9]).toBeCloseTo(0.5, 12);
    expect(leftOut[19]).toBeCloseTo(1.5, 12);
  });

  it('is undefined without the own patient where the group is that patient', () => {
    const { mean, leftOut } = groupMeans(values, group, new Int32Array(10));
    expect(mean[0]).toBeCloseTo(0.55, 12);
    expect([...leftOut].every(Number.isNaN)).toBe(true);
  });
});
