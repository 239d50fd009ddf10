// Limits of ../shared/spec/2-data.md, the table of quality rules; those in general use are from memory there.
import { describe, expect, it } from 'vitest';
import { statesOf } from '../../src/columns/table.js';
import { audited, findingsOf } from '../findings/audited.js';
import { planOf } from '../findings/plan.js';
import { clinic, declared, type MadeExam, type MadeEye } from './made-up.js';

type K = readonly [k1: number, k1Axis: number, k2: number, k2Axis: number];
const cornea = (
  eye: 'R' | 'L',
  days: number,
  [k1, k1_axis, k2, k2_axis]: K,
  more: Partial<MadeExam> = {},
): MadeExam => {
  return { patient: 'A', eye, days, k1, k1_axis, k2, k2_axis, ...more };
};
const both: readonly MadeEye[] = [
  { patient: 'A', eye: 'R' },
  { patient: 'A', eye: 'L' },
];
const right = both.slice(0, 1);

describe('two eyes of a patient', () => {
  const lengths = (a: number, b: number): readonly MadeEye[] => [
    { patient: 'A', eye: 'R', axial_length: a },
    { patient: 'A', eye: 'L', axial_length: b },
    { patient: 'B', eye: 'L', axial_length: 23.5 },
  ];

  it.each([
    [23, 23.7, undefined],
    [23, 23.71, 'note'],
    [23, 24.5, 'note'],
    [23, 24.51, 'query'],
  ])('axial-length-sides: %f and %f mm: %s', async (a, b, severity) => {
    const { told } = await clinic({ eyes: lengths(a, b) });
    expect(told('axial-length-sides').map((one) => one.severity)).toEqual(severity ? [severity] : []);
  });

  it('axial-length-sides: names the eye further from most, and marks it', async () => {
    const { told, tables } = await clinic({ eyes: lengths(26, 23.5) });
    expect(told('axial-length-sides')).toMatchObject([{ row: 2, eye: 0, written: '26', detail: 26, other: 23.5 }]);
    expect([...statesOf(tables.eyes, 'axial_length.state')]).toEqual([1, 0, 0]);
  });

  const powers = (a: number, b: number) => [cornea('R', -5, [a, 180, a, 90]), cornea('L', -5, [b, 180, b, 90])];
  it.each([
    [43, 43.9, undefined],
    [43, 43.91, 'note'],
    [43, 45, 'note'],
    [43, 45.01, 'query'],
  ])('keratometry-sides: %f and %f D: %s', async (a, b, severity) => {
    const { told } = await clinic({ eyes: both, exams: powers(a, b) });
    expect(told('keratometry-sides').map((one) => one.severity)).toEqual(severity ? [severity] : []);
  });

  const biometry = (acd: number | string, al = 23.5): readonly MadeEye[] => [
    { patient: 'A', eye: 'R', axial_length: 23.5, acd: 3.1 },
    { patient: 'A', eye: 'L', axial_length: al, acd },
  ];
  const same = [cornea('R', -5, [43, 5, 44, 95]), cornea('L', -5, [43, 170, 44, 80])];
  it('sides-copied: asks where length, chamber and both powers are the same', async () => {
    const told = async (eyes: readonly MadeEye[], exams: readonly MadeExam[]) =>
      (await clinic({ eyes, exams })).told('sides-copied');
    expect(await told(biometry(3.1), same)).toMatchObject([
      { severity: 'query', row: 3, eye: 1, column: 'axial_length' },
    ]);
    expect(await told(biometry(''), same)).toHaveLength(1);
    expect(await told(biometry(3.11), same)).toEqual([]);
    expect(await told(biometry(3.1, 23.51), same)).toEqual([]);
    expect(await told(biometry(3.1), [cornea('R', -5, [43, 5, 44, 95]), cornea('L', -5, [43, 5, 44.01, 95])])).toEqual(
      [],
    );
    // Powers of two files are no copy of one another.
    expect(await told(biometry(3.1), [same[0] as MadeExam, { ...(same[1] as MadeExam), file: 'other.csv' }])).toEqual(
      [],
    );
  });
});

describe('keratometry-remeasure', () => {
  it.each([
    [41, 41, undefined],
    [40.9, 41, 'k_mean'],
    [47, 47, undefined],
    [47, 47.1, 'k_mean'],
    [43, 45.5, undefined],
    [43, 45.51, 'k_cylinder'],
  ])('%f and %f D before surgery: %s', async (k1, k2, field) => {
    const { told } = await clinic({ eyes: right, exams: [cornea('R', -5, [k1, 180, k2, 90])] });
    expect(told('keratometry-remeasure').map((one) => [one.severity, one.field])).toEqual(
      field ? [['note', field]] : [],
    );
  });

  it('takes the audit’s own range of K', async () => {
    const { told } = await clinic(
      { eyes: right, exams: [cornea('R', -5, [40, 180, 40, 90])] },
      declared({ k_mean: [39, 48] }),
    );
    expect(told('keratometry-remeasure')).toEqual([]);
  });
});

