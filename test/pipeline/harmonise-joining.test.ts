// ../shared/spec/6-settled.md, "the same exam in two files": joining is per field; values that agree within tolerance
// (sphere, cylinder 0.01; axis 1°; K 0.05 D; acuity 0.005; lengths 0.01) are one; otherwise that field is set aside
// and the rest kept, unless `prefer` orders the sources. Two devices are two measurements.
import { describe, expect, it } from 'vitest';
import type { Kind } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';
import type { SourceForm } from '../findings/plan.js';
import { harmonised, theatre, theatreOf } from './harmonised.js';

const columns = {
  patient: 'ID',
  eye: 'Eye',
  days: 'Day',
  sphere: 'Sph',
  cylinder: { column: 'Cyl', notation: 'plus' },
  axis: 'Ax',
  cdva: { column: 'CDVA', numbers: 'logmar' },
  k_flat: 'Flat',
  k_steep: 'Steep',
  k_steep_axis: 'At',
} as const;
const header = 'ID,Eye,Day,Sph,Cyl,Ax,CDVA,Flat,Steep,At';
/** Files of one device: their rows are the same measurements. */
const lane = (file: string): SourceForm => ({ file, columns, constants: { device: 'phoropter' } });

/** Day 74 of the right eye of A1 in each file. */
function joinedFiles(files: Readonly<Record<string, readonly string[]>>, more: Partial<Plan> = {}) {
  const texts = Object.entries(files).map(
    ([file, rows]) => [file, [header, ...rows.map((row) => `A1,R,74,${row}`)]] as const,
  );
  return harmonised(
    { 'theatre.csv': theatreOf(['A1']), ...Object.fromEntries(texts) },
    [theatre, ...Object.keys(files).map(lane)],
    more,
  );
}

const sphereCylinderAxis = ['sphere', 'cylinder', 'axis'] as const;

describe('within one measurement', () => {
  it('a blank takes what another row says', async () => {
    const { rows, findings, books } = await joinedFiles({
      'a.csv': ['1.00,0.50,,,,,'],
      'b.csv': ['1.00,0.50,90,0.1,,,'],
    });
    expect(rows('refractions', ...sphereCylinderAxis)).toEqual([[1, 0.5, 90]]);
    expect(rows('corrected', 'logMAR')).toEqual([[0.1]]);
    expect(findings).toEqual([]);
    expect(books('b.csv')).toEqual({ used: 1, setAside: {} });
  });

  it.each([
    ['refractions', ['1.00,0.50,90,,,,', '1.01,0.50,91,,,,'], [[1, 0.5, 90]]],
    ['refractions', ['1.00,0.50,180,,,,', '1.00,0.50,1,,,,'], [[1, 0.5, 180]]],
    ['keratometries', [',,,,43.00,44.00,90', ',,,,43.05,44.05,89'], [[43, 44, 90]]],
    ['corrected', [',,,0.100,,,', ',,,0.105,,,'], [[0.1]]],
  ] satisfies [Kind, string[], number[][]][])(
    '%s that agree within tolerance are one: %j',
    async (kind, given, expected) => {
      const [one = '', other = ''] = given;
      const own = {
        refractions: sphereCylinderAxis,
        keratometries: ['flat', 'steep', 'steepAxis'],
        corrected: ['logMAR'],
      }[kind];
      const { rows, findings, books } = await joinedFiles({ 'a.csv': [one], 'b.csv': [other] });
      expect(rows(kind, ...own)).toEqual(expected);
      expect(findings.map(({ rule, severity }) => `${severity} ${rule}`)).toEqual(['note same-key-equal']);
      expect(books('b.csv')).toEqual({ used: 0, setAside: { 'duplicate-row': 1 } });
    },
  );

  it.each([
    ['1.00,0.50,90,,,,', '1.02,0.50,90,,,,', [[Number.NaN, 0.5, 90, 2]]],
    ['1.00,0.50,90,,,,', '1.00,0.52,90,,,,', [[1, Number.NaN, 90, 2]]],
    ['1.00,0.50,90,,,,', '1.00,0.50,92,,,,', [[1, 0.5, Number.NaN, 0]]],
  ])('%s and %s differ: the field is left out, and what it needs with it', async (one, other, expected) => {
    const { rows, findings } = await joinedFiles({ 'a.csv': [one], 'b.csv': [other] });
    expect(rows('refractions', ...sphereCylinderAxis, 'state')).toEqual(expected);
    expect(findings.map(({ rule, severity }) => `${severity} ${rule}`)).toEqual(['set aside same-key-differs']);
  });

  it('an acuity that is disputed leaves the refraction beside it alone', async () => {
    const { rows, findings } = await joinedFiles({
      'a.csv': ['1.00,0.50,90,0.1,,,'],
      'b.csv': ['1.00,0.50,90,0.2,,,'],
    });
    expect(rows('refractions', ...sphereCylinderAxis, 'state')).toEqual([[1, 0.5, 90, 0]]);
    expect(rows('corrected', 'state')).toEqual([[2]]);
    expect(findings.map(({ column, written, effect }) => [column, written, effect])).toEqual([
      ['CDVA', '0.2', 'acuity left out'],
    ]);
  });

  it('a dispute is not settled by a third row that says nothing new', async () => {
    const { rows } = await joinedFiles({ 'a.csv': ['1.00,0.50,90,,,,', '2.00,0.50,90,,,,', '1.00,0.50,90,,,,'] });
    expect(rows('refractions', 'sphere', 'state')).toEqual([[Number.NaN, 2]]);
  });
});

