import { describe, expect, it } from 'vitest';
import { numbersOf, statesOf } from '../../src/columns/table.js';
import { audited, findingsOf } from '../findings/audited.js';
import { planOf } from '../findings/plan.js';
import { after, before, lane, list } from './clinic.js';

const refraction = { sphere: 'S', cylinder: 'C', axis: 'A' };
const limits = (of: object) => ({ quality: { limits: of as never, off: [], answers: [] } });

describe('sphere-range', () => {
  it('sets an impossible sphere aside with its refraction, quoting what was written', async () => {
    const { told, tables } = await lane(
      'S,C,A',
      [`A1,R,${after},+75,-0.50,90`, `A2,R,${after},-30.00,0,0`],
      refraction,
    );
    expect(told.filter(({ severity }) => severity === 'set aside')).toMatchObject([
      {
        rule: 'sphere-range',
        severity: 'set aside',
        source: 1,
        row: 2,
        column: 'S',
        field: 'sphere',
        written: '+75',
        eye: 0,
        day: 40,
        effect: 'refraction left out',
        detail: 30,
      },
    ]);
    expect([...statesOf(tables.measurements.refractions)]).toEqual([2, 1]);
  });

  // The limits are settled for this project; their ends are inside.
  it.each([
    ['-12.00', before, []],
    ['-12.25', before, [-12]],
    ['8.00', before, []],
    ['8.25', before, [8]],
    ['4.00', after, []],
    ['4.25', after, [4]],
    ['-4.25', after, [-4]],
    ['-4.25', before, []],
    ['-12.25', after, [-12]],
  ])('asks about %s on %s: %j', async (sphere, day, passed) => {
    const { told, tables } = await lane('S,C,A', [`A1,R,${day},${sphere},-0.5,90`], refraction);
    expect(told.map(({ rule, severity, detail }) => [rule, severity, detail])).toEqual(
      passed.map((limit) => ['sphere-range', 'query', limit]),
    );
    expect([...statesOf(tables.measurements.refractions)]).toEqual([passed.length]);
  });

  it('judges the sphere as it was recorded, not as it stands in plus notation', async () => {
    // +5.00 −2.00 × 90 is +3.00 +2.00 × 180: the recorded sphere is unusual after surgery, the transposed one is not.
    const { told } = await lane('S,C,A', [`A1,R,${after},+5.00,-2.00,90`], refraction);
    expect(told).toMatchObject([{ rule: 'sphere-range', written: '+5.00' }]);
  });

  it('asks by the audit’s own limits where it declares them, before and after surgery alike', async () => {
    const rows = [`A1,R,${after},+5,0,0`, `A2,R,${before},+9,0,0`, `A3,R,${before},+12,0,0`];
    const declared = limits({ sphere: { possible: [-20, 10], usual: [-15, 8.5], reason: 'x' } });
    const { told } = await lane('S,C,A', rows, refraction, declared);
    expect(told.map(({ row, severity, detail }) => [row, severity, detail])).toEqual([
      [3, 'query', 8.5],
      [4, 'set aside', 10],
    ]);
  });
});

describe('cylinder-range', () => {
  it('judges the size, whichever the sign and the notation', async () => {
    const rows = [`A1,R,${after},0,-12.25,90`, `A2,R,${after},0,12.25,90`, `A3,R,${before},0,-5.25,90`];
    const { told } = await lane('S,C,A', [...rows, `A4,R,${after},0,3,90`, `A5,R,${after},0,-3.25,90`], refraction);
    expect(told.map(({ rule, row, severity, detail }) => [rule, row, severity, detail])).toEqual([
      ['cylinder-range', 2, 'set aside', 12],
      ['cylinder-range', 3, 'set aside', 12],
      ['cylinder-range', 4, 'query', 5],
      ['cylinder-range', 6, 'query', 3],
    ]);
  });
});

