import { describe, expect, it } from 'vitest';
import { type FormulaName, formulaNames } from '../../src/optics/formulas/formula.js';
import { lensConstant } from '../../src/predictions/constant-interval.js';
import { type ConstantEyes, constantFor, errorsAt } from '../../src/predictions/lens-constant.js';
import { meanOf } from '../../src/statistics/moments.js';
import { indexPatients } from '../../src/statistics/patients.js';
import { tenEyes } from './ten-eyes.js';

const each = (eyes: number, perPatient = 1) =>
  indexPatients(Int32Array.from({ length: eyes }, (_, eye) => Math.floor(eye / perPatient)));

const without = (of: ConstantEyes, patient: (eye: number) => boolean): ConstantEyes => {
  const kept = [...of.eyes.keys()].filter((eye) => !patient(eye));
  return {
    formula: of.formula,
    eyes: kept.map((eye) => of.eyes[eye] as ConstantEyes['eyes'][number]),
    power: Float64Array.from(kept, (eye) => of.power[eye] as number),
    achieved: Float64Array.from(kept, (eye) => of.achieved[eye] as number),
  };
};

// Constants and SDs at them: the ten-eye example, R 4.2.2 and Python (test/optics/formula-checks.csv).
const example: Readonly<Record<FormulaName, readonly [constant: number, sd: number]>> = {
  'SRK/T': [119.027129, 0.274624],
  'Holladay 1': [1.837637, 0.343284],
  'Hoffer Q': [5.598741, 0.354296],
  Haigis: [1.365734, 0.318217],
};
// R 4.2.2: qt(0.975, 9)
const t9 = 2.2621571628;

describe('lensConstant', () => {
  it.each(formulaNames)('%s: the ten-eye example, its limits where the mean error is t·SD/√10 away', (name) => {
    const of = tenEyes(name);
    const [constant, sd] = example[name];
    const { estimate } = lensConstant(of, each(10), 0.95);
    expect(estimate.value).toBeCloseTo(constant, 5);
    expect(estimate.notes).toEqual(['provisional:constant']);
    const half = (t9 * sd) / Math.sqrt(10);
    expect(meanOf(errorsAt(of, estimate.low as number))).toBeCloseTo(half, 5);
    expect(meanOf(errorsAt(of, estimate.high as number))).toBeCloseTo(-half, 5);
    expect(estimate.low).toBeLessThan(constant);
    expect(estimate.high).toBeGreaterThan(constant);
  });

  it('counts eyes of one patient that are all alike as one: the same interval as without the copies', () => {
    const single = lensConstant(tenEyes('SRK/T'), each(10), 0.95).estimate;
    const fourfold = lensConstant(
      tenEyes('SRK/T', 4),
      indexPatients(Int32Array.from({ length: 40 }, (_, i) => i % 10)),
      0.95,
    );
    expect(fourfold.estimate.value).toBeCloseTo(single.value as number, 9);
    expect(fourfold.estimate.low).toBeCloseTo(single.low as number, 9);
    expect(fourfold.estimate.patients).toBe(10);
    expect(fourfold.estimate.notes).toEqual([]);
  });

  it('is provisional from 10 to 29 eyes, and not sought below 10', () => {
    const thirty = tenEyes('SRK/T', 3);
    expect(lensConstant(thirty, each(30), 0.95).estimate.notes).toEqual([]);
    const notes = lensConstant(
      without(thirty, (eye) => eye === 0),
      each(29),
      0.95,
    ).estimate.notes;
    expect(notes).toEqual(['provisional:constant']);
    const nine = lensConstant(
      without(tenEyes('SRK/T'), (eye) => eye === 0),
      each(9),
      0.95,
    );
    expect(nine.estimate).toMatchObject({ value: undefined, n: 9, notes: ['not-estimable:few-eyes'] });
    expect(nine.leftOut).toBeUndefined();
  });

  it('is refused where the data determine none', () => {
    const of = tenEyes('SRK/T');
    const blind = { ...of, power: of.power.map(() => 0) };
    expect(lensConstant(blind, each(10), 0.95).estimate.notes).toEqual(['not-estimable:no-constant']);
    const far = { ...of, achieved: of.achieved.map(() => 12) };
    expect(lensConstant(far, each(10), 0.95).estimate).toMatchObject({
      value: undefined,
      notes: ['not-estimable:no-constant'],
    });
    expect(
      lensConstant(
        without(of, () => true),
        each(0),
        0.95,
      ).estimate.notes,
    ).toEqual(['not-estimable:no-eyes']);
  });

  it('has no interval below 5 patients, nor where a limit lies beyond every lens', () => {
    const of = tenEyes('SRK/T');
    const four = lensConstant(of, indexPatients(Int32Array.from({ length: 10 }, (_, eye) => eye % 4)), 0.95).estimate;
    expect(four.value).toBeCloseTo(119.027129, 5);
    expect(four).toMatchObject({ low: undefined, notes: ['not-estimable:few-patients', 'provisional:constant'] });
    const wild = { ...of, achieved: of.achieved.map((value, eye) => value + (eye % 2 ? 9 : -9)) };
    expect(lensConstant(wild, each(10), 0.95).estimate).toMatchObject({
      low: undefined,
      notes: ['provisional:constant', 'not-estimable:no-constant-limit'],
    });
  });

  it.each(formulaNames)('%s: leaves out each patient as a search over the others does', (name) => {
    const of = tenEyes(name, 3);
    // Three eyes a patient, none like another: every patient pulls the constant by another amount.
    const eyes = { ...of, achieved: of.achieved.map((value, eye) => value + 0.4 * Math.sin(7 * eye)) };
    const patients = each(30, 3);
    const { leftOut } = lensConstant(eyes, patients, 0.95);
    for (const patient of [0, 4, 9]) {
      const others = constantFor(
        without(eyes, (eye) => patients.of[eye] === patient),
        0,
      ) as number;
      const exact = errorsAt(eyes, others);
      const all = errorsAt(eyes, constantFor(eyes, 0) as number);
      for (const eye of [3 * patient, 3 * patient + 1, 3 * patient + 2]) {
        const moved = Math.abs((exact[eye] as number) - (all[eye] as number));
        expect(Math.abs((leftOut?.[eye] as number) - (exact[eye] as number))).toBeLessThan(0.02 * moved + 1e-6);
      }
    }
  });
});
