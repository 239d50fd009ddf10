import { describe, expect, it } from 'vitest';
import type { Condition } from '../../src/records/plan.js';
import { examinations, fixture, operations, planOf } from './audit-text.js';

const least = planOf(fixture('least.yaml'));

describe('what is left out', () => {
  it('has the defaults of the specification', () => {
    const { title, name, sources, follow_up, ...rest } = planOf(operations);
    expect([title, name]).toEqual(['My audit 2025', 'my-audit-2025']);
    // Each value is that of the table of keys in 7-model.md §2, with low vision from 3-measures.md (3.0 for no light
    // perception) and bands from 6-settled.md.
    expect(rest).toEqual({
      period: { from: undefined, to: undefined },
      data_until: undefined,
      allow_outside: false,
      values: {},
      complications: {},
      prefer: [],
      identifiers_reviewed: [],
      eligibility: { preset: 'none', eyes_per_patient: 'both', exclude: [] },
      cohorts: { by: undefined, define: [], reference: undefined, compare: [] },
      subgroups: ['lens_model', 'surgeon', 'year', 'axial_length', 'k_mean'],
      bands: { axial_length: [22, 24.5, 26], k_mean: [42, 46] },
      predictions: { primary_formula: undefined, recompute: [], constants: {}, incision_effect: undefined },
      policies: { vertex_mm: 12, lane: 'as-recorded', lens_plane_ratio: 'each-eye' },
      acuity: {
        low_vision: { count_fingers: 1.9, hand_movements: 2.3, light_perception: 2.7, no_light_perception: 3 },
        distance_target: [-0.5, 0.5],
      },
      quality: { limits: {}, off: [], answers: [] },
      statistics: {
        confidence: 0.95,
        seed: 1,
        primary: ['prediction_error/share_within_0.50'],
        margins: {},
        differences: {},
        adjust_for: [],
      },
      monitoring: undefined,
      benchmarks: { published: 'all', former_report: undefined },
      outputs: {
        folder: 'reports',
        language: 'en',
        artwork: 'journal-single',
        profiles: {},
        panels: [],
        tables: ['csv', 'md'],
        table_font: 'Times New Roman',
        figures: ['svg', 'png'],
        spreadsheet: 'point',
        small_cells: 0,
        operator_min_eyes: 50,
        eye_rows: 'auto',
        order: [],
        leave_out: [],
      },
    });
    expect(follow_up).toEqual({
      visits: [{ name: 'outcome', days: [28, 120], aim: 74, labels: [] }],
      before: { within_days: 400, labels: [] },
      day_of_surgery: 'neither',
      outcome: ['outcome'],
      visit_by: 'date',
      after_second_operation: 'leave-out',
    });
    expect(sources[0]).toMatchObject({
      file: ['a.csv'],
      line: 4,
      letters_per_line: undefined,
      lens_power_is: 'se',
      reading: {
        delimiter: 'auto',
        decimal: 'auto',
        date_order: 'auto',
        encoding: 'auto',
        header_row: 1,
        units_row: 'auto',
        missing: [],
      },
    });
  });

  it('counts as left out where a section has only comments', () => {
    expect(planOf(`${operations}follow_up:\n  # outcome: 1 month\nstatistics:\n  seed:\n`)).toEqual(planOf(operations));
  });

  it('of the monitoring is the probability of a false alarm', () => {
    const text = 'monitoring: { outcome: prediction_error/share_within_0.50, acceptable: 0.75, unacceptable: 0.65 }\n';
    expect(planOf(operations + text).monitoring?.false_alarm).toBe(0.05);
  });
});

describe('the least audit that runs', () => {
  const [source] = least.sources;

  it('gives every block the columns that all share, with their lines', () => {
    expect(source?.blocks.map(({ holds, visit }) => [holds, visit])).toEqual([
      ['surgery', undefined],
      ['exam', 'before'],
      ['exam', '1 month'],
    ]);
    for (const block of source?.blocks ?? []) {
      const shared = block.columns.filter(({ field }) => field === 'patient' || field === 'eye');
      expect(shared.map(({ field, column, line }) => [field, column, line])).toEqual([
        ['patient', 'ID', 6],
        ['eye', 'Eye', 7],
      ]);
    }
    const names = source?.blocks.map(({ columns }) => columns.map(({ field }) => field));
    expect(names).toEqual([
      ['patient', 'eye', 'surgery_date', 'technique', 'lens_model', 'lens_power', 'predicted_se'],
      ['patient', 'eye', 'cdva', 'k1', 'k1_axis', 'k2', 'k2_axis'],
      ['patient', 'eye', 'sphere', 'cylinder', 'axis', 'udva'],
    ]);
  });

  it('keeps the long form of a column', () => {
    const udva = source?.blocks[2]?.columns.find(({ field }) => field === 'udva');
    expect(udva).toMatchObject({ column: 'm1 UCVA', numbers: 'decimal', position: undefined, line: 30 });
  });

  it('takes the prediction of the surgery rows and the only visit', () => {
    expect(least.predictions.primary_formula).toBe('planned');
    expect(least.follow_up.outcome).toEqual(['1 month']);
    expect(least.follow_up.visits).toEqual([{ name: '1 month', days: [21, 60], aim: 40.5, labels: [] }]);
  });
});

