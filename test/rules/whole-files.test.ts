// Rules on columns and files: ../shared/spec/2-data.md, the table of quality rules and the paragraph below it.
import { describe, expect, it } from 'vitest';
import { numbersOf } from '../../src/columns/table.js';
import { tell } from '../../src/findings/telling.js';
import { en } from '../../src/words/index.js';
import { audited, findingsOf } from '../findings/audited.js';
import { planOf, type SourceForm } from '../findings/plan.js';
import { after, lane } from './clinic.js';
import { clinic, declared, type MadeExam, type MadeEye } from './made-up.js';

const many = (count: number, of: (i: number) => Partial<MadeEye>): readonly MadeEye[] =>
  Array.from({ length: count }, (_, i) => ({ patient: `A${i}`, ...of(i) }));
const exams = (count: number, of: (i: number) => Partial<MadeExam>): readonly MadeExam[] =>
  Array.from({ length: count }, (_, i) => ({ patient: `A${i}`, days: 40, ...of(i) }));

describe('column-blank', () => {
  it('asks about a mapped column that says nothing, once a file, whatever word says it', async () => {
    const eyes = many(3, (i) => ({ comorbidity: ['', 'n/a', '-'][i], site: i === 1 ? 'North' : '' }));
    expect((await clinic({ eyes })).told('column-blank')).toMatchObject([
      { severity: 'query', source: 0, row: 0, column: 'comorbidity', field: 'comorbidity', detail: 3, eye: -1 },
    ]);
  });
});

describe('outcome-none', () => {
  it('says that no file holds an examination after surgery', async () => {
    const alone = await clinic({ eyes: many(2, () => ({ axial_length: 23.5 })) });
    expect(alone.told('outcome-none')).toMatchObject([{ severity: 'query', source: -1, row: 0, detail: Number.NaN }]);
    const before = await clinic({ eyes: many(2, () => ({})), exams: exams(2, () => ({ days: -5, cdva: 0.3 })) });
    expect(before.told('outcome-none')).toMatchObject([{ detail: Number.NaN }]);
  });

  it('says on which days eyes were examined, where none of them is of the outcome visit', async () => {
    const late = await clinic({ eyes: many(2, () => ({})), exams: exams(2, (i) => ({ days: 130 + i, cdva: 0 })) });
    const [found] = late.told('outcome-none');
    expect(found).toMatchObject({ detail: 130, other: 131 });
    const told = tell(found as NonNullable<typeof found>, { raw: late.raw, plan: late.plan, words: en.findings });
    expect(told.sentence).toContain('from day 130 to 131');
  });

  it('is silent as soon as one eye has an outcome, or while none is due', async () => {
    const one = await clinic({ eyes: many(2, () => ({})), exams: exams(1, () => ({ cdva: 0 })) });
    expect(one.told('outcome-none')).toEqual([]);
    const until = { data_until: '2025-03-10' };
    const early = await clinic({ eyes: many(2, () => ({})), exams: exams(2, () => ({ days: 5, cdva: 0 })) }, until);
    expect(early.told('outcome-none')).toEqual([]);
  });
});

// Blanks are declared to mean "none": in a column that nobody ever filled in they mean nothing, and no rate is given.
it('a column that is blank throughout has no meaning, whatever blanks are declared to mean', async () => {
  const columns = { patient: 'ID', eye: 'Eye', surgery_date: 'Date', complication: 'C' };
  const plan = planOf([{ file: 't.csv', holds: 'surgery', columns, blank_means: { complication: 'none' } }]);
  const known = async (...codes: readonly string[]) => {
    const rows = codes.map((code, i) => `A${i},R,2025-03-01,${code}`);
    const { tables, findings } = await audited({ 't.csv': ['ID,Eye,Date,C', ...rows].join('\n') }, plan);
    return [[...numbersOf(tables.eyes, 'any_complication')], findingsOf(findings, 'column-blank').length];
  };
  expect(await known('', 'PCR')).toEqual([[0, 1], 0]);
  expect(await known('', '')).toEqual([[Number.NaN, Number.NaN], 1]);
});

