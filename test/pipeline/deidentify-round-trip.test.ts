import { afterAll, describe, expect, it } from 'vitest';
import type { ResultRow } from '../../src/records/result.js';
import { newFolder, run } from '../deidentify/folder.js';
import { committed, committedExport } from '../sample-exports/committed.js';
import { auditOf } from '../whole/audit.js';
import { auditText, committedFiles, mainFiles } from '../whole/sample.js';

const folder = newFolder();
afterAll(() => folder.remove());
for (const file of mainFiles) folder.put(file, committed(file));

// A book that the clinic has already: codes in the order of the numbers, since bootstrap samples follow the order of codes.
const numbers = new Set(
  mainFiles.flatMap((file) => {
    const sheet = committedExport(file);
    return sheet.numbers.map((row) => sheet.row(row)[0] ?? '').filter((code) => code !== '');
  }),
);
const coded = [...numbers].sort().map((number, at) => `patient,K${String(at + 1).padStart(4, '0')},${number}`);
folder.put('clinic/codes.csv', ['kind,code,written', 'book,B23456789BCD,', ...coded, ''].join('\n'));

const reply = await run(folder, mainFiles);
const copies = Object.fromEntries(folder.filesBelow('copies'));

/** The sample's audit.yaml, mapped to the copies. */
const copiesText = auditText()
  .replace(/patient: \S+$/gm, 'patient: patient')
  .replace('surgery_date: Op date', 'surgery_year: surgery_year\n      surgery_order: surgery_order')
  .replace(/exam_date: .+$/gm, 'days: days')
  .replace(/^ {4}reading: .*$\n/gm, '');

const keyOf = ({ measure, group, statistic }: ResultRow): string => `${measure} | ${group} | ${statistic}`;
const byKey = (rows: readonly ResultRow[]): ReadonlyMap<string, ResultRow> =>
  new Map(rows.map((row) => [keyOf(row), row]));

/** An audit of the exports themselves. @param until  the export's day, by which it is judged which visits were due */
const auditUntil = (until: string) =>
  auditOf(auditText().replace('data_until: 2026-03-31', `data_until: ${until}`), committedFiles());

const dated = byKey((await auditUntil('2026-03-31')).rows);
const allDue = await auditUntil('2027-12-31');
const audit = await auditOf(copiesText, copies);
const undated = byKey(audit.rows);

/** What only a calendar can tell: months of surgery that two cohorts have in common. */
const ofCalendar = (key: string): boolean => /^overlap \| .* \| (?:overlap_)?months$/.test(key);

