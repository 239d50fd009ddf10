// K or axial length of another patient: limits as of `fellow-eye-fits`, whose values are settled for this project.
import { describe, expect, it } from 'vitest';
import { plan as planFrom } from '../../pipeline/plan.js';
import { makeEyes } from '../../sample-exports/generator/eyes.js';
import type { Sheet } from '../../sample-exports/generator/sheet.js';
import { SEED } from '../../sample-exports/generator/truth.js';
import { allFindings, audited, findingsOf } from '../findings/audited.js';
import { planOf } from '../findings/plan.js';
import { auditText, faultlessSheets, filesOf } from '../whole/sample.js';
import { clinic, type MadeExam } from './made-up.js';

const cornea = (patient: string, days: number, k: number, more: Partial<MadeExam> = {}): MadeExam => ({
  patient,
  days,
  k1: k,
  k1_axis: 180,
  k2: k + 0.5,
  k2_axis: 90,
  ...more,
});
const eyes = ['A', 'B', 'C'].map((patient) => ({ patient }));
const biometer = [cornea('A', -20, 42), cornea('B', -20, 45), cornea('C', -20, 43)];
const lane = (...powers: readonly number[]) =>
  powers.map((k, i) => cornea(['A', 'B', 'C'][i] ?? '', -10, k, { file: 'k.csv' }));

describe('other-patient-fits', () => {
  it('asks about both patients of an exchange, in the file read later, and names the row of the other', async () => {
    const { told } = await clinic({ eyes, exams: [...biometer, ...lane(45, 42, 43)] });
    expect(told('other-patient-fits')).toMatchObject([
      { severity: 'query', source: 2, row: 2, eye: 0, detail: 3, other: 3 },
      { source: 2, row: 3, eye: 1, detail: 3, other: 2 },
    ]);
  });

  // Own eye: more than 0.90 D away; the other patient: less than 0.45 D; both must fit.
  it.each([
    [[44.56, 42], 2],
    [[44.55, 42], 0],
    [[45, 42.44], 2],
    [[45, 42.46], 0],
    [[45, 45], 0],
    [[42, 45], 0],
  ])('of two measurements %j asked %i times', async (powers, times) => {
    const { told } = await clinic({ eyes, exams: [...biometer, ...lane(...powers)] });
    expect(told('other-patient-fits')).toHaveLength(times);
  });

  it('never compares a right eye with a left one, nor one patient with himself', async () => {
    const left = [{ patient: 'A' }, { patient: 'B', eye: 'L' as const }];
    const exams = [...biometer, ...lane(45, 42)].filter(({ patient }) => patient !== 'C');
    const sided = exams.map((exam) => (exam.patient === 'B' ? { ...exam, eye: 'L' as const } : exam));
    expect((await clinic({ eyes: left, exams: sided })).told('other-patient-fits')).toEqual([]);
  });

  it('asks about lengths that two patients have in each other’s place in another file', async () => {
    const columns = { patient: 'ID', eye: 'Eye', axial_length: 'AL' };
    const plan = planOf(
      [
        { file: 't.csv', holds: 'surgery', columns: { ...columns, surgery_date: 'Date' } },
        { file: 'b.csv', holds: 'eye', columns },
      ],
      { prefer: ['t.csv'] },
    );
    const told = async (a: number, b: number) => {
      const { findings } = await audited(
        {
          't.csv': 'ID,Eye,Date,AL\nA,R,2025-03-01,23.00\nB,R,2025-03-01,24.00\n',
          'b.csv': `ID,Eye,AL\nA,R,${a}\nB,R,${b}\n`,
        },
        plan,
      );
      return findingsOf(findings, 'other-patient-fits').map(({ source, row, detail, other }) => [
        source,
        row,
        detail,
        other,
      ]);
    };
    expect(await told(24, 23)).toEqual([
      [1, 2, 23, 3],
      [1, 3, 24, 2],
    ]);
    expect(await told(24.1, 22.9)).toHaveLength(2);
    expect(await told(24.11, 23)).toEqual([]);
    expect(await told(23, 24)).toEqual([]);
  });
});

// Planted in the sample before its slips: the radii of two patients' eyes at one examination each.
describe('in the sample', () => {
  const planned = planFrom(auditText());
  if ('faults' in planned) throw new RangeError('audit.yaml of the sample has faults');
  const sheets = faultlessSheets(makeEyes(SEED));
  const sheet = sheets.find(({ file }) => file === 'keratometer.csv') as Sheet;
  const at = (name: string): number => sheet.header.indexOf(name);
  const radius = (row: number): number => Number(sheet.rows[row]?.[at('R1')]);
  const patient = (row: number): string | undefined => sheet.rows[row]?.[at('ID')];

  /** First rows of patients whose right and left eye stand one below the other, from the flattest to the steepest. */
  const firsts = sheet.rows
    .flatMap((_, row) => (patient(row) === patient(row + 1) && patient(row) !== patient(row - 1) ? [row] : []))
    .toSorted((a, b) => radius(a) - radius(b));

  it('fires at the four rows of an exchange, and no other rule with it', async () => {
    // Quarters apart: further apart the lens would no longer fit the cornea, and its own rule asks.
    const [steep, flat] = [0.25, 0.75].map((share) => firsts[Math.floor(share * firsts.length)]) as [number, number];
    const values = ['R1', 'A1', 'R2', 'A2'].map(at);
    const rows = sheet.rows.map((row) => [...row]);
    for (const [a, b] of [
      [steep, flat],
      [steep + 1, flat + 1],
    ] as const) {
      for (const column of values) {
        (rows[a] as string[])[column] = sheet.rows[b]?.[column] ?? '';
        (rows[b] as string[])[column] = sheet.rows[a]?.[column] ?? '';
      }
    }
    const changed = sheets.map((one) => (one === sheet ? { ...sheet, rows } : one));
    const { findings, raw } = await audited(filesOf(changed), planned.plan);
    const told = allFindings(findings).filter(({ severity }) => severity !== 'note');
    const place = raw.findIndex(({ file }) => file === 'keratometer.csv');
    const own = [steep, steep + 1, flat, flat + 1].map((row) => raw[place]?.rowNumber(row)).toSorted();
    expect(told.map(({ rule, source, row }) => [rule, source, row]).toSorted()).toEqual(
      own.map((row) => ['other-patient-fits', place, row]),
    );
  });
});
