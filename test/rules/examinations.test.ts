// Rules on dates, labels and operations: ../shared/spec/2-data.md, ../shared/spec/7-model.md §2 (visit_by).
import { describe, expect, it } from 'vitest';
import { statesOf } from '../../src/columns/table.js';
import type { Plan } from '../../src/records/plan.js';
import { planOf } from '../findings/plan.js';
import { clinic, type MadeExam } from './made-up.js';

const eyes = [{ patient: 'A' }];
const refracted = (days: number, more: Partial<MadeExam> = {}): MadeExam => {
  return { patient: 'A', days, sphere: 0, cylinder: 0, cdva: 0, ...more };
};

describe('exam-after-export', () => {
  // Operated on 1 March 2025; 30 April is day 60.
  it('sets an examination aside that is dated after the export, with everything it measured', async () => {
    const { told, tables } = await clinic(
      { eyes, exams: [refracted(60), refracted(61)] },
      { data_until: '2025-04-30' },
    );
    expect(told('exam-after-export')).toMatchObject([
      { severity: 'set aside', row: 3, eye: 0, day: 61, effect: 'row left out', detail: 1, written: undefined },
    ]);
    expect([...statesOf(tables.measurements.refractions)]).toEqual([0, 2]);
    expect([...statesOf(tables.measurements.corrected)]).toEqual([0, 2]);
  });

  it('says nothing where the day of the export is not declared', async () => {
    const { told } = await clinic({ eyes, exams: [refracted(60), refracted(6000)] });
    expect(told('exam-after-export')).toEqual([]);
  });
});

describe('exam-late', () => {
  // Two years are 730.5 days, ten 3652.5: from 731 noted, from 3653 set aside.
  it.each([
    [730, undefined, 0],
    [731, 'note', 0],
    [3652, 'note', 0],
    [3653, 'set aside', 2],
  ])('day %i: %s', async (days, severity, state) => {
    const { told, tables } = await clinic({ eyes, exams: [refracted(days)] });
    expect(told('exam-late').map((one) => one.severity)).toEqual(severity ? [severity] : []);
    expect([...statesOf(tables.measurements.refractions)]).toEqual([state]);
  });

  it('is not told of an examination that lies behind the export', async () => {
    const { told } = await clinic({ eyes, exams: [refracted(4000)] }, { data_until: '2026-01-01' });
    expect(told().map(({ rule }) => rule)).toContain('exam-after-export');
    expect(told('exam-late')).toEqual([]);
  });
});

describe('date and label', () => {
  const visit = (name: string, days: readonly [number, number] | undefined, labels: string[]) => ({
    name,
    days,
    aim: undefined,
    labels,
  });
  const followUp = (more: Partial<Plan['follow_up']> = {}): Partial<Plan> => ({
    follow_up: {
      ...planOf([]).follow_up,
      visits: [
        visit('1 month', [21, 45], ['1M']),
        visit('3 months', [46, 135], ['3M']),
        visit('later', undefined, ['L']),
      ],
      outcome: ['3 months'],
      ...more,
    },
  });
  const told = async (days: number, label: string, more = followUp()) => {
    const all = await clinic({ eyes, exams: [refracted(days, { visit: label })] }, more);
    return all
      .told()
      .filter(({ rule }) => ['exam-label', 'exam-before-surgery'].includes(rule))
      .map(({ rule, severity }) => [rule, severity]);
  };

  it.each([
    [30, '1M', undefined],
    [45, '1M', undefined],
    [46, '1M', 'exam-label'],
    [20, '1M', undefined],
    [30, '3M', 'exam-label'],
    [200, '3M', undefined],
    [0, '1M', undefined],
    [-1, '1M', 'exam-before-surgery'],
    [-300, '3M', 'exam-before-surgery'],
    [-5, 'before', undefined],
    [5, 'before', 'exam-label'],
    [30, 'L', undefined],
    [30, 'other', undefined],
  ])('day %i, labelled %s: %s', async (days, label, rule) => {
    expect(await told(days, label)).toEqual(rule ? [[rule, 'query']] : []);
  });

  it('contradict each other whichever of them counts', async () => {
    expect(await told(30, '3M', followUp({ visit_by: 'label' }))).toEqual([['exam-label', 'query']]);
  });
});

