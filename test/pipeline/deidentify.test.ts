import { statSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Reply } from '../../pipeline/commands/reply.js';
import { headerIdentifier } from '../../src/intake/identifier-header.js';
import { valueIdentifier } from '../../src/intake/identifiers.js';
import { cases, daysBetween, files, german, persons, secrets } from '../deidentify/clinic.js';
import { type Folder, newFolder, run } from '../deidentify/folder.js';

type Rows = readonly Readonly<Record<string, string>>[];

const names = Object.keys(files);
let folder: Folder;
let reply: Reply;

beforeAll(async () => {
  folder = newFolder();
  for (const [name, bytes] of Object.entries(files)) folder.put(name, bytes);
  reply = await run(folder, names);
});
afterAll(() => folder.remove());

/** A copy, read by csv-parse and not by the project. */
function copy(name: string, delimiter: string, below = 'copies'): Rows {
  const text = folder.filesBelow(below).get(name);
  return parse(text as Buffer, { bom: true, columns: true, delimiter });
}

/** Record number → code, from the book. */
function codes(book = 'clinic/codes.csv'): ReadonlyMap<string, string> {
  const rows: Rows = parse(
    folder.filesBelow(book.split('/')[0] as string).get(book.split('/')[1] as string) as Buffer,
    { columns: true },
  );
  return new Map(rows.map(({ code = '', written = '' }) => [written, code]));
}

/**
 * Places of secrets in bytes, as text in the encodings that are written here or could have slipped through. The digests of
 * the copies are passed over: codes are random and so are they, and four digits of a record number stand in one by chance.
 */
function leaks(bytes: Buffer): readonly string[] {
  const digest = /\b[0-9a-f]{64}\b/g;
  const texts = [bytes.toString('utf8'), bytes.toString('latin1'), bytes.toString('utf16le')].map((text) =>
    text.replace(digest, ''),
  );
  return secrets.filter((secret) => texts.some((text) => text.toLowerCase().includes(secret.toLowerCase())));
}

describe('what leaves the clinic', () => {
  it('is a copy of each file, a record, and a list of both', () => {
    expect(reply.screen).toMatch(/^De-identified 3 files/);
    expect([...folder.filesBelow('copies').keys()].sort()).toEqual([
      'deidentification-record.md',
      'deidentification.json',
      'file-2.csv',
      'keratometer.csv',
      'theatre.csv',
    ]);
  });

  it('holds no name, number, date, address or remark of anybody, in any byte', () => {
    for (const [name, bytes] of folder.filesBelow('copies')) expect(leaks(bytes), name).toEqual([]);
  });

  it('neither do the screen and what programs are told', () => {
    expect(leaks(Buffer.from(reply.screen))).toEqual([]);
    expect(leaks(Buffer.from(JSON.stringify(reply.data)))).toEqual([]);
  });

  it('would be found: the same search finds every secret in the exports', () => {
    const all = Buffer.concat(Object.values(files));
    const texts = [all.toString('latin1'), files['Quillfeather_lane.csv'].toString('utf16le')].join('\n').toLowerCase();
    const unfindable = secrets.filter((secret) => !texts.includes(secret.toLowerCase()));
    // Dates are each written in the form of one file; the others are looked for all the same.
    expect(unfindable.every((secret) => /^[\d./-]+$/.test(secret))).toBe(true);
    expect(unfindable.length).toBeLessThan(secrets.length / 2);
  });

  it('passes the gate: no header and no column of the copies is one that stops an audit', () => {
    for (const [name, delimiter] of [
      ['theatre.csv', ';'],
      ['file-2.csv', '\t'],
      ['keratometer.csv', ','],
    ] as const) {
      const rows = copy(name, delimiter);
      for (const header of Object.keys(rows[0] ?? {})) {
        expect(headerIdentifier(header), header).toBeUndefined();
        const words = rows.map((row) => row[header] ?? '');
        expect(valueIdentifier({ words, field: header === 'patient' ? 'patient' : undefined }), header).toBeUndefined();
      }
    }
  });

  it('keeps the columns that an audit reads, in their places, with the file’s own delimiter and decimal mark', () => {
    const rows = copy('theatre.csv', ';');
    expect(Object.keys(rows[0] ?? {})).toEqual([
      'patient',
      'age',
      'Side',
      'surgery_year',
      'surgery_order',
      'surgeon',
      'Method',
      'IOL',
      'Power',
      'Predicted',
      'Compl',
      'Comorbidity',
      'Site',
      'Größe',
    ]);
    expect(rows).toHaveLength(cases.length);
    expect(rows.map(({ Power }) => Power)).toEqual(expect.arrayContaining(['18,5', '25,5']));
    expect(Object.keys(copy('file-2.csv', '\t')[0] ?? {})).toEqual([
      'patient',
      'age',
      'Eye',
      'days',
      'exam_year',
      'Sph',
      'Cyl',
      'Ax',
      'UCVA',
      'BCVA',
    ]);
    expect(Object.keys(copy('keratometer.csv', ',')[0] ?? {})).toEqual([
      'patient',
      'Eye',
      'days',
      'R1',
      'A1',
      'R2',
      'A2',
    ]);
  });
});

