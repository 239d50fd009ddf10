import { describe, expect, it } from 'vitest';
import { alternatives, fieldNamed, fields, fieldsOn, isNumeric } from '../../src/plan/fields.js';
import { kinds } from '../../src/records/canonical.js';
import { fieldWords } from '../../src/words/en/plan-keys.js';

const names = fields.map(({ name }) => name);

describe('the table of fields', () => {
  it('names each field once and explains it', () => {
    expect(new Set(names).size).toBe(names.length);
    expect(Object.keys(fieldWords).sort()).toEqual([...names].sort());
  });

  it('points only to fields that can stand in the same kind of row', () => {
    for (const { name, needs, holds } of fields) {
      for (const other of needs) {
        expect(fieldNamed(other)?.holds, `${name} needs ${other}`).toEqual(holds);
      }
    }
    expect(alternatives.flat(2).filter((name) => !names.includes(name))).toEqual([]);
  });

  it('puts measurements of exam rows, and no others, into measurement tables', () => {
    const measured = fields.filter(({ kind }) => kind !== undefined);
    expect(measured.every(({ holds }) => holds.length === 1 && holds[0] === 'exam')).toBe(true);
    expect(new Set(measured.map(({ kind }) => kind))).toEqual(new Set(Object.keys(kinds)));
  });

  it('gives choices of unit, notation and words exactly where the column form knows the key', () => {
    for (const { name, keys, units, notations, values, required } of fields) {
      expect(units.length > 0, name).toBe(keys.includes('unit'));
      expect(notations.length > 0, name).toBe(keys.includes('notation'));
      expect(values !== undefined, name).toBe(keys.includes('words'));
      expect(
        required.every((key) => keys.includes(key)),
        name,
      ).toBe(true);
    }
  });

  it('carries patient and eye on every kind of row', () => {
    for (const holds of ['surgery', 'eye', 'exam', 'prediction'] as const) {
      expect(fieldsOn(holds).map(({ name }) => name)).toEqual(expect.arrayContaining(['patient', 'eye']));
    }
  });

  it('keeps what changes with the visit off rows of the eye, and facts of the eye on both its rows', () => {
    const ofEye = fieldsOn('eye').map(({ name }) => name);
    expect(ofEye).not.toContain('sphere');
    expect(ofEye).not.toContain('surgery_date');
    const facts = ['axial_length', 'acd', 'lens_thickness', 'white_to_white', 'comorbidity', 'prior_corneal_surgery'];
    expect(ofEye).toEqual(expect.arrayContaining([...facts, 'sex', 'age']));
    expect(fieldsOn('surgery').map(({ name }) => name)).toEqual(expect.arrayContaining([...facts, 'sex', 'age']));
  });

  it('knows codes from numbers', () => {
    const numeric = (name: string) => isNumeric(fieldNamed(name) ?? expect.fail(name));
    expect(['k1', 'incision_axis', 'age', 'days'].map(numeric)).toEqual([true, true, true, true]);
    expect(['patient', 'surgeon', 'udva', 'complication', 'exam_date'].map(numeric)).toEqual(Array(5).fill(false));
    expect(fieldNamed('spehre')).toBeUndefined();
  });
});
