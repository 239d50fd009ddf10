// What is known of each eye, and of whom (../shared/spec/7-model.md §8 and §9): stages 1 to 4 on a few eyes.
import { describe, expect, it } from 'vitest';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Plan } from '../../src/records/plan.js';
import { refractiveAccuracy } from '../../src/tables/refractive-accuracy.js';
import { en } from '../../src/words/index.js';
import { planOf, type SourceForm } from '../findings/plan.js';
import { type Audit, auditBy } from '../whole/audit.js';

const theatre: SourceForm = {
  file: 'theatre.csv',
  holds: 'surgery',
  columns: {
    patient: 'ID',
    eye: 'Eye',
    surgery_date: 'Date',
    sex: 'Sex',
    technique: 'Op',
    lens_model: 'Lens',
    axial_length: 'AL',
    target_se: 'Aim',
    predicted_se: 'Pred',
  },
};
const lane: SourceForm = {
  file: 'lane.csv',
  columns: {
    patient: 'ID',
    eye: 'Eye',
    days: 'Day',
    sphere: 'Sph',
    cylinder: 'Cyl',
    axis: 'Ax',
    vertex_mm: 'V',
    cdva: { column: 'CDVA', numbers: 'logmar' },
  },
};

function audit(operated: readonly string[], exams: readonly string[], more: Partial<Plan> = {}): Promise<Audit> {
  return auditBy(planOf([theatre, lane], { data_until: '2026-03-31', ...more }), {
    'theatre.csv': ['ID,Eye,Date,Sex,Op,Lens,AL,Aim,Pred', ...operated].join('\n'),
    'lane.csv': ['ID,Eye,Day,Sph,Cyl,Ax,V,CDVA', ...exams].join('\n'),
  });
}

const column = ({ derived }: Audit, name: string): unknown[] => {
  const values = derived.eyes.column(name) as { at(eye: number): unknown } | undefined;
  return Array.from({ length: derived.eyes.numRows() }, (_, eye) => values?.at(eye));
};

const op = (
  patient: string,
  { eye = 'R', sex = 'F', technique = 'manual', lens = 'A1', al = '23.5', aim = '0', pred = '-0.25' } = {},
): string => `${patient},${eye},2025-03-01,${sex},${technique},${lens},${al},${aim},${pred}`;

describe('the eyes', () => {
  it('gain every measure of the registry, and keep the fields that are none', async () => {
    const one = await audit(
      [op('A1', { sex: 'M' }), op('A2', { eye: 'L' })],
      ['A1,R,74,0.50,-0.50,90,,0.1', 'A2,L,74,0.00,-1.00,180,,0.2'],
    );
    for (const { name } of one.derived.registry) expect(one.derived.eyes.column(name), name).toBeDefined();
    expect([column(one, 'sex'), column(one, 'laterality'), column(one, 'female')]).toEqual([
      ['M', 'F'],
      [0, 1],
      [0, 1],
    ]);
    // SE 0.25 and −0.50; predicted −0.25, intended 0.
    expect(column(one, 'prediction_error')).toEqual([0.5, -0.25]);
    expect(column(one, 'target_error')).toEqual([0.25, -0.5]);
  });

  it('have no value where a rule set it aside', async () => {
    const one = await audit([op('A1', { al: '245.0' })], []);
    expect(column(one, 'axial_length')).toEqual([Number.NaN]);
  });

  it('count light perception as worse than every acuity, and hand movements by the table', async () => {
    const exams = ['A1,R,74,0,0,,,LP', 'A2,R,74,0,0,,,HM', 'A3,R,74,0,0,,,0.1', 'A4,R,74,0,0,,,NLP'];
    const one = await audit(
      ['A1', 'A2', 'A3', 'A4'].map((patient) => op(patient)),
      exams,
    );
    expect(column(one, 'cdva')).toEqual([Number.POSITIVE_INFINITY, 2.3, 0.1, Number.POSITIVE_INFINITY]);
    expect(one.results.get('cdva', 'all', 'mean')).toMatchObject({ value: 1.2, n: 2, eyes: 4 });
    expect(one.results.get('cdva', 'all', 'substituted').value).toBe(3);
  });

  it('are counted where their vertex distance was assumed, or their aim is not known', async () => {
    const exams = ['A1,R,74,0,-1,90,,', 'A2,R,74,0,-1,90,13,'];
    const one = await audit([op('A1'), op('A2', { aim: '' })], exams, {
      policies: { vertex_mm: 14, vertex: 'as-recorded', lane: 'as-recorded', lens_plane_ratio: 'each-eye' },
    });
    expect(one.derived.counts).toEqual({
      axisMissing: 0,
      vertexAssumed: 1,
      withoutTarget: 1,
      otherDay: 0,
      repositioned: 0,
    });
    // −1.00 along one meridian: 1/(1 + 0.014) and 1/(1 + 0.013) of it at the cornea.
    expect(column(one, 'corneal_plane_cylinder_after')).toEqual([
      expect.closeTo(1 / 1.014, 9),
      expect.closeTo(1 / 1.013, 9),
    ]);
  });

  it('are counted where a value comes from another day than the refraction', async () => {
    const one = await audit([op('A1')], ['A1,R,74,0,0,,,', 'A1,R,80,,,,,0.1']);
    expect(one.derived.counts.otherDay).toBe(1);
  });
});