describe('the sample, de-identified and audited', () => {
  it('is copied without a question', () => {
    expect(reply.code).toBe(0);
    expect(Object.keys(copies).sort()).toEqual(
      [...mainFiles, 'deidentification-record.md', 'deidentification.json'].sort(),
    );
  });

  // The sample's own README: last operations in December 2025; by the end of 2027 every visit was due.
  it('gives the same rows as the exports, where every visit was due by then', () => {
    // What is followed from operation to operation needs their days; the copies keep the order within a year alone.
    const standing = allDue.rows.filter(({ measure }) => !measure.startsWith('monitoring:'));
    const expected = standing.filter((row) => !ofCalendar(keyOf(row)));
    expect(expected.length).toBeGreaterThan(6000);
    expect(standing.length - expected.length).toBe(2);
    for (const row of expected) expect(undated.get(keyOf(row)), keyOf(row)).toEqual(row);
  });

  it('counts every eye as due', () => {
    const value = (rows: typeof dated, statistic: string): number =>
      rows.get(`completeness | all | ${statistic}`)?.value as number;
    expect(value(dated, 'not_yet_due')).toBeGreaterThan(0);
    expect(value(undated, 'due')).toBe(value(dated, 'due') + value(dated, 'not_yet_due'));
    expect(value(undated, 'not_yet_due')).toBe(0);
  });

  /** Cells of each file in whose place `removed` stands: their own values no audit can read. */
  const { files } = reply.data as { files: { columns: { removed: number }[] }[] };
  const removed = files.map(({ columns }) => columns.reduce((sum, column) => sum + column.removed, 0));

  it('sets aside the same rows for the same reasons, but for rows of nothing but what was taken out', () => {
    expect(Math.max(...removed)).toBeLessThan(10);
    for (const [at, { read, used, setAside }] of audit.derived.tables.books.entries()) {
      const before = allDue.derived.tables.books[at];
      expect(read).toBe(before?.read);
      expect((before?.used as number) - used).toBeLessThanOrEqual(removed[at] as number);
      const { 'no-values': _, ...reasons } = setAside;
      expect(reasons).toEqual(before?.setAside);
    }
  });

  /** Rules that need the day of an examination, which both eyes have in common. */
  const ofDays = ['fellow-eye-fits', 'rows-passed-over'];
  const doubts = ({ findings }: typeof audit): string[] =>
    findings
      .filter(({ rule }) => !ofDays.includes(rule))
      .map(({ rule, severity, eye }) => `${severity}, eye ${eye}: ${rule}`);

  function without(all: readonly string[], others: readonly string[]): readonly string[] {
    const left = [...others];
    return all.filter((one) => {
      const at = left.indexOf(one);
      if (at >= 0) left.splice(at, 1);
      return at < 0;
    });
  }

  it('finds the same doubts; what was taken out is set aside as no number', () => {
    const gone = without(doubts(allDue), doubts(audit));
    const come = without(doubts(audit), doubts(allDue));
    for (const doubt of come) expect(doubt).toMatch(/^set aside, .*: number-unreadable$/);
    const eyes = (all: readonly string[]): readonly string[] =>
      all.map((doubt) => doubt.split(':')[0] as string).sort();
    expect(eyes(come)).toEqual(eyes(gone));
    expect(come.length).toBeLessThanOrEqual(removed.reduce((sum, cells) => sum + cells, 0));
  });
});

describe('the order of operations', () => {
  const sheet = committedExport('theatre-list.csv');
  const dayOf = (row: number): string => sheet.cell(row, 'Op date').split('/').reverse().join('-');
  const rows = String(copies['theatre-list.csv'])
    .replace('\ufeff', '')
    .trimEnd()
    .split('\n')
    .map((line) => line.split(','));
  const header = rows[0] ?? [];
  const at = (name: string): number => header.indexOf(name);
  const codeOf = new Map(coded.map((line) => [line.split(',')[2], line.split(',')[1]]));
  // An eye may be operated twice: its operations are matched in their order.
  const told = rows
    .slice(1)
    .map((cells) => ({
      key: `${cells[at('patient')]} ${cells[at('Side')]}`,
      year: cells[at('surgery_year')] as string,
      order: Number(cells[at('surgery_order')]),
    }))
    .sort((a, b) => Number(a.year) - Number(b.year) || a.order - b.order);
  const operations = sheet.numbers
    .map((row) => ({ key: `${codeOf.get(sheet.cell(row, 'Case'))} ${sheet.cell(row, 'Side')}`, day: dayOf(row) }))
    .sort((a, b) => (a.day < b.day ? -1 : 1))
    .map(({ key, day }) => {
      const [found] = told.splice(
        told.findIndex((one) => one.key === key),
        1,
      );
      return { day, year: found?.year as string, order: found?.order as number };
    });
  const years = [...new Set(operations.map(({ day }) => day.slice(0, 4)))];

  it.each(years)('runs through %s without a gap, by day', (year) => {
    const ofYear = operations.filter(({ day }) => day.startsWith(year)).sort((a, b) => a.order - b.order);
    expect(new Set(ofYear.map((one) => one.year))).toEqual(new Set([year]));
    expect(ofYear.map(({ order }) => order)).toEqual(ofYear.map((_, at) => at + 1));
    expect(ofYear.map(({ day }) => day)).toEqual(ofYear.map(({ day }) => day).sort());
  });
});