describe('refraction-half-blank', () => {
  const lane = (blank: number, of: number) => ({
    eyes: many(of, () => ({})),
    exams: exams(of, (i) => ({ sphere: 1, cylinder: i < blank ? '' : -1, axis: 90 })),
  });

  it('stops where more than one refraction in a hundred has a blank cylinder beside its sphere', async () => {
    expect((await clinic(lane(1, 100))).told('refraction-half-blank')).toEqual([]);
    expect((await clinic(lane(1, 99))).told('refraction-half-blank')).toMatchObject([
      { severity: 'stop', source: 1, column: 'cylinder', field: 'cylinder', detail: 1, other: 99 },
    ]);
  });

  it('counts refractions: rows that hold neither number do not dilute it', async () => {
    const eyes = many(200, () => ({}));
    const rows = exams(200, (i) => (i < 99 ? { sphere: i === 0 ? '' : 1, cylinder: -1, axis: 90 } : { cdva: 0 }));
    expect((await clinic({ eyes, exams: rows })).told('refraction-half-blank')).toMatchObject([{ field: 'sphere' }]);
  });

  it('is settled by what the audit says a blank means, and names both lines', async () => {
    const text = ['ID,Eye,Date,S,C', 'A1,R,2025-04-10,1,', 'A1,R,2025-04-11,,-1'].join('\n');
    const columns = { patient: 'ID', eye: 'Eye', exam_date: 'Date', sphere: 'S', cylinder: 'C' };
    const theatre: SourceForm = {
      file: 't.csv',
      holds: 'surgery',
      columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date' },
    };
    const files = { 't.csv': 'ID,Eye,Date\nA1,R,2025-03-01', 'l.csv': text };
    const open = planOf([theatre, { file: 'l.csv', columns }]);
    const { findings, raw } = await audited(files, open);
    const stops = findingsOf(findings, 'refraction-half-blank');
    expect(stops.map((one) => tell(one, { raw, plan: open, words: en.findings }).lines)).toEqual([
      ['blank_means: { sphere: 0 }', 'blank_means: { sphere: missing }'],
      ['blank_means: { cylinder: 0 }', 'blank_means: { cylinder: missing }'],
    ]);
    const settled = planOf([theatre, { file: 'l.csv', columns, blank_means: { sphere: 0, cylinder: 'missing' } }]);
    expect(findingsOf((await audited(files, settled)).findings, 'refraction-half-blank')).toEqual([]);
  });
});

describe('constant-column', () => {
  it.each(['target_se', 'age'])('asks about one %s in every row of a file of twenty', async (field) => {
    const told = async (count: number, last: number | string) => {
      const eyes = many(count, (i) => ({ [field]: i === count - 1 ? last : 50 / 100 }));
      return (await clinic({ eyes })).told('constant-column');
    };
    expect(await told(20, 0.5)).toMatchObject([
      { severity: 'query', column: field, written: '0.5', detail: 20, row: 0 },
    ]);
    expect(await told(19, 0.5)).toEqual([]);
    expect(await told(21, 0.75)).toEqual([]);
    // A blank row is no other value, and no value.
    expect(await told(21, '')).toHaveLength(1);
    expect(await told(20, '')).toEqual([]);
  });

  it('asks about one axis for all, and never about a vertex distance', async () => {
    const rows = exams(20, () => ({ sphere: 1, cylinder: -1, axis: 90, vertex_mm: 12 }));
    const { told } = await clinic({ eyes: many(20, () => ({})), exams: rows });
    expect(told('constant-column').map(({ field }) => field)).toEqual(['axis']);
  });
});

describe('prediction-is-target', () => {
  const told = async (rows: number, of: (i: number) => Partial<MadeEye>) =>
    (await clinic({ eyes: many(rows, of) })).told('prediction-is-target');

  it('asks where in all rows, five at least, the prediction is the target', async () => {
    const same = (i: number) => ({ target_se: -i / 4, predicted_se: -i / 4 });
    expect(await told(5, same)).toMatchObject([{ severity: 'query', column: 'predicted_se', detail: 5, row: 0 }]);
    expect(await told(4, same)).toEqual([]);
    expect(await told(6, (i) => (i === 5 ? { target_se: 0, predicted_se: 0.01 } : same(i)))).toEqual([]);
    // Eyes without a target say nothing of the others.
    expect(await told(6, (i) => (i === 5 ? { target_se: '', predicted_se: 0.01 } : same(i)))).toHaveLength(1);
  });
});

describe('cylinder-notation', () => {
  const lane = (plus: number, of: number) => ({
    eyes: many(of, () => ({})),
    exams: exams(of, (i) => ({ sphere: 0, cylinder: i < plus ? 0.5 : -0.5, axis: 90 })),
  });

  it('asks about each cylinder of the rarer sign, below a fifth', async () => {
    const { told, tables } = await clinic(lane(1, 6));
    expect(told('cylinder-notation')).toMatchObject([
      { severity: 'query', row: 2, column: 'cylinder', written: '0.5', eye: 0 },
    ]);
    expect(told('cylinder-notation-file')).toEqual([]);
    expect(tables.measurements.refractions.numRows()).toBe(6);
  });

  it('asks once about a file of which a fifth or more has the rarer sign', async () => {
    const { told } = await clinic(lane(1, 5));
    expect(told('cylinder-notation')).toEqual([]);
    expect(told('cylinder-notation-file')).toMatchObject([{ severity: 'query', row: 0, detail: 1, other: 5, eye: -1 }]);
  });

  it('knows no sign of a cylinder of nothing, and none where the audit says what the sign is', async () => {
    const zero = await clinic({
      eyes: many(6, () => ({})),
      exams: exams(6, (i) => ({ sphere: 0, cylinder: i < 1 ? 0 : -0.5, axis: 90 })),
    });
    expect(zero.told('cylinder-notation')).toEqual([]);
  });
});

