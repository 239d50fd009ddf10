// What cells of an export become: canonical forms of ../shared/spec/7-model.md §7, reading rules of 2-data.md.
import { describe, expect, it } from 'vitest';
import type { ColumnForm, SourceForm } from '../findings/plan.js';
import { harmonised, theatre, theatreOf } from './harmonised.js';

/** Surgery rows with more columns of the eye. */
function list(
  header: string,
  rows: readonly string[],
  columns: Readonly<Record<string, ColumnForm>>,
  more: Partial<SourceForm> = {},
  plan = {},
) {
  return harmonised(
    { 'theatre.csv': [`ID,Eye,Date,${header}`, ...rows] },
    [{ ...theatre, columns: { ...theatre.columns, ...columns }, ...more }],
    plan,
  );
}

describe('the order of eyes', () => {
  it('is that of patient codes by UTF-16 unit, right before left, whatever the order of rows', async () => {
    const rows = ['b,L', 'B,L', 'b,R', 'a10,R', 'a9,R'].map((key) => `${key},2025-03-01`);
    const { tables, eyes } = await harmonised({ 'theatre.csv': ['ID,Eye,Date', ...rows] }, [theatre]);
    const names = eyes('patient').map((code, i) => `${tables.patients[code as number]} ${eyes('laterality')[i]}`);
    expect(names).toEqual(['B 1', 'a10 0', 'a9 0', 'b 0', 'b 1']);
  });

  it('keeps codes as written: leading zeros are no number', async () => {
    const { tables } = await harmonised({ 'theatre.csv': theatreOf(['012', '12', ' 7 ']) }, [theatre]);
    expect(tables.patients).toEqual(['012', '12', '7']);
  });
});

describe('facts of an eye', () => {
  it('of a clock hour become a position seen facing the patient', async () => {
    // Facing the patient 12 o'clock is 90°, 3 o'clock 0°; the superior seat turns the dial by half a turn, so that
    // 145° reads 10:10 facing the patient and 4:10 for the surgeon (../shared/spec/3-measures.md).
    const facing = await list('At', ['A1,R,2025-03-01,12', 'A2,R,2025-03-01,3', 'A3,L,2025-03-01,10:10'], {
      incision_axis: { column: 'At', unit: 'clock', view: 'facing' },
    });
    expect(facing.eyes('incision_axis')).toEqual([90, 0, expect.closeTo(145, 9)]);
    const seated = await list('At', ['A1,R,2025-03-01,4:10'], {
      incision_axis: { column: 'At', unit: 'clock', view: 'surgeon-superior' },
    });
    expect(seated.eyes('incision_axis')).toEqual([expect.closeTo(145, 9)]);
  });

  it('have what a blank means, where that is declared', async () => {
    const { eyes } = await list(
      'Tor,Grade',
      ['A1,R,2025-03-01,,', 'A2,R,2025-03-01,1.5,3'],
      { lens_cylinder: 'Tor', nucleus_grade: 'Grade' },
      { blank_means: { lens_cylinder: 0, nucleus_grade: 'soft' } },
    );
    expect([eyes('lens_cylinder'), eyes('nucleus_grade')]).toEqual([
      [0, 1.5],
      ['soft', '3'],
    ]);
  });

  it('go by our values for their words, constants too; a word in no list is asked about and kept', async () => {
    const values = { technique: { manual: ['M', 'man.'] } };
    const { eyes, findings } = await list(
      'Op',
      ['A1,R,2025-03-01,m', 'A2,R,2025-03-01,MANUAL', 'A3,R,2025-03-01,robot'],
      { technique: 'Op' },
      {},
      { values },
    );
    expect(eyes('technique')).toEqual(['manual', 'manual', 'robot']);
    expect(findings.map(({ rule, severity, written }) => [rule, severity, written])).toEqual([
      ['word-unknown', 'query', 'robot'],
    ]);
    const constant = await list('X', ['A1,R,2025-03-01,'], {}, { constants: { technique: 'M' } }, { values });
    expect(constant.eyes('technique')).toEqual(['manual']);
  });

  it('read ages above 89 as 90, and sex by its words', async () => {
    const { eyes } = await list(
      'Age,Sex',
      ['A1,R,2025-03-01,90+,weiblich', 'A2,R,2025-03-01,71,M', 'A3,R,2025-03-01,,'],
      { age: 'Age', sex: 'Sex' },
    );
    expect([eyes('age'), eyes('sex')]).toEqual([
      [90, 71, Number.NaN],
      ['F', 'M', undefined],
    ]);
  });

  it('keep several codes of a cell, and know “none” from a blank', async () => {
    const { eyes } = await list(
      'Ill',
      ['A1,R,2025-03-01,GL; DR', 'A2,R,2025-03-01,keine', 'A3,R,2025-03-01,'],
      { comorbidity: 'Ill' },
      {},
      { values: { comorbidity: { glaucoma: ['GL'] } } },
    );
    expect(eyes('comorbidity')).toEqual(['DR+glaucoma', 'none', undefined]);
  });

  it('of a covariate are numbers where every word is one, unless declared', async () => {
    const { eyes } = await list(
      'Dense,Group',
      ['A1,R,2025-03-01,1,1', 'A2,R,2025-03-01,2.5,2'],
      {},
      { covariates: { dense: 'Dense', group: { column: 'Group', type: 'category' } }, reading: { decimal: 'point' } },
    );
    expect([eyes('dense'), eyes('group')]).toEqual([
      [1, 2.5],
      ['1', '2'],
    ]);
  });
});

