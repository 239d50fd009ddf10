// Limits of ../shared/spec/2-data.md: an equivalent 0.13 D from S + C/2; two visits of opposite sign within 0.25 D.
import { describe, expect, it } from 'vitest';
import { statesOf } from '../../src/columns/table.js';
import { clinic, type MadeExam } from './made-up.js';

describe('refraction-equivalent', () => {
  const told = async (sphere: number, cylinder: number, supplied_se: number | string) => {
    const exam = { patient: 'A', days: 40, sphere, cylinder, axis: 90, supplied_se };
    return (await clinic({ eyes: [{ patient: 'A' }], exams: [exam] })).told('refraction-equivalent');
  };

  it.each([
    [1, -0.5, 0.75, 0],
    [1, -0.5, 0.88, 0],
    [1, -0.5, 0.89, 1],
    [1, -0.5, 0.62, 0],
    [1, -0.5, 0.61, 1],
    [-1, 0.25, -0.88, 0],
    [-1, 0.25, 0.88, 1],
    [1, -0.5, '', 0],
  ])('%f %f with %s: asked %i times', async (sphere, cylinder, supplied, times) => {
    expect(await told(sphere, cylinder, supplied)).toHaveLength(times);
  });

  it('names both', async () => {
    expect(await told(1, -0.5, -0.75)).toMatchObject([
      { severity: 'query', column: 'supplied_se', written: '-0.75', eye: 0, day: 40, detail: -0.75, other: 0.75 },
    ]);
  });
});

describe('refraction-sign-slip', () => {
  const course = async (spheres: readonly number[], predicted_se: number | string = '') => {
    const exams = spheres.map((sphere, i): MadeExam => ({ patient: 'A', days: 30 + 40 * i, sphere, cylinder: 0 }));
    return clinic({
      eyes: [
        { patient: 'A', predicted_se },
        { patient: 'B', predicted_se: 0 },
      ],
      exams,
    });
  };

  it.each([
    [[1, -1], 1],
    [[1, -1.25], 1],
    [[1, -1.26], 0],
    [[0.5, -0.5], 1],
    [[0.49, -0.5], 0],
    [[1, 1], 0],
    [[-1, 0.75], 1],
    [[1, 0, -1], 0],
    [[1, -1, 1], 2],
  ])('equivalents of %j at consecutive visits: asked %i times', async (spheres, times) => {
    expect((await course(spheres)).told('refraction-sign-slip')).toHaveLength(times);
  });

  it('names the visit further from the prediction; without one the later', async () => {
    const near = await course([1, -1], -0.9);
    expect(near.told('refraction-sign-slip')).toMatchObject([
      { severity: 'query', row: 2, day: 30, detail: 1, other: -1 },
    ]);
    expect([...statesOf(near.tables.measurements.refractions)]).toEqual([1, 0]);
    expect((await course([1, -1], 0.9)).told('refraction-sign-slip')).toMatchObject([{ row: 3 }]);
    expect((await course([1, -1])).told('refraction-sign-slip')).toMatchObject([{ row: 3 }]);
  });

  it('does not compare with the refraction before surgery', async () => {
    const exams = [-5, 40].map((days): MadeExam => ({ patient: 'A', days, sphere: Math.sign(days) * 2, cylinder: 0 }));
    expect((await clinic({ eyes: [{ patient: 'A' }], exams })).told('refraction-sign-slip')).toEqual([]);
  });
});