describe('keratometry-meridians', () => {
  it.each([
    [10, 100, 0],
    [10, 95, 0],
    [10, 94, 1],
    [10, 105, 0],
    [10, 106, 1],
    [175, 90, 0],
    [0, 90, 0],
    [180, 84, 1],
    [5, 185, 0],
  ])('%i and %i degrees: noted %i times', async (a, b, times) => {
    const { told } = await clinic({ eyes: right, exams: [cornea('R', -5, [43, a, 44, b])] });
    const found = told('keratometry-meridians');
    expect(found.map(({ severity, detail, other }) => [severity, detail, other])).toEqual(
      Array(times).fill(['note', a, b]),
    );
  });
});

describe('keratometry-carried-forward', () => {
  const before: K = [43.12, 10, 44.37, 100];
  const course = async (after: K, more: Partial<MadeExam> = {}) =>
    clinic({ eyes: right, exams: [cornea('R', -20, before), cornea('R', 40, after, more)] });

  it('asks where both powers and the axis are those of before, and sets the later aside', async () => {
    const { told, tables } = await course(before);
    expect(told('keratometry-carried-forward')).toMatchObject([
      { severity: 'query', row: 3, eye: 0, day: 40, effect: 'induced astigmatism left out' },
    ]);
    expect([...statesOf(tables.measurements.keratometries)]).toEqual([0, 2]);
  });

  it.each([[[43.13, 10, 44.37, 100]], [[43.12, 10, 44.38, 100]], [[43.12, 11, 44.37, 101]]])(
    '%j is a measurement of its own',
    async (after) => {
      expect((await course(after as unknown as K)).told('keratometry-carried-forward')).toEqual([]);
    },
  );

  it('knows it whichever way round it is written, and in another file', async () => {
    const turned: K = [44.37, 100, 43.12, 10];
    expect((await course(turned)).told('keratometry-carried-forward')).toHaveLength(1);
    expect((await course(before, { file: 'other.csv' })).told('keratometry-carried-forward')).toHaveLength(1);
  });
});

describe('keratometry-exchanged', () => {
  const course = async (before: K, after: K) =>
    (await clinic({ eyes: right, exams: [cornea('R', -20, before), cornea('R', 40, after)] })).told(
      'keratometry-exchanged',
    );

  it.each([
    [70, 1],
    [69, 0],
    [90, 1],
    [110, 1],
    [111, 0],
    [0, 0],
  ])('a steep meridian that turned by %i degrees: asked %i times', async (turn, times) => {
    expect(await course([43, 180, 44.5, 90], [43, turn, 44.5, 90 + turn])).toHaveLength(times);
  });

  it.each([
    [1, 1, 1],
    [0.99, 1, 0],
    [1, 0.99, 0],
  ])('cylinders of %f before and %f after: asked %i times', async (a, b, times) => {
    expect(await course([43, 180, 43 + a, 90], [43, 90, 43 + b, 180])).toHaveLength(times);
  });
});

