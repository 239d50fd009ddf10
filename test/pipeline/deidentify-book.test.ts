import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { parse } from 'csv-parse/sync';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Interrupted } from '../../pipeline/commands/interrupt.js';
import { type Folder, newFolder, run } from '../deidentify/folder.js';

const surgery = (rows: readonly string[]): string => ['Patient ID,Eye,Op date,Power', ...rows, ''].join('\n');
const first = surgery(['00071,R,2024-03-01,21.5', '00072,L,2024-03-08,20.0', '00073,R,2024-03-08,22.0']);
const next = surgery(['00072,R,2025-02-03,20.5', '00074,L,2025-02-04,19.0']);

let folder: Folder;
beforeEach(() => {
  folder = newFolder();
  folder.put('first.csv', first);
  folder.put('next.csv', next);
});
afterEach(() => folder.remove());

const bookText = (name = 'clinic/codes.csv'): string => readFileSync(folder.at(name), 'utf8');
const codes = (name?: string): ReadonlyMap<string, string> => {
  const rows: Record<string, string>[] = parse(bookText(name), { columns: true });
  return new Map(rows.map(({ written = '', code = '' }) => [written, code]));
};
const left = (): readonly string[] => [...folder.filesBelow('.').keys()].sort();

describe('the code book', () => {
  it('gives the same codes next year, and new ones to new patients, behind the old lines', async () => {
    await run(folder, ['first.csv']);
    const before = bookText();
    await run(folder, ['next.csv'], { out: folder.at('copies-2025') });
    expect(bookText().startsWith(before)).toBe(true);
    expect(bookText().slice(before.length)).toMatch(/^patient,P[2-9B-Z]{7},00074\n$/);
    const rows: string[][] = parse(folder.filesBelow('copies-2025').get('next.csv') as Buffer, { bom: true });
    expect(rows.slice(1).map(([patient]) => patient)).toEqual([codes().get('00072'), codes().get('00074')].sort());
  });

  it('is another one where another file is named: no code is derived from a number', async () => {
    await run(folder, ['first.csv']);
    await run(folder, ['first.csv'], { out: folder.at('other'), codebook: folder.at('clinic/other.csv') });
    const [one, other] = [codes(), codes('clinic/other.csv')];
    for (const number of ['00071', '00072', '00073']) {
      expect(one.get(number)).toMatch(/^P/);
      expect(other.get(number)).not.toBe(one.get(number));
    }
  });

  it('is closed to everybody but its owner, new and old', async () => {
    await run(folder, ['first.csv']);
    expect(statSync(folder.at('clinic/codes.csv')).mode & 0o777).toBe(0o600);
    chmodSync(folder.at('clinic/codes.csv'), 0o644);
    await run(folder, ['first.csv']);
    expect(statSync(folder.at('clinic/codes.csv')).mode & 0o777).toBe(0o600);
  });

  it('is read as a spreadsheet saves it, with semicolons and a mark in front', async () => {
    await run(folder, ['first.csv']);
    const known = codes();
    folder.put('clinic/codes.csv', `\ufeff${bookText().replaceAll(',', ';').replaceAll('\n', '\r\n')}`);
    await run(folder, ['next.csv'], { out: folder.at('copies-2025') });
    expect(codes().get('00072')).toBe(known.get('00072'));
  });

  it('tells where a spreadsheet has dropped the zeros in front: those patients get new codes', async () => {
    await run(folder, ['first.csv']);
    folder.put('clinic/codes.csv', bookText().replaceAll(',000', ','));
    const { screen } = await run(folder, ['next.csv'], { out: folder.at('copies-2025') });
    expect(screen).toMatch(/2 numbers of patients differ from another in leading zeros alone/);
  });

  it.each([
    ['another header', 'code,name\nP2345678,1\n', /row 1, its first row is not kind, code, written/],
    ['no name of its own', 'kind,code,written\npatient,P2345678,1\n', /row 2, the row "book"/],
    ['a kind that is none', 'kind,code,written\nbook,B23456789BCD,\nnurse,P2345678,1\n', /row 3, the kind/],
    [
      'a code twice',
      'kind,code,written\nbook,B23456789BCD,\npatient,P2345678,1\npatient,P2345678,2\n',
      /row 4, .*twice/,
    ],
    [
      'a number twice',
      'kind,code,written\nbook,B23456789BCD,\npatient,P2345678,1\npatient,P2345679, 1\n',
      /row 4, .*twice/,
    ],
    [
      'a code that is the number',
      'kind,code,written\nbook,B23456789BCD,\npatient,12345,12345\n',
      /row 3, the code is none/,
    ],
    [
      'a code that the gate stops at',
      'kind,code,written\nbook,B23456789BCD,\npatient,123456789,7\n',
      /row 3, the code is none/,
    ],
    ['no number', 'kind,code,written\nbook,B23456789BCD,\npatient,P2345678,\n', /row 3, there is no number/],
    [
      'an open quotation mark',
      'kind,code,written\nbook,B23456789BCD,\npatient,P2345678,"1\n',
      /row 3, a quotation mark/,
    ],
  ])('is refused with %s, and stays as it is', async (_, text, said) => {
    folder.put('clinic/codes.csv', text);
    const { code, screen } = await run(folder, ['first.csv']);
    expect(code).toBe(2);
    expect(screen.replace(/\s+/g, ' ')).toMatch(said);
    expect(bookText()).toBe(text);
    expect(existsSync(folder.at('copies'))).toBe(false);
  });

  it('is used by one run at a time', async () => {
    folder.put('clinic/.codes.csv.lock', `${process.ppid} ${hostname()}`);
    const { code, screen } = await run(folder, ['first.csv']);
    expect(code).toBe(2);
    expect(screen).toMatch(/Another run is using the code book/);
  });
});