describe('a cell that does not belong', () => {
  it('is replaced, never blanked, and the cells beside it stay', () => {
    const rows = copy('file-2.csv', '\t');
    const replaced = rows.filter((row) => Object.values(row).includes('removed'));
    expect(
      replaced.map(({ Sph, Cyl, Ax, BCVA }) => [Sph, Cyl, Ax, BCVA].filter((cell) => cell === 'removed').length),
    ).toEqual([1, 1, 1, 1]);
    expect(copy('theatre.csv', ';').filter(({ Power }) => Power === 'removed')).toHaveLength(1);
  });

  it('among codes leaves the codes beside it', () => {
    const found = copy('theatre.csv', ';')
      .map(({ Compl }) => Compl)
      .filter((cell) => cell !== '');
    expect(found.sort()).toEqual(['PCR,removed', 'VL']);
  });
});

describe('codes', () => {
  it('are random, one a patient, the same in every file whatever blanks stand in the number', () => {
    const known = codes();
    for (const { number } of persons) expect(known.get(number), number).toMatch(/^P[2-9B-Z]{7}$/);
    const inBook = new Set(persons.map(({ number }) => known.get(number)));
    expect(inBook.size).toBe(persons.length);
    for (const [name, delimiter] of [
      ['theatre.csv', ';'],
      ['keratometer.csv', ','],
    ] as const) {
      expect(new Set(copy(name, delimiter).map(({ patient }) => patient)), name).toEqual(inBook);
    }
  });

  it('stand for surgeons too, who are called by their names', () => {
    const found = new Set(copy('theatre.csv', ';').map(({ surgeon }) => surgeon));
    expect(found).toEqual(new Set([codes().get('Dr Emmeline Staveley'), codes().get('Mr Orsino Pellworth')]));
  });

  it('put the rows in another order than that of the dates', () => {
    const rows = copy('theatre.csv', ';').map(({ patient }) => patient as string);
    expect(rows).toEqual([...rows].sort());
  });

  it('are kept in a book that only its owner can read', () => {
    expect(statSync(folder.at('clinic/codes.csv')).mode & 0o777).toBe(0o600);
  });
});