describe("a clinic's year", () => {
  const year = planOf(
    fixture('clinic-year.yaml').replace('name: cataract-2025', 'name: cataract-2025\nallow_outside: true'),
  );

  it('reads four sources as declared', () => {
    expect(year.allow_outside).toBe(true);
    expect(year.sources.map(({ file, blocks }) => [file, blocks.map(({ holds }) => holds)])).toEqual([
      [['theatre-list.csv'], ['surgery']],
      [['exports/lane-*.csv'], ['exam']],
      [['keratometer.csv'], ['exam']],
      [['biometry.csv'], ['eye', 'exam', 'prediction']],
    ]);
    const reading = {
      decimal: 'comma',
      delimiter: 'semicolon',
      date_order: 'day-first',
      missing: ['n.e.'],
      encoding: 'auto',
    };
    for (const source of year.sources) expect(source.reading).toMatchObject(reading);
  });

  it('keeps words, notations, occurrences, constants and blanks', () => {
    const [theatre, lane, keratometer, biometry] = year.sources.map(({ blocks }) => blocks);
    const column = (block: NonNullable<typeof lane>[number] | undefined, name: string) =>
      block?.columns.find(({ field }) => field === name);
    expect(column(lane?.[0], 'eye')?.words).toEqual({ right: ['D', 'dx'], left: ['S', 'sin'] });
    expect(column(lane?.[0], 'cylinder')?.notation).toBe('signed');
    expect(lane?.[0]?.constants).toEqual({ vertex_mm: 12, lane_m: 6 });
    expect(lane?.[0]?.blank_means).toEqual({ cylinder: 0 });
    expect(theatre?.[0]?.blank_means).toEqual({ complication: 'none' });
    expect(theatre?.[0]?.covariates.map(({ field, column, type }) => [field, column, type])).toEqual([
      ['dense', 'Dense', 'category'],
    ]);
    expect(column(theatre?.[0], 'incision_axis')).toMatchObject({ unit: 'clock', view: 'surgeon-superior' });
    expect(column(keratometer?.[0], 'k1')?.unit).toBe('mm');
    expect(keratometer?.[0]?.constants).toEqual({ device: 'keratometer-a' });
    expect(column(biometry?.[1], 'k2_axis')).toMatchObject({ column: 'Axis', occurrence: 2 });
    expect(biometry?.[2]?.formula).toBe('SRK/T');
  });

  it('keeps visits, groups, limits and margins', () => {
    expect(year.follow_up.visits.map(({ name, days, aim }) => [name, days, aim])).toEqual([
      ['1 month', [21, 45], 33],
      ['3 months', [46, 135], 90],
    ]);
    expect(year.follow_up.outcome).toEqual(['3 months', '1 month']);
    expect(year.cohorts).toEqual({ by: 'technique', define: [], reference: 'manual', compare: ['laser-assisted'] });
    expect(year.eligibility.exclude).toEqual([
      {
        condition: { where: 'axial_length', at: undefined, operator: 'above', value: 30, and: [] },
        reason: 'Axial length over 30 mm',
      },
    ]);
    expect(year.quality.limits.axial_length).toEqual({
      possible: undefined,
      usual: [20.5, 28],
      reason: 'Referral centre for long eyes',
    });
    expect(year.statistics.margins).toEqual({ 'prediction_error/share_within_0.50': 0.05 });
    expect(year.outputs.tables).toEqual(['csv', 'md', 'docx']);
    expect(year.values.technique).toEqual({ manual: ['M', 'man.', 'standard'], 'laser-assisted': ['L', 'L2'] });
  });
});

describe('words and numbers', () => {
  it('keeps codes, headers and words as they are spelled', () => {
    const text = operations
      .replace('ID', '012')
      .replace('Side', '{ column: no, words: { right: [1, yes], left: 002 } }');
    const block = planOf(`${text}      lens_model: 1e3\n    constants: { surgeon: 007 }\n`).sources[0]?.blocks[0];
    expect(block?.columns.map(({ column }) => column)).toEqual(['012', 'no', 'Date', '1e3']);
    expect(block?.columns[1]?.words).toEqual({ right: ['1', 'yes'], left: ['002'] });
    expect(block?.constants).toEqual({ surgeon: '007' });
    expect(planOf(`${operations}complications: { other: [007, no] }\n`).complications).toEqual({
      other: ['007', 'no'],
    });
    expect(planOf(operations.replace('My audit 2025', '2025')).title).toBe('2025');
  });

  it('takes the outer blanks off a header', () => {
    expect(planOf(operations.replace('ID', '" ID  "')).sources[0]?.blocks[0]?.columns[0]?.column).toBe('ID');
  });

  it('reads numbers with a plus, a true minus or quotation marks', () => {
    const policies = (value: string) => planOf(`${operations}policies: { vertex_mm: ${value} }\n`).policies.vertex_mm;
    expect([policies('+12.5'), policies('"13"'), policies('.5')]).toEqual([12.5, 13, 0.5]);
    expect(planOf(`${operations}acuity: { distance_target: [\u22120.75, 0] }\n`).acuity.distance_target).toEqual([
      -0.75, 0,
    ]);
  });

  it('makes a folder name of any title', () => {
    expect(
      planOf(operations.replace('My audit 2025', 'Résultats: 2025/26 (été)').replace(/title: (.*)/, 'title: "$1"'))
        .name,
    ).toBe('resultats-2025-26-ete');
  });
});