describe('centring', () => {
  // Ten patients with errors 0.1 … 1.0 in lens A1 (mean 0.55), one of them also in B2, whose group is too small.
  const tenth = (i: number): string => ((i + 1) / 10).toFixed(2);
  const patients = Array.from({ length: 10 }, (_, i) => `A${i}`);
  const operated = [
    ...patients.map((patient) => op(patient, { pred: '0' })),
    op('A9', { eye: 'L', lens: 'B2', pred: '0' }),
  ];
  const exams = [...patients.map((patient, i) => `${patient},R,74,${tenth(i)},0,,,`), 'A9,L,74,0.30,0,,,'];

  it('takes the mean of the lens model off, over the eyes analysed; small groups have none', async () => {
    const one = await audit(operated, exams);
    const expected = [...patients.map((_, i) => expect.closeTo((i + 1) / 10 - 0.55, 12)), Number.NaN];
    expect(column(one, 'prediction_error_centred')).toEqual(expected);
    expect(one.results.get('prediction_error_centred', 'all', 'missing').value).toBe(1);
    expect(one.results.get('prediction_error_centred', 'all', 'mean').value).toBeCloseTo(0, 12);
  });

  it('tells which lens models are centred by few eyes, and which not at all', async () => {
    const one = await audit(operated, exams);
    const note = (group: string) => one.results.get('centring', group, 'count').note;
    expect([note('lens_model=A1'), note('lens_model=B2')]).toEqual(['centring:provisional', 'centring:none']);
    const footnotes = refractiveAccuracy(one.results, one.plan, en)?.footnotes;
    expect(footnotes).toContain('Provisional, centred by the mean of 10 to 29 eyes: A1 10.');
    expect(footnotes).toContain('Not centred, fewer than 10 eyes or no lens recorded: B2 1.');
    const more = Array.from({ length: 20 }, (_, i) => `C${i}`);
    const thirty = await audit(
      [...operated, ...more.map((patient) => op(patient, { pred: '0' }))],
      [...exams, ...more.map((patient) => `${patient},R,74,0,0,,,`)],
    );
    expect(thirty.results.get('centring', 'lens_model=A1', 'count')).toMatchObject({ value: 30, note: '' });
  });

  it('takes absolute errors from the mean of the other patients', async () => {
    const one = await audit(operated, exams);
    // 0.1 − (5.5 − 0.1)/9 = −0.5.
    expect(column(one, 'prediction_error_centred_left_out')[0]).toBeCloseTo(-0.5, 12);
  });
});

