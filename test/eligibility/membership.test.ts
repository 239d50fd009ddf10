// The flow is that of ../shared/spec/7-model.md §8 and 6-settled.md ("order of the eye-flow"): the first reason counts.
import { describe, expect, it } from 'vitest';
import { distanceTarget } from '../../src/eligibility/membership.js';
import type { Condition, Plan } from '../../src/records/plan.js';
import { planOf } from '../findings/plan.js';
import { standing } from './clinic.js';

const where = (field: string, operator: Condition['operator'], value: Condition['value'], at?: string): Condition => ({
  where: field,
  at,
  operator,
  value,
  and: [],
});

function excluding(...exclude: readonly { condition: Condition; reason: string }[]): Pick<Plan, 'eligibility'> {
  return { eligibility: { preset: 'none', eyes_per_patient: 'both', exclude } };
}

const tooLong = { condition: where('axial_length', 'above', 30), reason: 'too long' };

describe('declared exclusions', () => {
  it('count in the order of audit.yaml, and before everything else', async () => {
    const { of } = await standing(
      [{ al: '31.00', lens: 'C3' }, { al: '23.50', lens: 'C3' }, { al: '30.00' }, { al: '30.50', exam: undefined }],
      excluding(tooLong, { condition: where('lens_model', 'is', 'C3'), reason: 'rare lens' }),
    );
    expect(of('refraction')).toEqual(['excluded:too long', 'excluded:rare lens', 'analysed', 'excluded:too long']);
    expect(of('eligible')).toEqual(['excluded:too long', 'excluded:rare lens', 'analysed', 'excluded:too long']);
  });

  it('leave safety alone: it starts from every eye operated', async () => {
    const { of } = await standing([{ al: '31.00' }, { exam: undefined }], excluding(tooLong));
    expect(of('safety')).toEqual(['analysed', 'analysed']);
  });

  it('do not hold where the value is missing, or was set aside by a rule', async () => {
    const { of } = await standing([{ al: '' }, { al: '245.0' }], excluding(tooLong));
    expect(of('refraction')).toEqual(['analysed', 'analysed']);
  });

  it('may ask about codes, about dates and about what an examination found', async () => {
    const { of } = await standing(
      [
        { ill: 'GL; DR' },
        { ill: 'none' },
        { ill: '' },
        { date: '2024-12-31' },
        { exam: [74, '0', '-0.50', '90', '0.4', '0.4'] },
      ],
      excluding(
        { condition: where('comorbidity', 'is', 'DR'), reason: 'retina' },
        { condition: where('comorbidity', 'is', 'missing'), reason: 'not said' },
        { condition: where('surgery_date', 'below', '2025'), reason: 'old' },
        { condition: where('cdva', 'worse_than', '20/40', 'outcome'), reason: 'poor' },
      ),
    );
    expect(of('corrected')).toEqual([
      'excluded:retina',
      'analysed',
      'excluded:not said',
      'excluded:old',
      'excluded:poor',
    ]);
  });
});

describe('due', () => {
  // The window closes 120 days after surgery; 2025-12-01 + 120 days is 2026-03-31.
  it('is an eye whose last outcome window has closed by the export’s day', async () => {
    const { of } = await standing([
      { date: '2025-12-01', exam: undefined },
      { date: '2025-12-02', exam: undefined },
      { date: '2025-12-02' },
    ]);
    expect(of('refraction')).toEqual(['no_visit', 'not_yet_due', 'not_yet_due']);
    expect(of('eligible')).toEqual(['analysed', 'analysed', 'analysed']);
  });

  it('waits for the widest window of a list of outcomes', async () => {
    const { follow_up } = planOf([]);
    const visits = [
      { name: '1 month', days: [21, 45], aim: 33, labels: [] },
      { name: '3 months', days: [46, 135], aim: 90, labels: [] },
      { name: '1 year', days: [300, 400], aim: 365, labels: [] },
    ] as const;
    const listed = { follow_up: { ...follow_up, visits, outcome: ['3 months', '1 month'] } };
    // 2025-11-16 + 135 days is 2026-03-31.
    const { of } = await standing(
      [
        { date: '2025-11-16', exam: undefined },
        { date: '2025-11-17', exam: undefined },
      ],
      listed,
    );
    expect(of('refraction')).toEqual(['no_visit', 'not_yet_due']);
  });
});