describe('notation-contradicted', () => {
  // predicted_cylinder is declared plus: a minus before it contradicts, whether or not sphere and axis went with it.
  const told = async (minus: number, written = '-0.5') => {
    const eye = (i: number) => ({
      predicted_se: 0,
      predicted_axis: 90,
      predicted_cylinder: i < minus ? written : '0.5',
    });
    const all = await clinic({ eyes: many(10, eye) });
    return { ...all, found: all.told('notation-contradicted') };
  };

  it('stops where a fifth of the column or more has the other sign', async () => {
    const { found, raw, plan } = await told(2);
    expect(found).toMatchObject([
      { severity: 'stop', row: 2, column: 'predicted_cylinder', written: '-0.5', detail: 2, other: 10 },
    ]);
    const { lines, sentence } = tell(found[0] as NonNullable<(typeof found)[0]>, { raw, plan, words: en.findings });
    expect(sentence).toContain('2 of 10 rows');
    expect(lines).toEqual([]);
  });

  it('asks about fewer, and about none that have the sign declared, no sign, or no cylinder', async () => {
    expect((await told(1, '\u22120.50')).found).toMatchObject([{ severity: 'query', effect: 'kept', detail: 1 }]);
    for (const written of ['+0.5', '0.5', '-0.00', '']) expect((await told(2, written)).found).toEqual([]);
  });

  it('knows both forms of an exam, and offers to read each sign', async () => {
    const rows = ['-1.00 +0.50 x 90', '-1.00 -0.50 x 90'].map((rx, i) => `A${i + 1},R,${after},${rx}`);
    const cell = await lane('Rx', rows, { refraction: { column: 'Rx', notation: 'minus' } });
    expect(findingsOf(cell.findings, 'notation-contradicted')).toMatchObject([{ severity: 'stop', row: 2, detail: 1 }]);
    const columns = { sphere: 'S', cylinder: { column: 'C', notation: 'plus' }, axis: 'A' } as const;
    const { findings, raw } = await lane('S,C,A', [`A1,R,${after},-1,-0.5,90`], columns);
    const [one] = findingsOf(findings, 'notation-contradicted');
    const plan = planOf([{ file: 'theatre.csv' }, { file: 'lane.csv', columns }]);
    expect(tell(one as never, { raw, plan, words: en.findings }).lines).toEqual([
      'cylinder: { column: C, notation: signed }',
    ]);
  });
});

describe('refraction-grid', () => {
  const lane = (spheres: readonly number[]) => ({
    eyes: many(spheres.length, () => ({})),
    exams: exams(spheres.length, (i) => ({ sphere: spheres[i], cylinder: -0.5, axis: 90 })),
  });
  const quarters = [0.25, -0.25, 0, 0.5, 1, -1];

  it.each([
    [0.13, 0],
    [0.12, 0],
    [0.131, 0],
    [0.132, 1],
    [0.57, 1],
    [-0.118, 1],
    [-2.37, 0],
  ])('a sphere of %f is off the eighths %i times', async (sphere, times) => {
    const { told } = await clinic(lane([sphere, ...quarters]));
    expect(told('refraction-grid')).toHaveLength(times);
  });

  it('asks once about a file that an autorefractor seems to have written', async () => {
    const { told } = await clinic(lane([0.57, 0.33, ...quarters]));
    expect(told('refraction-grid')).toEqual([]);
    expect(told('refraction-grid-file')).toMatchObject([{ severity: 'query', row: 0, detail: 2, other: 8 }]);
  });
});

describe('label-similar', () => {
  const told = async (labels: readonly string[], more = {}) =>
    (await clinic({ eyes: many(labels.length, (i) => ({ site: labels[i] })) }, more)).told('label-similar');

  it('asks about labels that differ in case, blanks or punctuation, however common', async () => {
    expect(await told(['North', 'North', 'north', 'N-orth'])).toMatchObject([
      { severity: 'query', row: 4, column: 'site', written: 'north’ and ‘North', detail: 1, other: 2, eye: -1 },
      { row: 5, written: 'N-orth’ and ‘North' },
    ]);
  });

  it('asks about one letter where fewer than one row in twenty has it', async () => {
    const north = (count: number) => Array.from({ length: count }, () => 'North');
    expect(await told([...north(20), 'Norht', 'Nort'])).toMatchObject([{ written: 'Nort’ and ‘North' }]);
    expect(await told([...north(19), 'Nort'])).toEqual([]);
    expect(await told([...north(20), 'Nort'])).toHaveLength(1);
  });

  it('says nothing of labels that the audit has joined', async () => {
    const values = { site: { North: ['north', 'Nort'] } };
    expect(await told(['North', 'North', 'north', 'Nort'], { values })).toEqual([]);
  });

  it.each([
    ['north', 'nort', 1],
    ['north', 'nroth', 0],
    ['north', 'morth', 1],
    ['lens12', 'lens13', 0],
    ['lens12', 'lens1', 0],
    ['a1t', 'a1', 0],
    ['manual', 'emanual', 1],
  ])('of %s, %s is asked about %i times', async (often, once, times) => {
    expect(await told([...Array.from({ length: 25 }, () => often), once])).toHaveLength(times);
  });
});

it('a limit of a comparison may be the audit’s own', async () => {
  const eyes = many(12, () => ({ age: 71 }));
  expect((await clinic({ eyes }, declared({ constant_rows: [0, 12] }))).told('constant-column')).toHaveLength(1);
});