describe('a contradiction', () => {
  it('is told at the later row of a file, with the column in which the two differ and what stands there', async () => {
    const { findings } = await joinedFiles({ 'a.csv': ['1.00,-0.50,90,,,,', '1.00,-0.75,90,,,,'] });
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      rule: 'same-key-differs',
      row: 3,
      column: 'Cyl',
      field: 'cylinder',
      written: '-0.75',
    });
  });

  it('names the steep meridian where that is all that differs', async () => {
    const { findings, rows } = await joinedFiles({ 'a.csv': [',,,,43.00,44.00,90', ',,,,43.00,44.00,20'] });
    expect(findings[0]).toMatchObject({ column: 'At', written: '20', effect: 'value left out' });
    expect(rows('keratometries', 'flat', 'steep', 'steepAxis', 'state')).toEqual([[43, 44, Number.NaN, 0]]);
  });
});

describe('a file that is preferred', () => {
  const files = { 'a.csv': ['1.00,0.50,90,,,,'], 'b.csv': ['2.00,0.50,90,,,,'], 'c.csv': ['3.00,0.50,90,,,,'] };

  it('wins over the order of audit.yaml', async () => {
    const { rows } = await joinedFiles(files, { prefer: ['c.csv', 'b.csv'] });
    expect(rows('refractions', 'sphere', 'state')).toEqual([[3, 0]]);
  });

  it('wins whatever the others say of one another', async () => {
    const { rows, findings } = await joinedFiles(files, { prefer: ['b.csv'] });
    expect(rows('refractions', 'sphere', 'state')).toEqual([[2, 0]]);
    expect(findings.map(({ severity, source }) => [severity, source])).toEqual([
      ['note', 1],
      ['note', 3],
    ]);
  });

  it('is filled up by the others where it says nothing', async () => {
    const { rows } = await joinedFiles(
      { 'a.csv': ['1.00,0.50,90,,,,'], 'b.csv': ['1.25,0.50,,,,,'] },
      { prefer: ['b.csv'] },
    );
    expect(rows('refractions', ...sphereCylinderAxis)).toEqual([[1.25, 0.5, 90]]);
  });
});

describe('two devices', () => {
  it('are two measurements, and so are two sources that name none', async () => {
    const { rows, findings } = await harmonised(
      {
        'theatre.csv': theatreOf(['A1']),
        'a.csv': [header, 'A1,R,74,1.00,0.50,90,,,,'],
        'b.csv': [header, 'A1,R,74,2.00,0.50,90,,,,'],
      },
      [theatre, { file: 'a.csv', columns }, { file: 'b.csv', columns }],
    );
    expect(rows('refractions', 'sphere', 'state')).toEqual([
      [1, 0],
      [2, 0],
    ]);
    expect(findings).toEqual([]);
  });
});

describe('the order of rows inside a file', () => {
  // 89 agrees with 90 and 90 with 91, but 89 does not agree with 91: which of them meet first must not matter.
  const rows = ['1.00,0.50,89,,,,', '1.01,0.50,90,,,,', '1.00,0.50,91,,,,'];
  const orders = [
    [0, 1, 2],
    [0, 2, 1],
    [1, 0, 2],
    [1, 2, 0],
    [2, 0, 1],
    [2, 1, 0],
  ];

  it('does not matter to what is joined', async () => {
    const found = await Promise.all(
      orders.map(async (order) => {
        const { rows: joined } = await joinedFiles({ 'a.csv': order.map((i) => rows[i] as string) });
        return joined('refractions', ...sphereCylinderAxis, 'state');
      }),
    );
    for (const one of found) expect(one).toEqual(found[0]);
  });
});