describe('a visit without the measurement', () => {
  it('says whether nobody recorded it, or a rule set it aside', async () => {
    const { of } = await standing([
      { exam: [74, '', '', '', '0.1', '0.0'] },
      { exam: [74, '-50', '-0.50', '90', '0.1', '0.0'] },
      { exam: [74, '0.25', '-0.50', '90', '', '0.0'] },
      { exam: [74, '0.25', '-0.50', '90', '0.1', '7.0'] },
      { exam: undefined },
      { exam: [150, '0.25', '-0.50', '90', '0.1', '0.0'] },
    ]);
    expect(of('refraction')).toEqual(['not_recorded', 'set_aside', 'analysed', 'analysed', 'no_visit', 'no_visit']);
    expect(of('uncorrected')).toEqual(['analysed', 'analysed', 'not_recorded', 'analysed', 'no_visit', 'no_visit']);
    expect(of('corrected')).toEqual(['analysed', 'analysed', 'analysed', 'set_aside', 'no_visit', 'no_visit']);
  });

  it('counts what was written and could not be read as set aside', async () => {
    const { of } = await standing([
      { exam: [74, '+O.75', '-0.50', '90', '0.1', '0.0'] },
      { exam: [74, '0.25', '-0.50', '90', '0.1', 'good'] },
    ]);
    expect(of('refraction')).toEqual(['set_aside', 'analysed']);
    expect(of('corrected')).toEqual(['analysed', 'set_aside']);
  });

  it('loses the vector alone where the axis is blank or none, unless there is no cylinder', async () => {
    const { of } = await standing([
      { exam: [74, '0.25', '-0.50', '', '0.1', '0.0'] },
      { exam: [74, '0.25', '-0.50', '195', '0.1', '0.0'] },
      { exam: [74, '0.25', '0.00', '', '0.1', '0.0'] },
      { exam: [74, '0.25', '-0.50', 'x', '0.1', '0.0'] },
    ]);
    expect(of('refraction')).toEqual(['analysed', 'analysed', 'analysed', 'analysed']);
    expect(of('astigmatism')).toEqual(['not_recorded', 'set_aside', 'analysed', 'set_aside']);
  });

  it('of a refraction needs something to compare it with: a prediction, or an intended one', async () => {
    const { of } = await standing([{ pred: '', aim: '' }, { pred: '' }, { aim: '' }]);
    expect(of('refraction')).toEqual(['no_prediction', 'analysed', 'analysed']);
    expect(of('astigmatism')).toEqual(['analysed', 'analysed', 'analysed']);
  });
});

describe('distance', () => {
  it('is an aim from −0.50 to 0.50 D, both ends included, and an eye without any', () => {
    const aims = Float64Array.of(-0.5, 0.5, -0.500001, 0.51, Number.NaN, -0.3 - 0.2, -2);
    expect(Array.from(distanceTarget(aims, [-0.5, 0.5]))).toEqual([1, 1, 0, 0, 1, 1, 0]);
  });

  it('narrows uncorrected acuity alone, before anyone asks whether the eye is due', async () => {
    const { of } = await standing([{ aim: '-2.00' }, { aim: '-2.00', date: '2026-03-01' }, { aim: '' }]);
    expect(of('uncorrected')).toEqual(['near_target', 'near_target', 'analysed']);
    expect(of('distance')).toEqual(['near_target', 'near_target', 'analysed']);
    expect(of('corrected')).toEqual(['analysed', 'not_yet_due', 'analysed']);
  });
});

describe('every family', () => {
  it('lists all its reasons, whether or not they occur, and ends with the eyes analysed', async () => {
    const { membership } = await standing([{}], excluding(tooLong));
    const followUp = ['not_yet_due', 'no_visit', 'not_recorded', 'set_aside'];
    expect(membership.safety.steps).toEqual(['analysed']);
    expect(membership.refraction.steps).toEqual([
      'excluded:too long',
      'one_eye_rule',
      ...followUp,
      'no_prediction',
      'analysed',
    ]);
    expect(membership.uncorrected.steps).toEqual([
      'excluded:too long',
      'one_eye_rule',
      'near_target',
      ...followUp,
      'analysed',
    ]);
  });
});
