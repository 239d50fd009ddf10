// What cells of an export become: canonical forms of ../shared/spec/7-model.md §7, reading rules of 2-data.md.
import { describe, expect, it } from 'vitest';
import type { Condition } from '../../src/records/plan.js';
import type { ColumnForm, SourceForm } from '../findings/plan.js';
import { harmonised, theatre, theatreOf } from './harmonised.js';

const noDay = -(2 ** 31);

/** Examinations of right eyes on day 74, one a row: A1, A2 … */
function lane(
  header: string,
  rows: readonly string[],
  columns: Readonly<Record<string, ColumnForm>>,
  more: Partial<SourceForm> = {},
) {
  const patients = rows.map((_, i) => `A${i + 1}`);
  const text = [`ID,Eye,Day,${header}`, ...rows.map((row, i) => `${patients[i]},R,74,${row}`)];
  const source = { file: 'lane.csv', columns: { patient: 'ID', eye: 'Eye', days: 'Day', ...columns }, ...more };
  return harmonised({ 'theatre.csv': theatreOf(patients), 'lane.csv': text }, [theatre, source]);
}

describe('refractions', () => {
  const columns = { sphere: 'Sph', cylinder: 'Cyl', axis: 'Ax' };
  const own = ['sphere', 'cylinder', 'axis', 'recordedCylinder'] as const;

  it('stand in plus notation whichever way they were written, the cylinder as recorded beside', async () => {
    const { rows } = await lane(
      'Sph,Cyl,Ax',
      ['-2.25,-1.50,20', '-3.75,+1.50,110', 'plano,-0.75,180', '0.50,DS,', '1.00,-0.50,0'],
      columns,
    );
    expect(rows('refractions', ...own)).toEqual([
      [-3.75, 1.5, 110, 1.5],
      [-3.75, 1.5, 110, 1.5],
      [-0.75, 0.75, 90, 0.75],
      [0.5, 0, Number.NaN, 0],
      [0.5, 0.5, 90, 0.5],
    ]);
  });

  it('take the sign of the cylinder from the notation where the export gives none', async () => {
    const minus = await lane('Sph,Cyl,Ax', ['1.00,0.50,90'], {
      ...columns,
      cylinder: { column: 'Cyl', notation: 'minus' },
    });
    expect(minus.rows('refractions', ...own)).toEqual([[0.5, 0.5, 180, 0.5]]);
    const plus = await lane('Sph,Cyl,Ax', ['1.00,0.50,90'], {
      ...columns,
      cylinder: { column: 'Cyl', notation: 'plus' },
    });
    expect(plus.rows('refractions', ...own)).toEqual([[1, 0.5, 90, 0.5]]);
  });

  it('are rounded to a millionth, so that sums of quarters leave no dust', async () => {
    const { rows } = await lane('Sph,Cyl,Ax', ['0.1,-0.3,90'], columns);
    expect(0.1 - 0.3).not.toBe(-0.2);
    expect(rows('refractions', 'sphere')).toEqual([[-0.2]]);
  });

  it('have a blank sphere or cylinder as the source declares it, and only beside the other', async () => {
    const given = [',-0.50,90', '1.00,,', ',,', '+O.50,-0.50,90'];
    const declared = await lane('Sph,Cyl,Ax', given, columns, { blank_means: { sphere: 0, cylinder: 0 } });
    expect(declared.rows('refractions', ...own)).toEqual([
      [-0.5, 0.5, 180, 0.5],
      [1, 0, Number.NaN, 0],
      // What cannot be read is not blank.
      [Number.NaN, 0.5, 180, 0.5],
    ]);
    const plain = await lane('Sph,Cyl,Ax', given.slice(0, 2), columns);
    expect(plain.rows('refractions', 'sphere', 'cylinder')).toEqual([
      [Number.NaN, 0.5],
      [Number.NaN, Number.NaN],
    ]);
  });

  it('are read from one cell, and then judged part by part', async () => {
    const { rows, tables } = await lane('Rx', ['-2.25 -1.50 x 20', '+0.50 DS', 'ready'], { refraction: 'Rx' });
    expect(rows('refractions', ...own, 'unread')).toEqual([
      [-3.75, 1.5, 110, 1.5, 0],
      [0.5, 0, Number.NaN, 0, 0],
      [Number.NaN, Number.NaN, Number.NaN, Number.NaN, 1],
    ]);
    const read = Object.fromEntries(
      tables.readings.map(({ field, column, values }) => [
        field,
        [column, ...values].filter((one) => !Number.isNaN(one)),
      ]),
    );
    expect(read).toMatchObject({ sphere: ['Rx', -2.25, 0.5], cylinder: ['Rx', -1.5, 0], axis: ['Rx', 20] });
  });

  it('carry vertex and lane from the row, or from the source', async () => {
    const ofRow = await lane(
      'Sph,Cyl,V',
      ['1,0,13'],
      { sphere: 'Sph', cylinder: 'Cyl', vertex_mm: 'V' },
      { constants: { lane_m: 6 } },
    );
    expect(ofRow.rows('refractions', 'vertex', 'lane')).toEqual([[13, 6]]);
  });
});