describe('where things go', () => {
  it.each([
    ['the code book inside the copies', { codebook: 'copies/codes.csv' }, 'book-inside'],
    ['the code book deep inside the copies', { codebook: 'copies/a/../b/codes.csv' }, 'book-inside'],
    ['the code book as the folder of the copies', { codebook: 'copies' }, 'book-inside'],
    ['a folder as the code book', { codebook: 'clinic' }, 'book-is-folder'],
    ['a code book in a folder that is not there', { codebook: 'nowhere/codes.csv' }, 'book-folder-missing'],
    ['an export as the code book', { codebook: 'first.csv' }, 'book-is-export'],
    ['a file as the folder of the copies', { out: 'next.csv' }, 'out-is-file'],
    ['the folder of the exports as that of the copies', { out: '.' }, 'export-inside'],
  ])(
    '%s is refused',
    async (_, { codebook = 'clinic/codes.csv', out = 'copies' }: { codebook?: string; out?: string }, reason) => {
      // The last case puts the book outside, so that it is the export that is found inside.
      const outside = newFolder();
      const book = out === '.' ? outside.at('codes.csv') : folder.at(codebook);
      const { code, data } = await run(folder, ['first.csv'], { codebook: book, out: folder.at(out) });
      outside.remove();
      expect([code, data]).toEqual([2, { outcome: 'not started', reason }]);
    },
  );

  it('the code book inside the copies is refused by whatever link it is called', async () => {
    mkdirSync(folder.at('copies'));
    symlinkSync(folder.at('copies'), folder.at('link'));
    const { data } = await run(folder, ['first.csv'], { codebook: folder.at('link/codes.csv') });
    expect(data).toEqual({ outcome: 'not started', reason: 'book-inside' });
  });

  it('an empty folder is used, one with anybody’s files is not', async () => {
    mkdirSync(folder.at('copies'));
    expect((await run(folder, ['first.csv'])).code).toBe(0);
    folder.put('others/notes.txt', 'mine');
    const { code, data } = await run(folder, ['first.csv'], { out: folder.at('others') });
    expect([code, data]).toEqual([2, { outcome: 'not started', reason: 'out-foreign' }]);
    expect(folder.filesBelow('others').size).toBe(1);
  });
});

describe('former copies', () => {
  beforeEach(() => run(folder, ['first.csv']));

  it('are replaced by copies of the same files with the same book, and that is said', async () => {
    folder.put('first.csv', first.replace('21.5', '23.5'));
    const { code, screen } = await run(folder, ['first.csv']);
    expect(code).toBe(0);
    expect(screen.replace(/\s+/g, ' ')).toContain('The former copies, made with the same code book, were replaced.');
    expect(String(folder.filesBelow('copies').get('first.csv'))).toContain('23.5');
    expect(left().filter((name) => name.includes('.new') || name.includes('.old') || name.includes('.lock'))).toEqual(
      [],
    );
  });

  it.each([
    ['another book', { codebook: 'clinic/other.csv' }, ['first.csv'], 'out-other-book'],
    ['other files', {}, ['next.csv'], 'out-other-names'],
    ['more files', {}, ['first.csv', 'next.csv'], 'out-other-names'],
  ] as const)('stay where the run has %s', async (_, { codebook }: { codebook?: string }, files, reason) => {
    const before = folder.filesBelow('copies');
    const bookBefore = bookText();
    const more = codebook === undefined ? {} : { codebook: folder.at(codebook) };
    const { code, data } = await run(folder, files, more);
    expect([code, data]).toEqual([2, { outcome: 'not started', reason }]);
    expect(folder.filesBelow('copies')).toEqual(before);
    expect(bookText()).toBe(bookBefore);
  });

  it.each([
    ['changed', () => writeFileSync(folder.at('copies/first.csv'), 'mine')],
    ['taken away', () => rmSync(folder.at('copies/first.csv'))],
    ['added', () => writeFileSync(folder.at('copies/mine.csv'), 'mine')],
    ['the list of them spoilt', () => writeFileSync(folder.at('copies/deidentification.json'), '{"format":1}')],
  ])('stay where a file was %s', async (_, edit) => {
    edit();
    const before = folder.filesBelow('copies');
    const { code, data } = await run(folder, ['first.csv']);
    expect([code, data]).toEqual([2, { outcome: 'not started', reason: 'out-foreign' }]);
    expect(folder.filesBelow('copies')).toEqual(before);
  });
});

describe('all or nothing', () => {
  it('an interrupted run leaves exports, book and copies as they were', async () => {
    await run(folder, ['first.csv']);
    const before = folder.filesBelow('.');
    folder.put('first.csv', first.replace('00073', '00079'));
    const controller = new AbortController();
    controller.abort();
    await expect(run(folder, ['first.csv'], {}, controller.signal)).rejects.toThrow(Interrupted);
    folder.put('first.csv', first);
    expect(folder.filesBelow('.')).toEqual(before);
  });

  it('a book that cannot be written leaves no copy', async () => {
    // A folder stands where the book is written aside.
    folder.put('clinic/codes.csv.new/in-the-way', '');
    await expect(run(folder, ['first.csv'])).rejects.toThrow();
    expect(left()).toEqual(['clinic/codes.csv.new/in-the-way', 'first.csv', 'next.csv']);
  });
});
