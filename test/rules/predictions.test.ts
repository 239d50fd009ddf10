// Limits of ../shared/spec/2-data.md: prediction from target 1 and 5 D; surprise 1 and 2 D, named below 0.75 D.
import { describe, expect, it } from 'vitest';
import { statesOf } from '../../src/columns/table.js';
import { tell } from '../../src/findings/telling.js';
import { en } from '../../src/words/index.js';
import { clinic, declared } from './made-up.js';

describe('prediction-far', () => {
  it.each([
    [0, 1, undefined],
    [0, -1, undefined],
    [-2.5, -1.5, undefined],
    [0, 1.01, 'query'],
    [0, -5, 'query'],
    [0, -5.01, 'set aside'],
    [-2.5, 2.51, 'set aside'],
  ])('target %f, predicted %f: %s', async (target_se, predicted_se, severity) => {
    const { told, tables } = await clinic({ eyes: [{ patient: 'A', target_se, predicted_se }] });
    const expected = severity
      ? [{ severity, column: 'predicted_se', eye: 0, detail: target_se, other: predicted_se }]
      : [];
    expect(told('prediction-far')).toMatchObject(expected);
    const state = severity === 'set aside' ? 2 : severity === 'query' ? 1 : 0;
    expect([...statesOf(tables.predictions)]).toEqual([state]);
  });

  it('says nothing of an eye without a target', async () => {
    const { told } = await clinic({
      eyes: [
        { patient: 'A', target_se: '', predicted_se: 4 },
        { patient: 'B', target_se: 0, predicted_se: '' },
      ],
    });
    expect(told('prediction-far')).toEqual([]);
  });
});

describe('refraction-surprise', () => {
  const eye = (sphere: number, cylinder: number, predicted_se: number) => ({
    eyes: [{ patient: 'A', predicted_se }],
    exams: [{ patient: 'A', days: 40, sphere, cylinder, axis: cylinder === 0 ? '' : 90 }],
  });

  it.each([
    [0.75, 0, -0.25, undefined],
    [0.75, 0, -0.26, 'note'],
    [1.75, 0, -0.25, 'note'],
    [1.75, 0, -0.26, 'query'],
    [-2.25, -0.5, -0.49, 'query'],
  ])('%f %f, predicted %f: %s', async (sphere, cylinder, predicted, severity) => {
    const { told, tables } = await clinic(eye(sphere, cylinder, predicted));
    expect(told('refraction-surprise').map((one) => one.severity)).toEqual(severity ? [severity] : []);
    expect([...statesOf(tables.measurements.refractions)]).toEqual([severity === 'query' ? 1 : 0]);
  });

  // Arithmetic: +1.50 −0.50 is +1.25, 2.75 D from −1.50; with the sphere turned −1.75, −0.25 D from it.
  it('names the sign that would explain it', async () => {
    const { told, raw, plan } = await clinic(eye(1.5, -0.5, -1.5));
    const [one] = told('refraction-surprise');
    expect(one).toMatchObject({ severity: 'query', column: 'sphere', field: 'sphere', detail: 2.75, other: -0.25 });
    expect(tell(one as never, { raw, plan, words: en.findings }).sentence).toBe(
      'achieved − predicted is +2.75 D; with the opposite sphere sign it would be −0.25 D',
    );
  });

  // −1.00 +2.50 is +0.25, 2.15 D from −1.90; with the cylinder turned −2.25, −0.35 D from it.
  it('of the cylinder, as it was recorded', async () => {
    const { told } = await clinic(eye(-1, 2.5, -1.9));
    const [one] = told('refraction-surprise');
    expect(one).toMatchObject({ column: 'cylinder', field: 'cylinder', written: '2.5' });
    expect([one?.detail, one?.other].map((value) => Math.round((value as number) * 1000))).toEqual([2150, -350]);
  });

  // +1.00 is 3.00 D from −2.00; turned −1.00, 1.00 D from it: no sign explains it. 0.75 is not below 0.75.
  it.each([
    [1, -2, Number.NaN],
    [1.25, -2, Number.NaN],
    [1.25, -1.99, 0.74],
  ])('a sphere of %f, predicted %f, leaves %f', async (sphere, predicted, left) => {
    const [one] = (await clinic(eye(sphere, 0, predicted))).told('refraction-surprise');
    expect(Math.round((one?.other ?? 0) * 1e6) / 1e6).toEqual(left);
  });

  it('takes the audit’s own limit', async () => {
    const { told } = await clinic(eye(1.75, 0, 0), declared({ surprise: [0, 1.5], surprise_noted: [0, 1.25] }));
    expect(told('refraction-surprise')).toMatchObject([{ severity: 'query' }]);
  });
});