describe('dates', () => {
  const codeOf = (number: string): string => codes().get(number) as string;

  // The clock of the language, which the project does not use.
  it('become days from the surgery of the eye', () => {
    const rows = copy('file-2.csv', '\t');
    for (const { person, eye, day, visits } of cases) {
      const ofEye = rows.filter(
        (row) => row.patient === codeOf(person.number) && row.Eye === (eye === 'R' ? 'OD' : 'OS'),
      );
      const found = ofEye.map((row) => row.days).filter((days) => days !== '');
      expect(found).toEqual(visits.map((visit) => String(daysBetween(day, visit))));
    }
    const before = copy('keratometer.csv', ',');
    for (const { person, eye, day, visits } of cases) {
      const found = before.find((row) => row.patient === codeOf(person.number) && row.Eye === eye);
      expect(found?.days).toBe(String(daysBetween(day, visits[0] as string)));
    }
  });

  it('of surgery become the year and the rank in it', () => {
    const ranked = copy('theatre.csv', ';').map(({ patient, Side, surgery_year, surgery_order }) => ({
      day: cases.find(({ person, eye }) => codeOf(person.number) === patient && eye === Side)?.day as string,
      surgery_year,
      order: Number(surgery_order),
    }));
    for (const year of ['2024', '2025']) {
      const ofYear = ranked.filter(({ surgery_year }) => surgery_year === year).sort((a, b) => a.order - b.order);
      expect(ofYear.map(({ order }) => order)).toEqual(ofYear.map((_, at) => at + 1));
      expect(ofYear.map(({ day }) => day)).toEqual(ofYear.map(({ day }) => day).sort());
      expect(ofYear.every(({ day }) => day.startsWith(year))).toBe(true);
    }
  });

  it('of eyes without surgery keep the year, where no other eye of the patient tells more', () => {
    const rows = copy('file-2.csv', '\t').filter(({ days }) => days === '');
    const found = rows.map(({ patient, exam_year }) => [patient, exam_year]);
    expect(found).toEqual(
      expect.arrayContaining([
        [codeOf('0099999'), '2023'],
        [codeOf(persons[1]?.number as string), ''],
      ]),
    );
    expect(found).toHaveLength(2);
    expect(reply.screen).toMatch(/2 dates belong to an eye without an operation/);
    expect(reply.screen).toMatch(/25 patients, 25 of them new, 2 surgeons\./);
  });

  it('of birth become the age at surgery in whole years, 90 and more as 90+', () => {
    const rows = copy('theatre.csv', ';');
    for (const { person, eye, day } of cases) {
      const row = rows.find(({ patient, Side }) => patient === codeOf(person.number) && Side === eye);
      const years =
        Number(day.slice(0, 4)) - Number(person.born.slice(0, 4)) - (day.slice(5) < person.born.slice(5) ? 1 : 0);
      expect(row?.age, german(person.born)).toBe(years >= 90 ? '90+' : String(years));
    }
    expect(rows.map(({ age }) => age)).toContain('90+');
  });
});

describe('the written record', () => {
  it('names every column of every file and what became of it', () => {
    const text = String(folder.filesBelow('copies').get('deidentification-record.md'));
    for (const name of ['theatre.csv', 'file-2.csv', 'keratometer.csv']) expect(text).toContain(`### ${name}`);
    expect(text).toContain('| Hospital No | patient | random code | 32 | 0 |');
    expect(text).toContain('| Op date | surgery\\_year, surgery\\_order | year of surgery | 32 | 0 |');
    expect(text).toContain('| Date of birth | age | age at surgery | 32 | 0 |');
    expect(text).toMatch(/\| Surname \| \(nothing\) \| left out: is headed like names of persons/);
    expect(text).toMatch(/\| IOL serial \| \(nothing\) \| left out: is headed like a number of a person/);
    expect(text).toMatch(/\| Ref \| \(nothing\) \| left out: holds numbers like those of records/);
    expect(text).toMatch(/\| Remarks \| \(nothing\) \| left out: holds free text/);
    expect(text).toContain('The name of the file, number 2 of those given, looked like a person’s.');
  });

  it('names the list followed, the duty that remains, and who decides about ranks', () => {
    const text = String(folder.filesBelow('copies').get('deidentification-record.md'));
    expect(text).toContain('45 CFR 164.514(b)(2)');
    for (const item of ['A', 'B', 'C', 'D, E, F, N, O', 'G to M', 'P', 'Q', 'R']) expect(text).toContain(`| ${item} |`);
    expect(text).toMatch(/decision for your data protection officer/);
    expect(text).toMatch(/duty of whoever holds the data/);
    expect(reply.screen).toMatch(/decision for your data\s+protection officer/);
  });
});