describe('axis-range', () => {
  it('leaves the vector out and keeps the powers; 0 and 180 are axes', async () => {
    const rows = [`A1,R,${after},1,-1,195`, `A2,R,${after},1,-1,0`, `A3,R,${after},1,-1,180`, `A4,R,${after},1,-1,-5`];
    const { told, tables } = await lane('S,C,A', rows, refraction);
    expect(told.map(({ rule, row, severity, effect }) => [rule, row, severity, effect])).toEqual([
      ['axis-range', 2, 'set aside', 'vector left out'],
      ['axis-range', 5, 'set aside', 'vector left out'],
    ]);
    expect([...statesOf(tables.measurements.refractions)]).toEqual([1, 0, 0, 1]);
    expect(Number.isNaN(numbersOf(tables.measurements.refractions, 'axis')[0])).toBe(true);
  });

  it('leaves out one axis of a cornea and keeps its powers', async () => {
    const columns = { k1: 'K1', k1_axis: 'A1', k2: 'K2', k2_axis: 'A2' };
    const { told, tables } = await lane('K1,A1,K2,A2', [`A1,R,${before},43,257,44,67`], columns);
    expect(told).toMatchObject([{ rule: 'axis-range', field: 'k1_axis', effect: 'value left out' }]);
    expect([...statesOf(tables.measurements.keratometries)]).toEqual([1]);
  });

  it('leaves out a lens axis, aimed at or seen', async () => {
    const seen = await lane('L', [`A1,R,${after},190`, `A2,R,${after},90`], { lens_axis: 'L' });
    expect(seen.told).toMatchObject([{ rule: 'axis-range', field: 'lens_axis', eye: 0, effect: 'value left out' }]);
    const aimed = await list('L', ['A1,R,2025-03-01,190', 'A2,R,2025-03-01,90'], { lens_axis_intended: 'L' });
    expect(aimed.told).toMatchObject([{ rule: 'axis-range', field: 'lens_axis_intended', eye: 0 }]);
    expect([...statesOf(aimed.tables.eyes, 'lens_axis_intended.state')]).toEqual([2, 0]);
  });
});

describe('keratometry-range', () => {
  it('judges dioptres and radii by one limit: 30 D is 11.25 mm, 60 D is 5.625 mm at 1.3375', async () => {
    const radii = { k1: { column: 'K1', unit: 'mm' }, k2: { column: 'K2', unit: 'mm' } } as const;
    const rows = [`A1,R,${before},11.25,5.625`, `A2,R,${before},11.26,7.8`, `A3,R,${before},7.8,5.62`];
    const { told, tables } = await lane('K1,K2', rows, radii);
    const outside = told.filter(({ rule }) => rule === 'keratometry-range');
    expect(outside.map(({ rule, row, written, effect }) => [rule, row, written, effect])).toEqual([
      ['keratometry-range', 3, '11.26', 'keratometry left out'],
      ['keratometry-range', 4, '5.62', 'keratometry left out'],
    ]);
    expect([...statesOf(tables.measurements.keratometries)]).toEqual([0, 2, 2]);
  });

  it('judges flat, steep and mean powers too', async () => {
    const flat = await lane('F,S', [`A1,R,${before},29.9,44`, `A2,R,${before},43,44`], { k_flat: 'F', k_steep: 'S' });
    expect(flat.told).toMatchObject([{ field: 'k_flat', written: '29.9' }]);
    const mean = await lane('K,C', [`A1,R,${before},60.1,1`, `A2,R,${before},43,1`], { k_mean: 'K', k_cylinder: 'C' });
    expect(mean.told).toMatchObject([{ field: 'k_mean', detail: 60 }]);
  });
});

describe('axial-length-range', () => {
  it('sets an impossible length aside, and notes what is commonly measured again', async () => {
    const rows = ['18', '17.99', '38.01', '21.19', '21.2', '26.61'].map(
      (length, i) => `A${i + 1},R,2025-03-01,${length}`,
    );
    const { told, tables } = await list('AL', rows, { axial_length: 'AL' });
    expect(told.map(({ row, severity, detail }) => [row, severity, detail])).toEqual([
      [2, 'note', 21.2],
      [3, 'set aside', 18],
      [4, 'set aside', 38],
      [5, 'note', 21.2],
      [7, 'note', 26.6],
    ]);
    expect([...statesOf(tables.eyes, 'axial_length.state')]).toEqual([0, 2, 2, 0, 0, 0]);
  });
});