describe('conditions', () => {
  const mapped = `${operations}      nucleus_grade: N\n      age: A\n    covariates: { weight: { column: W, type: number }, grade: G }\n`;
  const exam = `${examinations}      cdva: { column: V, numbers: decimal }\n`;
  function condition(written: string): Condition | undefined {
    return planOf(`${mapped}${exam}cohorts: { define: [{ name: c, ${written} }] }\n`).cohorts.define[0]?.condition;
  }

  it('keep text as text and numbers as numbers, as the field has it', () => {
    expect(condition('where: nucleus_grade, is: [012, 3]')?.value).toEqual(['012', '3']);
    expect(condition('where: nucleus_grade, is: 012')?.value).toBe('012');
    expect(condition('where: age, is: 70')?.value).toBe(70);
    expect(condition('where: age, between: [60, 70.5]')?.value).toEqual([60, 70.5]);
    expect(condition('where: surgery_date, at_least: 2025-06-01')?.value).toBe('2025-06-01');
    expect(condition('where: weight, is: 70')?.value).toBe(70);
    expect(condition('where: grade, is: 70')?.value).toBe('70');
    expect(condition('where: grade, above: 70')?.value).toBe(70);
    expect(condition('where: age, is: missing')?.value).toBe('missing');
  });

  it('look at the outcome where an exam field says nothing else', () => {
    expect(condition('where: cdva, worse_than: 20/40')).toEqual({
      where: 'cdva',
      at: 'outcome',
      operator: 'worse_than',
      value: '20/40',
      and: [],
    });
    expect(condition('where: cdva, at: before, better_than: 0.5')?.at).toBe('before');
    expect(condition('where: age, above: 3, and: [{ where: cdva, is: present }]')).toMatchObject({
      at: undefined,
      and: [{ where: 'cdva', at: 'outcome', operator: 'is', value: 'present' }],
    });
  });

  it('of rows keep headers and take no examination', () => {
    const only = planOf(`${operations}    only: [{ where: cdva, is: 012 }, { where: N, above: 3 }]\n`).sources[0]
      ?.blocks[0]?.only;
    expect(only?.map(({ at, value }) => [at, value])).toEqual([
      [undefined, '012'],
      [undefined, 3],
    ]);
  });
});

describe('blocks', () => {
  const text = `format: 1
title: x
sources:
  - file: a.csv
    columns: { patient: ID, eye: Side, surgery_date: D, exam_date: E }
    constants: { surgeon: S1, device: d1 }
    covariates: { dense: Dense }
    only: [{ where: Type, is: A }]
    blank_means: { complication: none, cylinder: 0 }
    reading: { decimal: comma }
    blocks:
      - { holds: surgery, columns: { complication: C } }
      - holds: exam
        columns: { sphere: S, cylinder: Y, exam_date: E2 }
        constants: { device: d2, eye: right }
        only: [{ where: Eye, is: R }]
reading: { decimal: point, missing: [x] }
`;
  const [source] = planOf(text).sources;
  const [surgery, exam] = source?.blocks ?? [];

  it('take what fits their rows and overrule what they say themselves', () => {
    expect(surgery?.columns.map(({ field }) => field)).toEqual(['patient', 'eye', 'surgery_date', 'complication']);
    expect(exam?.columns.map(({ field, column }) => [field, column])).toEqual([
      ['patient', 'ID'],
      ['exam_date', 'E2'],
      ['sphere', 'S'],
      ['cylinder', 'Y'],
    ]);
    expect(surgery?.constants).toEqual({ surgeon: 'S1' });
    expect(exam?.constants).toEqual({ device: 'd2', eye: 'right' });
  });

  it('share covariates of eyes, conditions, and the meaning of blanks', () => {
    expect(surgery?.covariates.map(({ field }) => field)).toEqual(['dense']);
    expect(exam?.covariates).toEqual([]);
    expect(exam?.only.map(({ where }) => where)).toEqual(['Type', 'Eye']);
    expect(surgery?.blank_means).toEqual({ complication: 'none' });
    expect(exam?.blank_means).toEqual({ cylinder: 0 });
  });

  it('are read as the file says over what the audit says', () => {
    expect(source?.reading).toMatchObject({ decimal: 'comma', missing: ['x'], header_row: 1 });
  });
});