describe('facts of an eye', () => {
  const biometry: SourceForm = {
    file: 'biometry.csv',
    holds: 'eye',
    columns: { patient: 'ID', eye: 'Eye', axial_length: 'AL', sex: 'Sex' },
  };
  const clinic: SourceForm = {
    ...theatre,
    columns: { ...theatre.columns, axial_length: 'AL', incision_axis: 'At', sex: 'Sex' },
  };

  function facts(surgery: string, eye: readonly string[], more: Partial<Plan> = {}) {
    return harmonised(
      {
        'theatre.csv': ['ID,Eye,Date,AL,At,Sex', `A1,R,2025-03-01,${surgery}`],
        'biometry.csv': ['ID,Eye,AL,Sex', ...eye.map((row) => `A1,R,${row}`)],
      },
      [clinic, biometry],
      more,
    );
  }

  it('are one where they agree, and fill one another’s blanks', async () => {
    const { eyes, findings } = await facts('23.50,10,', ['23.51,f']);
    expect([eyes('axial_length'), eyes('sex'), findings]).toEqual([[23.5], ['F'], []]);
  });

  it('are left out where they differ, and told', async () => {
    const { eyes, findings } = await facts('23.50,10,M', ['23.60,F']);
    expect([eyes('axial_length'), eyes('sex')]).toEqual([[Number.NaN], [undefined]]);
    expect(findings.map(({ rule, column, written, row }) => [rule, column, written, row])).toEqual([
      ['same-key-differs', 'Sex', 'F', 2],
      ['same-key-differs', 'AL', '23.60', 2],
    ]);
  });

  it('are those of the preferred file, whatever the others say of one another', async () => {
    const { eyes } = await facts('23.50,10,M', ['23.60,F', '23.60,F'], { prefer: ['biometry.csv'] });
    expect([eyes('axial_length'), eyes('sex')]).toEqual([[23.6], ['F']]);
  });

  it('of a position differ by half a turn: 10° is not 190°', async () => {
    const twice = [
      'ID,Eye,Date,At',
      'A1,R,2025-03-01,10',
      'A1,R,2025-03-01,190',
      'A2,R,2025-03-01,359',
      'A2,R,2025-03-01,0',
    ];
    const source = { ...theatre, columns: { ...theatre.columns, incision_axis: 'At' } };
    const { eyes } = await harmonised({ 'theatre.csv': twice }, [source]);
    expect(eyes('incision_axis')[0]).toBeNaN();
    expect(eyes('incision_axis')[1]).not.toBeNaN();
  });
});

describe('predictions', () => {
  const predictions: SourceForm = {
    file: 'predictions.csv',
    holds: 'prediction',
    columns: { patient: 'ID', eye: 'Eye', formula: 'F', predicted_se: 'SE' },
  };
  const others: SourceForm = { ...predictions, file: 'others.csv' };
  const header_ = 'ID,Eye,F,SE';

  function predicted(rows: readonly string[], other: readonly string[] = [], more: Partial<Plan> = {}) {
    const files = {
      'theatre.csv': theatreOf(['A1']),
      'predictions.csv': [header_, ...rows],
      'others.csv': [header_, ...other],
    };
    return harmonised(files, [theatre, predictions, others], {
      predictions: { primary_formula: 'one', recompute: [], constants: {}, incision_effect: undefined },
      ...more,
    });
  }
  const shown = ({ tables }: Awaited<ReturnType<typeof predicted>>) =>
    Array.from({ length: tables.predictions.numRows() }, (_, i) => [
      tables.formulas[tables.predictions.get('formula', i) as number],
      tables.predictions.get('predictedSe', i),
      tables.predictions.get('state', i),
    ]);

  it('of two formulas stand side by side; of one they are one, or disputed', async () => {
    const found = await predicted(['A1,R,two,-0.50', 'A1,R,one,-0.25', 'A1,R,one,-0.26', 'A1,R,two,-0.75']);
    expect(shown(found)).toEqual([
      ['one', -0.26, 0],
      ['two', -0.75, 2],
    ]);
    const told = found.findings.filter(({ rule }) => rule === 'same-key-differs');
    expect(told.map(({ row, written }) => [row, written])).toEqual([[5, '-0.75']]);
  });

  it('follow the preferred file', async () => {
    const found = await predicted(['A1,R,one,-0.25'], ['A1,R,one,-0.50'], { prefer: ['others.csv'] });
    expect(shown(found)).toEqual([['one', -0.5, 0]]);
  });
});