describe('incision-axis-missing', () => {
  it('asks for the place of an incision that has a width', async () => {
    const rows = [
      { patient: 'A', incision_width: 2.2, incision_axis: '' },
      { patient: 'B', incision_width: 2.2, incision_axis: 0 },
      { patient: 'C', incision_width: '', incision_axis: '' },
      // Not blank: other rules say what is the matter with these.
      { patient: 'D', incision_width: 2.2, incision_axis: 400 },
      { patient: 'E', incision_width: 2.2, incision_axis: 'up' },
    ];
    expect((await clinic({ eyes: rows })).told('incision-axis-missing')).toMatchObject([
      { severity: 'query', row: 2, column: 'incision_axis', eye: 0, detail: 2.2 },
    ]);
  });

  it('says nothing where no column holds the place', async () => {
    const { told } = await clinic({ eyes: [{ patient: 'A', incision_width: 2.2 }] });
    expect(told('incision-axis-missing')).toEqual([]);
  });
});

describe('the axis of a toric lens', () => {
  it('lens-axis-missing: is asked for where it is blank', async () => {
    const rows = [
      { patient: 'A', lens_cylinder: 1.5, lens_axis_intended: '' },
      { patient: 'B', lens_cylinder: 0.01, lens_axis_intended: 90 },
      { patient: 'C', lens_cylinder: 0, lens_axis_intended: '' },
      { patient: 'D', lens_cylinder: 15, lens_axis_intended: '' },
    ];
    expect((await clinic({ eyes: rows })).told('lens-axis-missing')).toMatchObject([
      { severity: 'query', row: 2, column: 'lens_axis_intended', eye: 0 },
    ]);
  });

  it('lens-axis-not-mapped: is noted once where no column holds it', async () => {
    const rows = ['A', 'B'].map((patient) => ({ patient, lens_cylinder: 1.5 }));
    const { told } = await clinic({ eyes: rows });
    expect(told('lens-axis-missing')).toEqual([]);
    expect(told('lens-axis-not-mapped')).toMatchObject([{ severity: 'note', row: 0, detail: 2 }]);
  });

  const toric = (patient: string) => ({ patient, lens_cylinder: 1.5, lens_axis_intended: 90 });
  it('lens-axis-unseen: is asked for where an eye was refracted after surgery and nobody looked', async () => {
    const exams = [
      refracted(40, { patient: 'A', lens_axis: '' }),
      refracted(40, { patient: 'B', lens_axis: 88 }),
      refracted(-5, { patient: 'C', lens_axis: '' }),
      { patient: 'D', days: 40, cdva: 0 },
      refracted(40, { patient: 'E', lens_axis: '' }),
      { patient: 'E', days: 0, lens_axis: 91 },
    ];
    const { told } = await clinic({ eyes: ['A', 'B', 'C', 'D', 'E'].map(toric), exams });
    expect(told('lens-axis-unseen')).toMatchObject([
      { severity: 'query', source: 0, row: 2, column: 'lens_cylinder', eye: 0 },
    ]);
  });

  it('lens-axis-not-observed: is noted once where no examination records it', async () => {
    const { told } = await clinic({ eyes: [toric('A'), toric('B')], exams: [refracted(40)] });
    expect(told('lens-axis-unseen')).toEqual([]);
    expect(told('lens-axis-not-observed')).toMatchObject([{ severity: 'note', row: 0, detail: 2 }]);
  });
});

describe('second-operation', () => {
  const operations = (procedure: string, date: string) => [
    { patient: 'A', procedure: 'lens' },
    { patient: 'A', procedure, surgery_date: date },
  ];

  it.each([
    ['reposition', 'later examinations left out'],
    ['exchange', 'later examinations left out'],
    ['enhancement', 'later examinations left out'],
    ['lens', 'later examinations left out'],
    ['other', 'kept'],
  ])('notes a later %s: %s', async (procedure, effect) => {
    const { told } = await clinic({ eyes: operations(procedure, '2025-04-10'), exams: [refracted(70)] });
    expect(told('second-operation')).toMatchObject([
      {
        severity: 'note',
        source: 0,
        row: 3,
        column: 'procedure',
        written: procedure,
        eye: 0,
        day: 40,
        detail: 40,
        effect,
      },
    ]);
  });

  it('says that examinations are kept where the audit keeps them, and of an operation before the first', async () => {
    const keep = { follow_up: { ...planOf([]).follow_up, after_second_operation: 'keep' as const } };
    const later = await clinic({ eyes: operations('exchange', '2025-04-10'), exams: [refracted(70)] }, keep);
    expect(later.told('second-operation')).toMatchObject([{ effect: 'kept' }]);
    const earlier = await clinic({ eyes: operations('other', '2025-01-10'), exams: [refracted(70)] });
    expect(earlier.told('second-operation')).toMatchObject([{ effect: 'kept', day: -50 }]);
  });
});