describe('keratometries', () => {
  // 337.5/7.50 is 45, 337.5/7.80 is 43.269231; 44.00 D at 1.332 is 44 · 0.3375/0.332 = 44.728916 D at 1.3375.
  it.each([
    ['K1,A1,K2,A2', '45.00,90,43.00,180', { k1: 'K1', k1_axis: 'A1', k2: 'K2', k2_axis: 'A2' }, [43, 45, 90]],
    ['K1,A1,K2,A2', '43.00,,45.00,90', { k1: 'K1', k1_axis: 'A1', k2: 'K2', k2_axis: 'A2' }, [43, 45, 90]],
    ['K1,A1,K2,A2', '43.00,180,45.00,', { k1: 'K1', k1_axis: 'A1', k2: 'K2', k2_axis: 'A2' }, [43, 45, 90]],
    [
      'R1,R2',
      '7.50,7.80',
      { k1: { column: 'R1', unit: 'mm' }, k2: { column: 'R2', unit: 'mm' } },
      [337.5 / 7.8, 45, Number.NaN],
    ],
    [
      'F,S',
      '44.00,44.00',
      { k_flat: { column: 'F', index: 1.332 }, k_steep: { column: 'S', index: 1.332 } },
      [(44 * 337.5) / 332, (44 * 337.5) / 332, Number.NaN],
    ],
    ['M,C,A', '44.00,-1.00,20', { k_mean: 'M', k_cylinder: 'C', k_cylinder_axis: 'A' }, [43.5, 44.5, 20]],
  ] satisfies [string, string, Record<string, ColumnForm>, number[]][])(
    '%s: %s',
    async (header, row, columns, expected) => {
      const { rows } = await lane(header, [row], columns);
      const close = expected.map((value) => (Number.isNaN(value) ? value : expect.closeTo(value, 9)));
      expect(rows('keratometries', 'flat', 'steep', 'steepAxis')).toEqual([close]);
    },
  );
});

describe('days', () => {
  it('are counted from surgery, where dates are given; a date without an operation has none', async () => {
    const lines = ['ID,Eye,When,Sph,Cyl', 'A1,R,2025-04-10,1,0', 'A1,R,2025-02-19,2,0', 'Z9,R,2025-04-10,3,0'];
    const source = {
      file: 'lane.csv',
      columns: { patient: 'ID', eye: 'Eye', exam_date: 'When', sphere: 'Sph', cylinder: 'Cyl' },
    };
    const { rows, books, tables } = await harmonised({ 'theatre.csv': theatreOf(['A1']), 'lane.csv': lines }, [
      theatre,
      source,
    ]);
    expect(rows('refractions', 'eye', 'day', 'sphere')).toEqual([
      [-1, noDay, 3],
      [0, -10, 2],
      [0, 40, 1],
    ]);
    expect(books('lane.csv')).toEqual({ used: 2, setAside: { 'eye-not-operated': 1 } });
    // 2025-04-10 is day 20188 (Python: (date(2025, 4, 10) - date(1970, 1, 1)).days).
    expect(tables.dataUntil).toBe(20188);
  });

  it('may be missing where a label stands, by name, by declared word or by the block', async () => {
    const visits = [{ name: '1 month', days: [21, 45] as const, aim: 33, labels: ['4w'] }];
    const lines = ['ID,Eye,V,Sph,Cyl', 'A1,R,1 Month,1,0', 'A2,R,4W ,1,0', 'A2,R,preop,1,0', 'A1,R,autumn,1,0'];
    const source = {
      file: 'lane.csv',
      columns: { patient: 'ID', eye: 'Eye', visit: 'V', sphere: 'Sph', cylinder: 'Cyl' },
    };
    const follow_up = {
      visits,
      before: { within_days: 400, labels: ['Preop'] },
      day_of_surgery: 'neither',
      outcome: ['1 month'],
      visit_by: 'date',
      after_second_operation: 'leave-out',
    } as const;
    const { rows, books } = await harmonised(
      { 'theatre.csv': theatreOf(['A1', 'A2']), 'lane.csv': lines },
      [theatre, source],
      { follow_up },
    );
    expect(rows('refractions', 'eye', 'visit', 'day')).toEqual([
      [0, 1, noDay],
      [1, 1, noDay],
      [1, -1, noDay],
    ]);
    expect(books('lane.csv')).toEqual({ used: 3, setAside: { 'day-unknown': 1 } });
  });
});