// Distances: means, and half the difference of the astigmatism as a vector. R and L differ by 2 D of mean power.
describe('fellow-eye-fits', () => {
  const [r, l]: readonly [K, K] = [
    [43, 180, 43.5, 90],
    [45, 180, 45.5, 90],
  ];
  const shifted = ([k1, a1, k2, a2]: K, by: number): K => [k1 + by, a1, k2 + by, a2];
  const biometer = [cornea('R', -20, r), cornea('L', -20, l)];
  const lane = (first: K, second: K) => [
    cornea('R', -10, first, { file: 'k.csv' }),
    cornea('L', -10, second, { file: 'k.csv' }),
  ];

  it('asks about both eyes of an examination at which they were exchanged, in the file read later', async () => {
    const { told } = await clinic({ eyes: both, exams: [...biometer, ...lane(l, r)] });
    expect(told('fellow-eye-fits')).toMatchObject([
      { severity: 'query', source: 2, row: 2, eye: 0, detail: 2, other: 0 },
      { source: 2, row: 3, eye: 1, detail: 2, other: 0 },
    ]);
    expect((await clinic({ eyes: both, exams: [...biometer, ...lane(r, l)] })).told('fellow-eye-fits')).toEqual([]);
  });

  it('knows which of three is exchanged', async () => {
    const after = [cornea('R', 40, r), cornea('L', 40, l)];
    const { told } = await clinic({
      eyes: both,
      exams: [cornea('R', -20, l), cornea('L', -20, r), ...lane(r, l), ...after],
    });
    expect(told('fellow-eye-fits').map(({ source, day }) => [source, day])).toEqual([
      [1, -20],
      [1, -20],
    ]);
  });

  // Own eye: more than 0.90 D away; fellow eye: less than 0.45 D.
  it.each([
    [shifted(r, 1.56), 1],
    [shifted(r, 1.55), 0],
    [shifted(r, 2.44), 1],
    [shifted(r, 2.45), 0],
  ])('of one eye alone: %j asked %i times', async (first, times) => {
    const { told } = await clinic({ eyes: both, exams: [...biometer, ...lane(first, l)] });
    expect(told('fellow-eye-fits')).toHaveLength(times);
  });

  it('does not hang on the eyes having been operated on one day', async () => {
    const eyes = [
      { patient: 'A', eye: 'R' as const },
      { patient: 'A', eye: 'L' as const, surgery_date: '2025-04-01' },
    ];
    // Days −20 and −10 of the right eye are days −51 and −41 of the left.
    const exams = [
      cornea('R', -20, r),
      cornea('L', -51, l),
      cornea('R', -10, l, { file: 'k.csv' }),
      cornea('L', -41, r, { file: 'k.csv' }),
    ];
    expect((await clinic({ eyes, exams })).told('fellow-eye-fits').map(({ row }) => row)).toEqual([2, 3]);
  });

  it('asks about a length that another file gives to the fellow eye', async () => {
    const plan = (prefer: readonly string[]) =>
      planOf(
        [
          {
            file: 't.csv',
            holds: 'surgery',
            columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date', axial_length: 'AL' },
          },
          { file: 'b.csv', holds: 'eye', columns: { patient: 'ID', eye: 'Eye', axial_length: 'AL' } },
        ],
        { prefer },
      );
    const files = (lengths: readonly [number, number]) => ({
      't.csv': 'ID,Eye,Date,AL\nA,R,2025-03-01,23.00\nA,L,2025-03-01,24.00\n',
      'b.csv': `ID,Eye,AL\nA,R,${lengths[0]}\nA,L,${lengths[1]}\n`,
    });
    const told = async (lengths: readonly [number, number]) => {
      const { findings } = await audited(files(lengths), plan(['t.csv']));
      return findingsOf(findings, 'fellow-eye-fits').map(({ source, row, detail }) => [source, row, detail]);
    };
    expect(await told([24, 23])).toEqual([
      [1, 2, 23],
      [1, 3, 24],
    ]);
    expect(await told([24.1, 24])).toEqual([[1, 2, 23]]);
    expect(await told([24.11, 24])).toEqual([]);
    expect(await told([23, 24])).toEqual([]);
  });
});

// P = 118.9 − 2.5 L − 0.9 K by hand: 23.5 mm and 43.5 D give 21.00 D; 26.1 and 43.5 give 14.50; 21.9 gives 25.00.
describe('lens-power-biometry', () => {
  const eye = async (more: Partial<MadeEye>, by: Parameters<typeof clinic>[1] = {}) => {
    const eyes = [{ patient: 'A', axial_length: 23.5, target_se: 0, ...more }];
    return (await clinic({ eyes, exams: [cornea('R', -5, [43, 180, 44, 90])] }, by)).told('lens-power-biometry');
  };

  it.each([
    [{ lens_power: 25 }, 0],
    [{ lens_power: 25.25 }, 1],
    [{ lens_power: 17 }, 0],
    [{ lens_power: 16.75 }, 1],
    [{ lens_power: 20.5, axial_length: 26.1 }, 0],
    [{ lens_power: 20.75, axial_length: 26.1 }, 1],
    [{ lens_power: 19, axial_length: 21.9 }, 0],
    [{ lens_power: 18.75, axial_length: 21.9 }, 1],
    // 1.25 D more for each dioptre of intended myopia.
    [{ lens_power: 27.5, target_se: -2 }, 0],
    [{ lens_power: 27.75, target_se: -2 }, 1],
    // Without a target the prediction says what was meant; without either nothing does.
    [{ lens_power: 27.5, target_se: '', predicted_se: -2 }, 0],
    [{ lens_power: 40, target_se: '', predicted_se: '' }, 0],
    [{ lens_power: '' }, 0],
  ])('%j: asked %i times', async (more, times) => {
    expect(await eye(more)).toHaveLength(times);
  });

  it('names the power and what the biometry asks for', async () => {
    const [one] = await eye({ lens_power: 27 });
    expect(one).toMatchObject({ severity: 'query', row: 2, column: 'lens_power', detail: 27 });
    expect(one?.other).toBeCloseTo(21, 9);
  });

  it('says nothing where the length is set aside', async () => {
    expect(await eye({ lens_power: 21, axial_length: 245 })).toEqual([]);
  });
});