describe('complications', () => {
  const cells = [
    'A1,R,2025-03-01,PCR,',
    'A2,R,2025-03-01,none,',
    'A3,R,2025-03-01,,',
    'A4,R,2025-03-01,,yes',
    'A5,R,2025-03-01,,no',
  ];

  it('are yes, none or not known; a blank is not none', async () => {
    const { eyes } = await list('Compl,VL', cells, { complication: 'Compl' });
    expect(eyes('any_complication')).toEqual([1, 0, Number.NaN, Number.NaN, Number.NaN]);
  });

  it('count a blank as none where that is declared, and a yes in a column of its own', async () => {
    const { eyes } = await list(
      'Compl,VL',
      cells,
      { complication: 'Compl', vitreous_loss: 'VL' },
      { blank_means: { complication: 'none' } },
    );
    expect(eyes('any_complication')).toEqual([1, 0, 0, 1, 0]);
  });
});

describe('operations', () => {
  const columns = { procedure: 'What', lens_model: 'Lens' };

  it('make an eye by the first lens operation of the period; the others are events of it', async () => {
    const rows = [
      'A1,R,2024-06-01,lens,old',
      'A1,R,2025-03-01,Lens,new',
      'A1,R,2025-05-01,exchange,newer',
      'A2,R,2024-01-01,lens,old',
      'A3,R,2025-04-01,enhancement,',
    ];
    const { eyes, tables, books } = await list(
      'What,Lens',
      rows,
      columns,
      {},
      { period: { from: '2025-01-01', to: '2025-12-31' } },
    );
    expect([eyes('lens_model'), eyes('year')]).toEqual([['new'], [2025]]);
    const events = Array.from({ length: tables.events.numRows() }, (_, i) => [
      tables.events.get('day', i),
      tables.events.get('procedure', i),
    ]);
    // 2024-06-01 to 2025-03-01 are 273 days, 2025-03-01 to 2025-05-01 61.
    expect(events).toEqual([
      [-273, 'lens'],
      [61, 'exchange'],
    ]);
    expect(books('theatre.csv')).toEqual({ used: 3, setAside: { 'outside-period': 2 } });
  });

  it.each([
    [{ from: '2025-03-01', to: '2025-03-02' }, ['A2', 'A3']],
    [{ from: '2025', to: undefined }, ['A2', 'A3', 'A4']],
    [{ from: undefined, to: '2024' }, ['A1']],
  ])('of the period %j are those between its ends, both included', async (period, expected) => {
    const rows = ['A1,R,2024-12-31', 'A2,R,2025-03-01', 'A3,R,2025-03-02', 'A4,R,2025-03-03'];
    const { eyes, tables } = await harmonised({ 'theatre.csv': ['ID,Eye,Date', ...rows] }, [theatre], { period });
    expect(eyes('patient').map((code) => tables.patients[code as number])).toEqual(expected);
  });

  it('stop the audit where none is listed, or none inside the period', async () => {
    const stopsOf = async (sources: readonly SourceForm[], period = {}) => {
      const files = { 'theatre.csv': ['ID,Eye,Date', 'A1,R,2025-03-01', 'A2,R,2025-03-02'] };
      const { findings } = await harmonised(files, sources, { period: { from: undefined, to: undefined, ...period } });
      return findings.filter(({ severity }) => severity === 'stop').map(({ rule, detail }) => [rule, detail]);
    };
    const exam: SourceForm = { ...theatre, holds: 'exam', columns: { patient: 'ID', eye: 'Eye', exam_date: 'Date' } };
    expect(await stopsOf([theatre])).toEqual([]);
    expect(await stopsOf([exam])).toEqual([['operations-none', 0]]);
    expect(await stopsOf([theatre], { from: '2026' })).toEqual([['period-empty', 2]]);
  });

  it('without their date are set aside, and their eye is none of the audit', async () => {
    const { eyes, findings, books } = await list(
      'What,Lens',
      ['A1,R,,lens,x', 'A2,R,31/31/2025,lens,y', 'A3,R,2025-03-01,lens,z'],
      columns,
    );
    expect(eyes('lens_model')).toEqual(['z']);
    expect(findings.map(({ rule, row }) => [rule, row])).toEqual([
      ['date-unreadable', 3],
      ['surgery-date-missing', 2],
      ['surgery-date-missing', 3],
    ]);
    expect(books('theatre.csv').setAside).toEqual({ 'surgery-date-missing': 2 });
  });

  it('go by year and rank where days were taken off', async () => {
    const source = {
      file: 'theatre.csv',
      holds: 'surgery',
      columns: { patient: 'ID', eye: 'Eye', surgery_year: 'Y', surgery_order: 'N', lens_model: 'Lens' },
    } as const;
    const { eyes } = await harmonised(
      { 'theatre.csv': ['ID,Eye,Y,N,Lens', 'A1,R,2025,10,second', 'A1,R,2025,9,first'] },
      [source],
    );
    expect([eyes('lens_model'), eyes('year'), eyes('order')]).toEqual([['first'], [2025], [9]]);
  });

  it('met twice with the same words are one row', async () => {
    const { eyes, findings, books } = await list(
      'What,Lens',
      ['A1,R,2025-03-01,lens,x', 'A1,R,2025-03-01,lens,x'],
      columns,
    );
    expect(eyes('lens_model')).toEqual(['x']);
    expect(findings.map(({ rule, severity, row }) => [rule, severity, row])).toEqual([['same-key-equal', 'note', 3]]);
    expect(books('theatre.csv')).toEqual({ used: 1, setAside: { 'duplicate-row': 1 } });
  });
});
