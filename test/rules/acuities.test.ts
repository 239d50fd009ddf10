// Limits of ../shared/spec/2-data.md: 0.05 and 0.19 logMAR, a fifth of the rows, a rise of cells by a tenth.
import { describe, expect, it } from 'vitest';
import { statesOf } from '../../src/columns/table.js';
import { clinic, type MadeExam } from './made-up.js';

const eyes = Array.from({ length: 12 }, (_, i) => ({ patient: `A${String(i).padStart(2, '0')}` }));
const pairs = (acuities: readonly (readonly [udva: number, cdva: number])[]): readonly MadeExam[] =>
  acuities.map(([udva, cdva], i) => ({ patient: eyes[i]?.patient ?? '', days: 40, udva, cdva }));
const better = [0.3, 0] as const;
const worse = [0, 0.3] as const;

describe('corrected-worse', () => {
  it.each([
    [0.1, 0.1, 0],
    [0.1, 0.15, 0],
    [0.1, 0.16, 1],
    [-0.1, -0.05, 0],
  ])('uncorrected %f, corrected %f: asked %i times', async (udva, cdva, times) => {
    const { told } = await clinic({ eyes, exams: pairs([[udva, cdva], ...Array(9).fill(better)]) });
    expect(told('corrected-worse')).toHaveLength(times);
  });

  it('names both acuities and marks them', async () => {
    const { told, tables } = await clinic({ eyes, exams: pairs([better, better, better, better, [0.1, 0.3], better]) });
    expect(told('corrected-worse')).toMatchObject([
      { severity: 'query', row: 6, column: 'cdva', eye: 4, day: 40, detail: 0.3, other: 0.1 },
    ]);
    expect([...statesOf(tables.measurements.uncorrected)]).toEqual([0, 0, 0, 0, 1, 0]);
    expect([...statesOf(tables.measurements.corrected)]).toEqual([0, 0, 0, 0, 1, 0]);
  });

  it('in more than a fifth of the rows is one doubt of the file', async () => {
    const of = (bad: number, good: number) => pairs([...Array(bad).fill(worse), ...Array(good).fill(better)]);
    const fifth = await clinic({
      eyes: [...eyes, ...['X', 'Y', 'Z'].map((patient) => ({ patient }))],
      exams: [...of(3, 9), ...['X', 'Y', 'Z'].map((patient) => ({ patient, days: 40, udva: 0.3, cdva: 0 }))],
    });
    expect(fifth.told('corrected-worse')).toHaveLength(3);
    const more = await clinic({ eyes, exams: of(3, 9) });
    expect(more.told('corrected-worse')).toEqual([]);
    expect(more.told('acuity-columns-exchanged')).toMatchObject([
      { severity: 'query', source: 1, row: 0, column: 'cdva', eye: -1, detail: 3, other: 12 },
    ]);
    // Two rows say nothing of two columns.
    expect((await clinic({ eyes, exams: of(2, 2) })).told('corrected-worse')).toHaveLength(2);
  });

  it('compares what stands at one examination, in another file too', async () => {
    const other = (days: number): MadeExam => ({ patient: 'A00', days, cdva: 0.5, file: 'other.csv' });
    const first = { patient: 'A00', days: 40, udva: 0.2 };
    expect((await clinic({ eyes, exams: [first, other(41)] })).told('corrected-worse')).toEqual([]);
    expect((await clinic({ eyes, exams: [first, other(40)] })).told('corrected-worse')).toHaveLength(1);
  });

  it('does not compare what was set aside', async () => {
    const { told } = await clinic({ eyes, exams: pairs([[-0.5, 0.2], better, better]) });
    expect(told('acuity-range')).toHaveLength(1);
    expect(told('corrected-worse')).toEqual([]);
  });
});

describe('acuity-worse-after', () => {
  const course = (before: number, after: number, days = 40): readonly MadeExam[] => [
    { patient: 'A00', days: -10, cdva: before },
    { patient: 'A00', days, cdva: after },
  ];
  it.each([
    [0.3, 0.48, 0],
    [0.3, 0.49, 1],
    [0.1, 0.28999999, 1],
    [0.1, 0.2899, 0],
    [0.5, 0.1, 0],
  ])('%f before, %f after: asked %i times', async (before, after, times) => {
    const { told } = await clinic({ eyes, exams: course(before, after) });
    expect(told('acuity-worse-after')).toHaveLength(times);
  });

  it('looks at the outcome visit alone: on the first days an eye may see less', async () => {
    const { told } = await clinic({ eyes, exams: [...course(0.3, 0.1), { patient: 'A00', days: 1, cdva: 0.8 }] });
    expect(told('acuity-worse-after')).toEqual([]);
    const late = await clinic({ eyes, exams: course(0.3, 0.6) });
    expect(late.told('acuity-worse-after')).toMatchObject([
      { severity: 'query', row: 3, day: 40, detail: 0.3, other: 0.6 },
    ]);
  });
});

describe('endothelium-rises', () => {
  it.each([
    [2000, 2200, 0],
    [2000, 2201, 1],
    [2000, 1500, 0],
  ])('%i cells before, %i after: asked %i times', async (before, after, times) => {
    const exams = [
      { patient: 'A00', days: -10, ecd: before },
      { patient: 'A00', days: 40, ecd: after },
    ];
    const found = (await clinic({ eyes, exams })).told('endothelium-rises');
    expect(found).toHaveLength(times);
    expect(found.every((one) => one.detail === before && one.other === after && one.severity === 'query')).toBe(true);
  });
});

describe('refraction-acuity', () => {
  const seen = async (sphere: number, cylinder: number, udva: number | string, cdva: number | string) => {
    const exam = { patient: 'A00', days: 40, sphere, cylinder, axis: cylinder === 0 ? '' : 90, udva, cdva };
    return (await clinic({ eyes, exams: [exam] })).told('refraction-acuity');
  };

  // −1.50 or less, or +2.00 or more, and 0.00 logMAR or better without correction.
  it.each([
    [-1.5, 0, 0, 1],
    [-1.375, 0, 0, 0],
    [-1.25, -0.5, 0, 1],
    [-1.5, 0, 0.01, 0],
    [-3, 0, -0.1, 1],
    [2, 0, 0, 1],
    [1.875, 0, 0, 0],
    [2.25, -0.5, 0, 1],
  ])('%f %f with %f uncorrected: asked %i times', async (sphere, cylinder, udva, times) => {
    expect(await seen(sphere, cylinder, udva, -0.1)).toHaveLength(times);
  });

  // At most 0.50 of equivalent and 0.75 of cylinder, and four lines worse without correction.
  it.each([
    [0.5, 0, 0.4, 0, 1],
    [0.5, 0, 0.39, 0, 0],
    [0.625, 0, 0.5, 0, 0],
    [0.25, -0.75, 0.5, 0.1, 1],
    [0.5, -1, 0.5, 0.1, 0],
  ])('%f %f with %f uncorrected and %f corrected: asked %i times', async (sphere, cylinder, udva, cdva, times) => {
    expect(await seen(sphere, cylinder, udva, cdva)).toHaveLength(times);
  });

  it('says nothing where an acuity is missing, or a word of low vision', async () => {
    expect(await seen(-3, 0, '', 0)).toEqual([]);
    expect(await seen(0, 0, 'CF', 0)).toEqual([]);
    expect(await seen(0, 0, 1, '')).toEqual([]);
    expect(await seen(-2, 0, 0, '')).toMatchObject([{ severity: 'query', column: 'sphere', detail: -2, other: 0 }]);
  });
});
