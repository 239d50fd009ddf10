import { describe, expect, it } from 'vitest';
import { SLIPS } from '../../sample-exports/generator/slips.js';
import type { Finding } from '../../src/records/finding.js';
import { committedExport } from '../sample-exports/committed.js';
import { auditOf } from './audit.js';
import { auditText, committedFiles } from './sample.js';

const { findings, raw } = await auditOf(auditText(), committedFiles());
const fileOf = ({ source }: Finding): string => raw[source]?.file ?? '';

/** Plausible, but asked about or noted: not what a slip is. */
const isUnusual = ({ rule, severity }: Finding): boolean => rule.endsWith('-range') && severity !== 'set aside';
/** The two lines that the keratometer writes above its header. */
const isNotice = ({ rule }: Finding): boolean => rule === 'rows-passed-over';

const place = (one: { rule: string; file: string; row: number }): string => `${one.file}, row ${one.row}: ${one.rule}`;

describe('the rules', () => {
  const told = findings.filter((finding) => !isUnusual(finding) && !isNotice(finding));

  it('fire at every slip, and nowhere else', () => {
    const at = told.map((finding) => place({ ...finding, file: fileOf(finding) }));
    expect(at.sort()).toEqual(SLIPS.map(place).sort());
  });

  // Rules about a whole row name no column.
  const wholeRow = ['same-key-equal', 'exam-without-surgery', 'surgery-without-exam'];
  it.each(SLIPS.filter(({ rule }) => !wholeRow.includes(rule)))('$rule quotes $file, row $row, $column', (slip) => {
    const found = told.find((one) => one.rule === slip.rule && one.row === slip.row && fileOf(one) === slip.file);
    expect(found?.column).toBe(slip.column);
    expect(found?.written ?? '').toBe(slip.value);
  });

  it('set aside what is impossible, ask about what is doubtful, note what is harmless', () => {
    const severities = new Map(told.map(({ rule, severity }) => [rule, severity]));
    expect(Object.fromEntries(severities)).toEqual({
      'sphere-range': 'set aside',
      'cylinder-range': 'set aside',
      'axis-range': 'set aside',
      'keratometry-range': 'set aside',
      'axial-length-range': 'set aside',
      'acuity-range': 'set aside',
      'axis-missing': 'query',
      'same-key-equal': 'note',
      'same-key-differs': 'set aside',
      'patient-missing': 'set aside',
      'eye-missing': 'set aside',
      'eye-both': 'set aside',
      'exam-without-surgery': 'query',
      'surgery-without-exam': 'query',
      'number-unreadable': 'set aside',
      'acuity-unreadable': 'set aside',
      'date-unreadable': 'set aside',
      'word-unknown': 'query',
    });
  });
});

// Usual limits of ../shared/spec/2-data.md, looked for in the files by csv-parse and not by the project.
describe('what is unusual is told apart', () => {
  const unusual = (file: string, column: string, [low, high]: readonly [number, number]): readonly string[] => {
    const sheet = committedExport(file);
    const numberIn = (row: number): number => Number(sheet.cell(row, column).replace(',', '.'));
    const slips = SLIPS.filter((slip) => slip.file === file && slip.column === column).map(({ row }) => row);
    const rows = sheet.numbers.filter((row) => (numberIn(row) < low || numberIn(row) > high) && !slips.includes(row));
    return rows.map((row) => `${file}, row ${row}`);
  };
  const toldBy = (rule: string, severity: Finding['severity']): readonly string[] =>
    findings
      .filter((one) => one.rule === rule && one.severity === severity)
      .map((one) => `${fileOf(one)}, row ${one.row}`);

  it('spheres outside −12 to 8 D are asked about', () => {
    const rows = [...unusual('lane-north.csv', 'Sphäre', [-12, 8]), ...unusual('lane-south.csv', 'sph', [-12, 8])];
    expect(rows.length).toBeGreaterThan(0);
    expect(toldBy('sphere-range', 'query')).toEqual(rows);
  });

  it('lengths outside 21.2 to 26.6 mm are noted', () => {
    const rows = unusual('biometry.csv', 'AL', [21.2, 26.6]);
    expect(rows.length).toBeGreaterThan(0);
    expect(toldBy('axial-length-range', 'note')).toEqual(rows);
  });
});