describe('cohorts and subgroups', () => {
  const operated = [op('A1'), op('A2'), op('A3', { technique: 'laser' }), op('A4', { technique: '' })];

  it('put the reference first, the largest unless declared, and know the eyes that have none', async () => {
    const { derived } = await audit(operated, [], {
      cohorts: { by: 'technique', define: [], reference: undefined, compare: [] },
    });
    expect(derived.cohorts).toMatchObject({ field: 'technique', names: ['manual', 'laser', '(missing)'] });
    expect(Array.from(derived.cohorts?.code ?? [])).toEqual([1, 1, 2, 3]);
    const declared = await audit(operated, [], {
      cohorts: { by: 'technique', define: [], reference: 'laser', compare: ['manual'] },
    });
    expect(declared.derived.cohorts?.names).toEqual(['laser', 'manual']);
    expect(Array.from(declared.derived.cohorts?.code ?? [])).toEqual([2, 2, 1, 0]);
  });

  it('may be defined by conditions, of which the first that holds counts', async () => {
    const condition = (operator: 'below' | 'at_least', value: number) => ({
      where: 'axial_length',
      at: undefined,
      operator,
      value,
      and: [],
    });
    const define = [
      { name: 'short', condition: condition('below', 22) },
      { name: 'rest', condition: condition('at_least', 20) },
    ];
    const { derived } = await audit([op('A1', { al: '21.0' }), op('A2', { al: '24.0' }), op('A3', { al: '' })], [], {
      cohorts: { by: undefined, define, reference: 'short', compare: [] },
    });
    expect(derived.cohorts).toMatchObject({ field: 'cohort', names: ['short', 'rest'] });
    expect(Array.from(derived.cohorts?.code ?? [])).toEqual([1, 2, 0]);
  });

  it('by a band leave out lengths that a rule set aside; fields that no export has make no groups', async () => {
    const { derived } = await audit([op('A1', { al: '23.0' }), op('A2', { al: '245.0' })], [], {
      subgroups: ['axial_length', 'surgeon', 'sex'],
      bands: { axial_length: [22, 24.5, 26] },
    });
    expect(derived.subgroups.map(({ field, names }) => [field, ...names])).toEqual([
      ['axial_length', '(-,22)', '[22,24.5)', '[24.5,26]', '(26,-)', '(missing)'],
      ['sex', 'F', 'M', 'X'],
    ]);
    expect(Array.from(derived.subgroups[0]?.code ?? [])).toEqual([2, 5]);
  });
});

describe('one eye a patient', () => {
  it('leaves the fellow eye out of every family but safety', async () => {
    const operated = [op('A1'), op('A1', { eye: 'L' }), op('A2', { eye: 'L' })];
    const exams = ['A1,R,74,0,0,,,0.1', 'A1,L,74,0,0,,,0.1', 'A2,L,74,0,0,,,0.1'];
    const { derived } = await audit(operated, exams, {
      eligibility: { preset: 'none', eyes_per_patient: 'first', exclude: [] },
    });
    expect(Array.from(analysedIn(derived.membership.refraction))).toEqual([1, 0, 1]);
    expect(Array.from(analysedIn(derived.membership.safety))).toEqual([1, 1, 1]);
    const { steps, code } = derived.membership.corrected;
    expect(steps[code[1] as number]).toBe('one_eye_rule');
  });
});

describe('points', () => {
  it('are one mark for each analysed eye that has the vector, with its cohort', async () => {
    const exams = ['A1,R,74,0,-1,90,,', 'A2,R,74,0,-1,,,', 'A3,R,74,0,0,,,'];
    const { derived } = await audit([op('A1'), op('A2'), op('A3', { technique: 'laser' })], exams, {
      cohorts: { by: 'technique', define: [], reference: 'manual', compare: ['laser'] },
    });
    const [points] = derived.points;
    expect(
      Array.from({ length: points?.x.length ?? 0 }, (_, i) => [
        points?.panel.at(i),
        points?.cohort.at(i),
        points?.eye[i],
      ]),
    ).toEqual([
      ['refractive_cylinder_after', 'manual', 0],
      ['refractive_cylinder_after', 'laser', 2],
    ]);
    // The plus cylinder of −1.00 × 90 stands at 180: x is positive.
    expect(points?.x[0]).toBeGreaterThan(0.9);
    expect([points?.x[1], points?.y[1]]).toEqual([0, 0]);
  });
});
