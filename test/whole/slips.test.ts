import { describe, expect, it } from 'vitest';
import { plan as planFrom } from '../../pipeline/plan.js';
import { makeEyes } from '../../sample-exports/generator/eyes.js';
import { HABITS, habitual } from '../../sample-exports/generator/habits.js';
import type { Slip } from '../../sample-exports/generator/slip.js';
import { SLIPS } from '../../sample-exports/generator/slips.js';
import { SEED } from '../../sample-exports/generator/truth.js';
import type { Finding } from '../../src/records/finding.js';
import { rules } from '../../src/rules/index.js';
import { allFindings, audited } from '../findings/audited.js';
import { committedExport } from '../sample-exports/committed.js';
import { auditOf } from './audit.js';
import { auditText, committedFiles, faultlessSheets, filesOf } from './sample.js';

const { findings, raw } = await auditOf(auditText(), committedFiles());
const fileOf = ({ source }: Finding): string => raw[source]?.file ?? '';

/** What is only noted, of eyes as they are made and not of slips. */
const natural = ['axial-length-range', 'keratometry-remeasure', 'keratometry-sides', 'refraction-surprise'];
/** The two lines that the keratometer writes above its header. */
const isNotice = ({ rule }: Finding): boolean => rule === 'rows-passed-over';
const isNatural = ({ rule, severity }: Finding): boolean => severity === 'note' && natural.includes(rule);

const place = (one: { rule: string; file: string; row: number }): string => `${one.file}, row ${one.row}: ${one.rule}`;
/** Where a slip is told. */
const told = (slip: Slip) => ({ rule: slip.rule, ...(slip.at ?? slip) });

describe('the rules', () => {
  const found = findings.filter((finding) => !isNatural(finding) && !isNotice(finding));

  it('fire at every slip, and nowhere else', () => {
    const at = found.map((finding) => place({ ...finding, file: fileOf(finding) }));
    expect(at.sort()).toEqual(SLIPS.map(told).map(place).sort());
  });

  // Rules about a whole row name no column, and no date is ever quoted.
  const wholeRow = ['same-key-equal', 'exam-without-surgery', 'surgery-without-exam'];
  const undated = [
    'date-unreadable',
    'exam-after-export',
    'exam-before-surgery',
    'exam-label',
    'exam-late',
    'second-operation',
  ];
  const quoting = SLIPS.filter(({ rule }) => ![...wholeRow, ...undated].includes(rule));
  it.each(quoting.map(told))('$rule quotes $file, row $row, $column', (slip) => {
    const own = found.find((one) => one.rule === slip.rule && one.row === slip.row && fileOf(one) === slip.file);
    expect(own?.column).toBe(slip.column);
    if (slip.rule === 'label-similar') expect(own?.written).toBe('north’ and ‘North');
    else expect(own?.written ?? '').toBe(slip.value);
  });

  it('are all met by a slip, by a habit of a whole file, or in a test of their own', () => {
    const met = new Set([...SLIPS.map(({ rule }) => rule), ...HABITS.map(({ rule }) => rule), ...natural]);
    const known = rules.flatMap(({ id, tells = [id] }) => tells);
    // test/sample-exports/half-impossible; what audit.yaml leaves unmapped, which no slip of a file can be.
    const unmapped = ['axis-not-mapped', 'lens-axis-not-mapped', 'lens-axis-not-observed', 'outcome-none'];
    // Two patients exchanged: test/rules/exchanged-patients.test.ts, planted in this sample.
    // Signs against the notation that audit.yaml declares for a column: test/rules/whole-files.test.ts.
    const elsewhere = ['column-impossible', 'notation-contradicted', 'other-patient-fits', ...unmapped];
    expect(known.filter((rule) => !met.has(rule) && !elsewhere.includes(rule))).toEqual([]);
  });

  // ../shared/spec/2-data.md, the table of quality rules.
  it('set aside what is impossible, ask about what is doubtful, note what is harmless', () => {
    const asked = [
      'axis-missing',
      'exam-without-surgery',
      'surgery-without-exam',
      'word-unknown',
      'incision-axis-missing',
      'lens-power-biometry',
      'lens-axis-missing',
      'lens-axis-unseen',
      'label-similar',
      'axial-length-sides',
      'sides-copied',
      'keratometry-sides',
      'keratometry-carried-forward',
      'keratometry-exchanged',
      'fellow-eye-fits',
      'exam-before-surgery',
      'exam-label',
      'corrected-worse',
      'refraction-sign-slip',
      'refraction-surprise',
      'cylinder-notation',
      'refraction-grid',
      'acuity-worse-after',
      'refraction-acuity',
      'refraction-equivalent',
      'endothelium-rises',
    ];
    const noted = ['same-key-equal', 'lens-power-step', 'keratometry-meridians', 'exam-late', 'second-operation'];
    /** Some values of these are impossible, others unusual. */
    const both = ['sphere-range', 'age-range', 'prediction-far'];
    const severities = new Map<string, Set<string>>();
    for (const { rule, severity } of found) severities.set(rule, (severities.get(rule) ?? new Set()).add(severity));
    for (const [rule, told] of severities) {
      const one = asked.includes(rule) ? ['query'] : noted.includes(rule) ? ['note'] : ['set aside'];
      expect([rule, [...told].sort()]).toEqual([rule, both.includes(rule) ? ['query', 'set aside'] : one]);
    }
  });
});

// A file before its slips, with one habit in it.
describe('a habit of a whole file', () => {
  const sheets = faultlessSheets(makeEyes(SEED));
  const planned = planFrom(auditText());
  if ('faults' in planned) throw new RangeError('audit.yaml of the sample has faults');

  it.each(HABITS)('$rule: $habit', async (habit) => {
    const files = filesOf(sheets.map((sheet) => (sheet.file === habit.file ? habitual(sheet, habit) : sheet)));
    const all = await audited(files, planned.plan);
    const doubts = allFindings(all.findings).filter(({ severity }) => severity !== 'note');
    expect(doubts).toMatchObject([{ rule: habit.rule, column: habit.column, row: 0, eye: -1 }]);
    expect(all.raw[doubts[0]?.source ?? -1]?.file).toBe(habit.file);
  });
});

// Usual limits of ../shared/spec/2-data.md, looked for in the files by csv-parse and not by the project.
it('lengths outside 21.2 to 26.6 mm are noted', () => {
  const sheet = committedExport('biometry.csv');
  const length = (row: number): number => Number(sheet.cell(row, 'AL'));
  const slips = SLIPS.filter(({ rule }) => rule === 'axial-length-range').map(({ row }) => row);
  const rows = sheet.numbers.filter((row) => (length(row) < 21.2 || length(row) > 26.6) && !slips.includes(row));
  expect(rows.length).toBeGreaterThan(0);
  const noted = findings.filter(({ rule, severity }) => rule === 'axial-length-range' && severity === 'note');
  expect(noted.map((one) => [fileOf(one), one.row])).toEqual(rows.map((row) => ['biometry.csv', row]));
});
