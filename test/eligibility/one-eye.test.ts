// ../shared/spec/6-settled.md, "first or random eye": among eligible eyes, before follow-up is looked at; on one day the
// right eye; at random by a hash of seed, patient and eye, so that neither rows nor other patients matter.
import { describe, expect, it } from 'vitest';
import { type EyeOrder, leftOutByOneEyeRule } from '../../src/eligibility/one-eye.js';
import type { Plan } from '../../src/records/plan.js';
import { planOf } from '../findings/plan.js';

interface EyeForm {
  patient: string;
  side: 'right' | 'left';
  day?: number;
  year?: number;
  order?: number;
  eligible?: boolean;
}

type Rule = Plan['eligibility']['eyes_per_patient'];

/** 'patient side' of the eyes that stay. */
function kept(rule: Rule, eyes: readonly EyeForm[], seed = 1): readonly string[] {
  const patients = [...new Set(eyes.map(({ patient }) => patient))];
  const of: EyeOrder = {
    patient: Int32Array.from(eyes, ({ patient }) => patients.indexOf(patient)),
    patients,
    laterality: Int32Array.from(eyes, ({ side }) => (side === 'right' ? 0 : 1)),
    surgeryDay: Int32Array.from(eyes, ({ day = -(2 ** 31) }) => day),
    year: Float64Array.from(eyes, ({ year = Number.NaN }) => year),
    order: Float64Array.from(eyes, ({ order = Number.NaN }) => order),
  };
  const plan = planOf([]);
  const eligible = Uint8Array.from(eyes, (eye) => (eye.eligible === false ? 0 : 1));
  const out = leftOutByOneEyeRule(of, eligible, {
    ...plan,
    eligibility: { ...plan.eligibility, eyes_per_patient: rule },
    statistics: { ...plan.statistics, seed },
  });
  return eyes.filter((_, i) => eligible[i] && !out[i]).map(({ patient, side }) => `${patient} ${side}`);
}

const both = (patient: string, right: Partial<EyeForm>, left: Partial<EyeForm>): readonly EyeForm[] => [
  { patient, side: 'right', ...right },
  { patient, side: 'left', ...left },
];

describe('one eye a patient', () => {
  const eyes = [
    ...both('P1', { day: 20 }, { day: 10 }),
    ...both('P2', { day: 5 }, { day: 5 }),
    ...both('P3', {}, { eligible: false }),
  ];

  it('both keeps all', () => {
    expect(kept('both', eyes)).toHaveLength(5);
  });

  it('first keeps the eye operated earlier, on one day the right one', () => {
    expect(kept('first', eyes)).toEqual(['P1 left', 'P2 right', 'P3 right']);
  });

  it('first goes by year and rank where days were taken off', () => {
    const ranked = [
      ...both('P1', { year: 2024, order: 9 }, { year: 2024, order: 10 }),
      ...both('P2', { year: 2025, order: 1 }, { year: 2024, order: 80 }),
      ...both('P3', { year: 2024 }, { year: 2024 }),
    ];
    expect(kept('first', ranked)).toEqual(['P1 right', 'P2 left', 'P3 right']);
  });

  it('first looks among eligible eyes: an excluded first eye gives way to the second', () => {
    expect(kept('first', both('P1', { day: 1, eligible: false }, { day: 9 }))).toEqual(['P1 left']);
  });

  it('right and left keep that side alone', () => {
    expect(kept('right', eyes)).toEqual(['P1 right', 'P2 right', 'P3 right']);
    expect(kept('left', eyes)).toEqual(['P1 left', 'P2 left']);
  });
});

describe('a random eye', () => {
  const patients = Array.from({ length: 400 }, (_, i) => `R${i}`);
  const all = patients.flatMap((patient) => both(patient, {}, {}));

  it('is one of the two, the right one in about half', () => {
    const chosen = kept('random', all);
    expect(chosen.map((eye) => eye.split(' ')[0])).toEqual(patients);
    const rights = chosen.filter((eye) => eye.endsWith('right')).length;
    // Four standard deviations of a fair coin thrown 400 times.
    expect(Math.abs(rights - 200)).toBeLessThan(40);
  });

  it('is the same whoever else is in the audit, and another under another seed', () => {
    const few = kept('random', all.slice(0, 40));
    expect(few).toEqual(kept('random', all).slice(0, 20));
    expect(kept('random', all, 2)).not.toEqual(kept('random', all));
  });
});