describe('a wide file', () => {
  const wide: SourceForm = {
    file: 'wide.csv',
    blocks: [
      { holds: 'surgery', columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date', lens_model: 'Lens' } },
      { visit: 'before', columns: { patient: 'ID', eye: 'Eye', cdva: { column: 'pre', numbers: 'logmar' } } },
      {
        visit: 'outcome',
        columns: {
          patient: 'ID',
          eye: 'Eye',
          sphere: 'sph',
          cylinder: 'cyl',
          cdva: { column: 'post', numbers: 'logmar' },
        },
      },
    ],
  };

  it('gives a row to each of its blocks; a block that is blank gives nothing', async () => {
    const lines = [
      'ID,Eye,Date,Lens,pre,sph,cyl,post',
      'A1,R,2025-03-01,X,0.5,1.00,-0.50,0.1',
      'A2,L,2025-03-02,Y,,,,',
      'A3,,2025-03-02,Y,0.3,,,',
    ];
    const { rows, eyes, books, findings } = await harmonised({ 'wide.csv': lines }, [wide]);
    expect(eyes('lens_model')).toEqual(['X', 'Y']);
    expect(rows('corrected', 'eye', 'visit', 'logMAR')).toEqual([
      [0, -1, 0.5],
      [0, 1, 0.1],
    ]);
    expect(rows('refractions', 'eye', 'visit', 'sphere')).toEqual([[0, 1, 0.5]]);
    // A row that lacks its key is told once, not once a block.
    expect(books('wide.csv')).toEqual({ used: 2, setAside: { 'eye-missing': 1 } });
    expect(findings.map(({ rule, row }) => [rule, row])).toEqual([['eye-missing', 4]]);
  });
});

describe('only', () => {
  const where = (field: string, operator: Condition['operator'], value: Condition['value']): Condition => ({
    where: field,
    at: undefined,
    operator,
    value,
    and: [],
  });
  const columns = { patient: 'ID', eye: 'Eye', days: 'Day', sphere: 'Sph', cylinder: 'Cyl' };
  const lines = [
    'ID;Eye;Day;Sph;Cyl;Type;Quality;Made',
    'A1;R;74;1,00;0,00;REF;0,95;03.04.2025',
    'A1;R;75;2,00;0,00;ref ;1,05;13.05.2025',
    'A1;R;76;3,00;0,00;TONO;;',
  ];

  async function spheres(condition: Condition) {
    const source = {
      file: 'lane.csv',
      columns,
      only: [condition],
      reading: { delimiter: 'semicolon', date_order: 'day-first' } as const,
    };
    const { rows, books } = await harmonised({ 'theatre.csv': theatreOf(['A1']), 'lane.csv': lines }, [
      theatre,
      source,
    ]);
    return { spheres: rows('refractions', 'sphere').flat(), books: books('lane.csv') };
  }

  it('takes rows by words of the file’s own columns; the others are another kind of row', async () => {
    expect(await spheres(where('Type', 'is', 'REF'))).toEqual({
      spheres: [1, 2],
      books: { used: 2, setAside: { 'other-kind-of-row': 1 } },
    });
  });

  it('compares by size as the file writes numbers and dates, and takes no row that it cannot decide', async () => {
    expect((await spheres(where('Quality', 'at_least', 1))).spheres).toEqual([2]);
    expect((await spheres(where('Quality', 'below', 1))).spheres).toEqual([1]);
    expect((await spheres(where('Made', 'at_least', '2025-04-03'))).spheres).toEqual([1, 2]);
    expect((await spheres(where('Made', 'above', '2025-04-03'))).spheres).toEqual([2]);
    expect((await spheres(where('Made', 'is', 'missing'))).spheres).toEqual([3]);
  });
});
