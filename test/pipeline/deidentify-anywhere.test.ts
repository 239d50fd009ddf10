import { parse } from 'csv-parse/sync';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { type Folder, newFolder, run } from '../deidentify/folder.js';
import { committed } from '../sample-exports/committed.js';

let folder: Folder;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => folder.remove());

/** What people write into a cell that is meant for something else; every name and number is invented. */
const strays = [
  'Quillfeather',
  'Quillfeather, Aldara',
  'see Mrs Quillfeather',
  'AQuillfeather (daughter)',
  '12.05.1948',
  '12/05/48',
  '1948-05-12',
  '12 May 1948',
  '05/1948',
  '07700 900123',
  '+44 (0)7700 900123',
  '01632-960123',
  'a.quill@clinic-mail.example',
  'www.quill.example',
  '943 476 5919',
  '123-45-6789',
  'MRN 0004711',
  '0004711',
  'QX3 7ZZ, 4 Larkspurre Crescent',
  '=HYPERLINK("quill.example")',
];

/** A stray's telling part; nothing that a random patient code could hold by chance. */
const telling = /quill|aldara|[-./]1948|\/48|12 may|07700|900 123|-960123|943 476|123-45|0004711|\b7ZZ|larkspurre/i;

// Every stray goes into every column but the patient's, each into a row of its own.
it.each(['theatre-list.csv', 'lane-north.csv', 'lane-south.csv', 'biometry.csv'])(
  'a stray text in any column of %s is in no copy',
  async (name) => {
    const isGerman = name === 'lane-north.csv';
    const delimiter = name === 'theatre-list.csv' || name === 'lane-south.csv' ? ',' : ';';
    const sheet: string[][] = parse(committed(name).toString(isGerman ? 'latin1' : 'utf8'), {
      bom: true,
      delimiter,
      relax_column_count: true,
    });
    const [header = []] = sheet;
    strays.forEach((stray, at) => {
      for (let column = 1; column < header.length; column++) {
        const row = sheet[7 + ((strays.length * column + at) % (sheet.length - 7))];
        if (row?.length === header.length) row[column] = stray;
      }
    });
    const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;
    folder.put(name, sheet.map((row) => row.map(quoted).join(delimiter)).join('\n'));
    folder.put('list.csv', committed('theatre-list.csv'));
    const { code, screen, data } = await run(folder, name === 'theatre-list.csv' ? [name] : [name, 'list.csv'], {
      dateOrder: 'day-first',
    });
    expect(code).toBe(0);
    for (const [file, bytes] of folder.filesBelow('copies')) {
      const found = String(bytes)
        .split('\n')
        .filter((line) => telling.test(line) && !line.includes('sha256'));
      expect(found, file).toEqual([]);
    }
    expect(`${screen}${JSON.stringify(data)}`).not.toMatch(telling);
  },
);