describe('acuity-range', () => {
  it('judges logMAR whatever the acuity was written in', async () => {
    // 20/10 is −0.301, 20/9 is −0.347; decimal 10 is −1; low vision is 1.9 to 3.0 by the table.
    const rows = ['20/10', '20/9', '20/2', 'CF', 'NLP', '20/40'].map((acuity, i) => `A${i + 1},R,${after},${acuity}`);
    const { told, tables } = await lane('V', rows, { cdva: 'V' });
    expect(told.map(({ rule, row, written, effect }) => [rule, row, written, effect])).toEqual([
      ['acuity-range', 3, '20/9', 'acuity left out'],
      ['acuity-range', 4, '20/2', 'acuity left out'],
    ]);
    expect([...statesOf(tables.measurements.corrected)]).toEqual([0, 2, 2, 0, 0, 0]);
  });

  it('keeps the refraction beside an impossible acuity, and the acuity beside an impossible sphere', async () => {
    const rows = [`A1,R,${after},1,-1,90,20/2`, `A2,R,${after},75,-1,90,20/20`, `A3,R,${after},1,-1,90,20/20`];
    const { tables } = await lane('S,C,A,V', rows, { ...refraction, udva: 'V' });
    expect([...statesOf(tables.measurements.refractions)]).toEqual([0, 2, 0]);
    expect([...statesOf(tables.measurements.uncorrected)]).toEqual([2, 0, 0]);
  });
});

describe('a range', () => {
  it('is not asked of eyes that are no part of the audit', async () => {
    const { told } = await lane('S,C,A', [`B9,R,${after},75,0,0`], refraction);
    expect(told.map(({ rule }) => rule)).toEqual(['exam-without-surgery']);
  });

  it('reaches the measurement that a repeated row was joined to', async () => {
    const rows = [`A1,R,${after},75,-0.5,90`, `A1,R,${after},75,-0.5,90`, `A2,R,${after},1,0,0`];
    const { told, tables } = await lane('S,C,A', rows, refraction);
    expect(told.filter(({ rule }) => rule === 'sphere-range')).toMatchObject([
      { row: 2, eye: 0, day: 40 },
      { row: 3, eye: 0, day: 40 },
    ]);
    expect([...statesOf(tables.measurements.refractions)]).toEqual([2, 0]);
  });

  it.each([
    ['75', '-0.5'],
    ['75', '+0.5'],
  ])('reaches a value that a preferred file brought in: %s %s', async (sphere, cylinder) => {
    const columns = { patient: 'ID', eye: 'Eye', exam_date: 'Date', ...refraction };
    const constants = { device: 'lane' };
    const plan = planOf(
      [
        { file: 'theatre.csv', holds: 'surgery', columns: { patient: 'ID', eye: 'Eye', surgery_date: 'Date' } },
        { file: 'first.csv', columns, constants },
        { file: 'better.csv', columns, constants },
      ],
      { prefer: ['better.csv'] },
    );
    const files = {
      'theatre.csv': 'ID,Eye,Date\nA1,R,2025-03-01\n',
      'first.csv': `ID,Eye,Date,S,C,A\nA1,R,${after},1,${cylinder},90\n`,
      'better.csv': `ID,Eye,Date,S,C,A\nA1,R,${after},${sphere},${cylinder},90\n`,
    };
    const { findings, tables } = await audited(files, plan);
    expect(findingsOf(findings, 'sphere-range')).toMatchObject([{ source: 2, row: 2, eye: 0, day: 40 }]);
    expect([...statesOf(tables.measurements.refractions)]).toEqual([2]);
  });

  it('compares in millionths, so that 4 written as 4.0000000004 is inside', async () => {
    const { told } = await lane('S,C,A', [`A1,R,${after},4.0000000004,0,0`], refraction);
    expect(told).toEqual([]);
  });
});
