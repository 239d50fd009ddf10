import { PassThrough } from 'node:stream';
import { parse } from 'csv-parse/sync';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { deidentify } from '../../pipeline/commands/deidentify.js';
import { type Folder, newFolder, run } from '../deidentify/folder.js';

let folder: Folder;
beforeEach(() => {
  folder = newFolder();
});
afterEach(() => folder.remove());

const plain = (screen: string): string => screen.replace(/\s+/g, ' ');
const text = (lines: readonly string[]): string => [...lines, ''].join('\n');
const copied = (name: string): string[][] =>
  parse(folder.filesBelow('copies').get(name) as Buffer, { bom: true, relax_column_count: true });
const column = (name: string, header: string): readonly (string | undefined)[] => {
  const [headers = [], ...rows] = copied(name);
  return rows.map((row) => row[headers.indexOf(header)]);
};

/** Twelve invented patients: a study number, a hospital number that some share, a code of the ward. */
const patients = Array.from({ length: 12 }, (_, at) => ({ study: `T${200 + at}`, hospital: `00${5310 + 7 * at}` }));
const day = (at: number): string => `2024-03-${String(1 + at).padStart(2, '0')}`;

describe('the column of the patient', () => {
  it('is the one whose numbers other files have too', async () => {
    folder.put(
      'list.csv',
      text(['Case no,Hospital No,Eye,Op date', ...patients.map((p, at) => `${1000 + at},${p.hospital},R,${day(at)}`)]),
    );
    folder.put(
      'lane.csv',
      text(['MRN,Eye,Exam date,Sph', ...patients.map((p, at) => `${p.hospital},R,${day(at + 10)},-0.50`)]),
    );
    const { code, screen } = await run(folder, ['list.csv', 'lane.csv']);
    expect(code).toBe(0);
    expect(screen).toContain('"Hospital No" → patient');
    expect(plain(screen)).toContain('"Case no" is another number of the patient');
    expect(column('lane.csv', 'days')).toEqual(patients.map(() => '10'));
  });

  it('is either of two that go together one to one', async () => {
    folder.put(
      'list.csv',
      text(['Hospital No,MRN,Eye,Op date', ...patients.map((p, at) => `${p.hospital},${p.study},R,${day(at)}`)]),
    );
    expect((await run(folder, ['list.csv'])).screen).toContain('"Hospital No" → patient');
  });

  const twoColumns = text([
    'Hospital No,MRN,Eye,Op date',
    ...patients.map((p, at) => `${p.hospital},${patients[at >> 1]?.study},R,${day(at)}`),
  ]);

  it('stops the work where two look alike and do not go together, and names them', async () => {
    folder.put('list.csv', twoColumns);
    const { code, screen } = await run(folder, ['list.csv']);
    expect(code).toBe(1);
    expect(plain(screen)).toContain(
      'list.csv: which column holds the patient’s number is not clear: "Hospital No", "MRN"',
    );
    expect(screen).toContain('--patient "HEADER"');
    expect(folder.filesBelow('.').has('clinic/codes.csv')).toBe(false);
  });

  it('is the one that is named, or with --yes the first', async () => {
    folder.put('list.csv', twoColumns);
    expect((await run(folder, ['list.csv'], { patient: [' mrn '] })).screen).toContain('"MRN" → patient');
    const likelier = await run(folder, ['list.csv'], { yes: true, out: folder.at('other') });
    expect(likelier.screen).toContain('"Hospital No" → patient');
  });

  it('is asked for at a terminal', async () => {
    folder.put('list.csv', twoColumns);
    const [input, output] = [new PassThrough(), new PassThrough()];
    let asked = '';
    output.on('data', (piece) => (asked += piece));
    input.write('MRN\n');
    const { signal } = new AbortController();
    const request = {
      files: [folder.at('list.csv')],
      codebook: folder.at('codes.csv'),
      out: folder.at('copies'),
      patient: [],
      surgeryDate: [],
      keep: [],
      order: true,
      yes: false,
    };
    const { screen } = await deidentify(request, { input, output, signal }, () => {}, signal);
    expect(plain(asked)).toContain(
      '1 of 1 list.csv: two columns may hold the patient’s number. Hospital No 12 different',
    );
    expect(screen).toContain('"MRN" → patient');
  });

  it('is found by its numbers where the header does not say so, but not taken unasked', async () => {
    folder.put('list.csv', text(['Hospital No,Eye,Op date', ...patients.map((p, at) => `${p.hospital},R,${day(at)}`)]));
    folder.put(
      'lane.csv',
      text(['Xyz,Eye,Exam date,Sph', ...patients.map((p, at) => `${p.hospital},R,${day(at + 10)},-0.50`)]),
    );
    const { code, screen } = await run(folder, ['list.csv', 'lane.csv']);
    expect([code, plain(screen)]).toEqual([
      1,
      expect.stringContaining('lane.csv: which column holds the patient’s number is not clear: "Xyz"'),
    ]);
    expect((await run(folder, ['list.csv', 'lane.csv'], { yes: true })).screen).toContain('"Xyz" → patient');
  });

  it('stops the work where there is none', async () => {
    folder.put('list.csv', text(['Eye,Op date,Power', 'R,2024-03-01,21.5', 'L,2024-03-02,20.0']));
    const { code, screen } = await run(folder, ['list.csv']);
    expect([code, plain(screen)]).toEqual([
      1,
      expect.stringContaining('list.csv: no column is known to hold the patient’s number'),
    ]);
  });

  it('may hold names, which is told; and files without a patient in common are told', async () => {
    folder.put(
      'list.csv',
      text(['Patient,Eye,Op date', 'Quillfeather Anna,R,2024-03-01', 'Fernsby Bert,L,2024-03-02']),
    );
    folder.put('lane.csv', text(['Patient,Eye,Exam date,Sph', 'Galloway Carl,R,2024-04-01,1.00']));
    const { code, screen } = await run(folder, ['list.csv', 'lane.csv']);
    expect(code).toBe(0);
    expect(plain(screen)).toContain('Patients are told apart by names');
    expect(plain(screen)).toContain('lane.csv has no patient in common with the other files');
  });
});

describe('dates', () => {
  const open = text(['Patient ID,Eye,Op date', 'A1,R,05/06/2024', 'A2,R,07/08/2024']);

  it('that may be read both ways stop the work, --yes or not, until the order is named', async () => {
    folder.put('list.csv', open);
    for (const yes of [false, true]) {
      const { code, screen } = await run(folder, ['list.csv'], { yes });
      expect([code, screen]).toEqual([1, expect.stringContaining('--date-order day-first')]);
    }
    expect((await run(folder, ['list.csv'], { dateOrder: 'day-first' })).code).toBe(0);
  });

  it('of birth tell the order of the others', async () => {
    folder.put(
      'list.csv',
      text(['Patient ID,DOB,Eye,Op date', 'A1,13/05/1948,R,05/06/2024', 'A2,28/02/1950,R,07/08/2024']),
    );
    expect((await run(folder, ['list.csv'])).code).toBe(0);
    // Born on 13 May 1948, operated on 5 June 2024: 76. Born on 28 February 1950, operated on 7 August 2024: 74.
    expect([...column('list.csv', 'age')].sort()).toEqual(['74', '76']);
  });

  it('of two digits are years of this century, but births lie before the operation', async () => {
    folder.put(
      'list.csv',
      text([
        'Patient ID,Born,Eye,Op date',
        'A1,13.05.48,R,25.06.24',
        'A2,28.02.50,R,27.08.24',
        'A3,01.12.51,L,28.08.24',
      ]),
    );
    expect((await run(folder, ['list.csv'])).code).toBe(0);
    expect([...column('list.csv', 'age')].sort()).toEqual(['72', '74', '76']);
  });

  it('that contradict each other stop the work', async () => {
    folder.put('list.csv', text(['Patient ID,Eye,Op date', 'A1,R,13/06/2024', 'A2,R,07/18/2024']));
    const { code, screen } = await run(folder, ['list.csv']);
    expect([code, screen]).toEqual([1, expect.stringContaining('no order of day, month and year')]);
    expect(screen).not.toMatch(/2024/);
    const named = await run(folder, ['list.csv'], { dateOrder: 'day-first' });
    expect(plain(named.screen)).toContain('1 cell could not be shown to be harmless');
    expect([...column('list.csv', 'surgery_year')].sort()).toEqual(['2024', 'removed']);
  });

  it('without one of surgery stop the work, until it is named', async () => {
    folder.put(
      'list.csv',
      text(['Patient ID,Eye,Termin A,Seen on', 'A1,R,2024-03-01,2024-03-31', 'A2,R,2024-03-02,2024-04-02']),
    );
    const { code, screen } = await run(folder, ['list.csv']);
    expect([code, plain(screen)]).toEqual([1, expect.stringContaining('("Termin A", "Seen on")')]);
    expect((await run(folder, ['list.csv'], { surgeryDate: ['Termin A'] })).code).toBe(0);
    expect([...column('list.csv', 'days')].sort()).toEqual(['30', '31']);
  });

  it('without one of surgery become years with --yes', async () => {
    folder.put('lane.csv', text(['Patient ID,Eye,Seen on,Sph', 'A1,R,2024-03-31,0.25', 'A2,R,2025-04-02,0.50']));
    const { code, screen } = await run(folder, ['lane.csv'], { yes: true });
    expect(code).toBe(0);
    expect([...column('lane.csv', 'exam_year')].sort()).toEqual(['2024', '2025']);
    expect(column('lane.csv', 'days')).toEqual(['', '']);
    expect(plain(screen)).toContain('No file tells of an operation.');
  });

  it('of birth in a cell of surgery or of a visit are not counted from: the days would tell them', async () => {
    folder.put('list.csv', text(['Patient ID,Eye,Op date', 'A1,R,1948-05-12', 'A2,R,2024-03-02', 'A3,R,2024-03-04']));
    folder.put(
      'lane.csv',
      text(['Patient ID,Eye,Exam date,Sph', 'A1,R,2024-03-31,0.25', 'A2,R,1948-05-12,0.50', 'A3,R,2024-04-04,0.50']),
    );
    await run(folder, ['list.csv', 'lane.csv']);
    expect([...column('list.csv', 'surgery_year')].sort()).toEqual(['2024', '2024', 'removed']);
    expect([...column('lane.csv', 'days')].sort()).toEqual(['', '31', 'removed']);
  });

  it('are counted from the first lens operation where an eye has more than one', async () => {
    folder.put(
      'list.csv',
      text([
        'Patient ID,Eye,Op date,Procedure',
        'A1,R,2024-02-01,reposition',
        'A1,R,2024-03-01,lens',
        'A1,R,2025-03-01,lens',
      ]),
    );
    folder.put('lane.csv', text(['Patient ID,Eye,Exam date,Sph', 'A1,R,2024-03-31,0.25']));
    const { screen } = await run(folder, ['list.csv', 'lane.csv']);
    expect(column('lane.csv', 'days')).toEqual(['30']);
    expect(plain(screen)).toContain('1 eye has more than one lens operation: days count from the first.');
    expect(
      copied('list.csv')
        .slice(1)
        .map((row) => row.slice(2, 4)),
    ).toEqual([
      ['2024', '1'],
      ['2024', '2'],
      ['2025', '1'],
    ]);
  });

  it('lose their rank with --no-order', async () => {
    folder.put('list.csv', text(['Patient ID,Eye,Op date', 'A1,R,2024-03-01', 'A2,R,2024-03-02']));
    const { screen } = await run(folder, ['list.csv'], { order: false });
    expect(copied('list.csv')[0]).toEqual(['patient', 'Eye', 'surgery_year']);
    expect(screen).not.toContain('data protection officer');
    expect(String(folder.filesBelow('copies').get('deidentification-record.md'))).toContain('`--no-order`');
  });

  it('of both eyes in one row become days from each eye’s own surgery', async () => {
    const header = 'Patient ID,OD surgery date,OS surgery date,Visit date,OD sph,OS sph';
    folder.put(
      'wide.csv',
      text([header, 'A1,2024-03-01,2024-03-15,2024-04-01,0.25,0.50', 'A2,2024-05-01,,2024-06-01,0.00,']),
    );
    expect((await run(folder, ['wide.csv'])).code).toBe(0);
    const days = (side: string): readonly (string | undefined)[] => [...column('wide.csv', `${side} days`)].sort();
    // March has 31 days: 1 March to 1 April, 15 March to 1 April, 1 May to 1 June.
    expect([days('right'), days('left')]).toEqual([
      ['31', '31'],
      ['', '17'],
    ]);
    expect(copied('wide.csv')[0]?.slice(1, 5)).toEqual([
      'right surgery_year',
      'right surgery_order',
      'left surgery_year',
      'left surgery_order',
    ]);
  });

  it('of several visits in a row are told apart', async () => {
    const header = 'Patient ID,Eye,Op date,m1 date,m1 sph,m3 date,m3 sph,Admitted';
    folder.put('wide.csv', text([header, 'A1,R,2024-03-01,2024-04-01,0.25,2024-06-01,0.50,2024-02-29']));
    expect((await run(folder, ['wide.csv'])).code).toBe(0);
    const [headers = [], row = []] = copied('wide.csv');
    expect(headers).toEqual([
      'patient',
      'Eye',
      'surgery_year',
      'surgery_order',
      '1 month days',
      'm1 sph',
      '3 months days',
      'm3 sph',
      'Admitted days',
    ]);
    // 2024 is a leap year: 29 February is the day before 1 March.
    expect(row.slice(2)).toEqual(['2024', '1', '31', '0.25', '92', '0.50', '-1']);
  });
});

describe('text that was read through', () => {
  const list = text([
    'Patient ID,Surname,Eye,Op date,Remarks',
    'A1,Quillfeather,R,2024-03-01,soft lens',
    'A2,Fernsby,L,2024-03-02,daughter of Mrs Quillfeather helps with the drops every evening at home',
    'A3,Galloway,L,2024-03-03,seen again on 3.4.2025',
    'A4,Crabtree,L,2024-03-04,"ring 01632 960 123, or crab@mail.example"',
  ]);

  it('is kept when it is declared, but for what still identifies', async () => {
    folder.put('list.csv', list);
    await run(folder, ['list.csv'], { keep: ['remarks'] });
    expect([...column('list.csv', 'Remarks')].sort()).toEqual(['removed', 'removed', 'removed', 'soft lens']);
  });

  it('has no copy otherwise', async () => {
    folder.put('list.csv', list);
    const { screen } = await run(folder, ['list.csv']);
    expect(copied('list.csv')[0]).not.toContain('Remarks');
    expect(plain(screen)).toContain('"Remarks" holds free text');
  });

  it('cannot be a column that identifies persons, nor one that is not there', async () => {
    folder.put('list.csv', list);
    const identifying = await run(folder, ['list.csv'], { keep: ['Surname'] });
    expect([identifying.code, plain(identifying.screen)]).toEqual([
      2,
      expect.stringContaining('--keep "Surname": the column identifies persons'),
    ]);
    const absent = await run(folder, ['list.csv'], { keep: ['Remarcs'] });
    expect([absent.code, plain(absent.screen)]).toEqual([
      2,
      expect.stringContaining('no file has a column "Remarcs"; nearest is "Remarks"'),
    ]);
  });
});

describe('columns whose headers say nothing', () => {
  const rows = Array.from({ length: 24 }, (_, at) => ({
    patient: `A${at >> 1}`,
    initials: `${'KLMNPQRSTVWX'[at >> 1]}Z`,
    dense: at % 3 === 0 ? 'Y' : 'N',
    grade: String(at % 4),
    month: `${String(1 + (at % 12)).padStart(2, '0')}.2024`,
    zip: String(8001 + (at % 5)),
    born: String(1940 + (at % 20)),
    seen: '2024',
    referrer: at % 2 === 0 ? 'Quillfeather' : 'Fernsby',
    time: '08:15',
  }));
  const headers = Object.keys(rows[0] ?? {})
    .slice(1)
    .map((_, at) => `Xq${'abcdefghi'[at]}`);

  it('are copied where they hold few numbers or codes that patients share, and not otherwise', async () => {
    const lines = rows.map((row, at) => [...Object.values(row), 'RL'[at % 2], '2024-03-01'].join(','));
    folder.put('list.csv', text([['Patient ID', ...headers, 'Eye', 'Op date'].join(','), ...lines]));
    const { screen } = await run(folder, ['list.csv']);
    expect(copied('list.csv')[0]).toEqual([
      'patient',
      'Xqa',
      'Xqb',
      'Xqc',
      'Xqg',
      'Eye',
      'surgery_year',
      'surgery_order',
    ]);
    expect(new Set(column('list.csv', 'Xqa'))).toEqual(new Set(['removed']));
    expect(new Set(column('list.csv', 'Xqb'))).toEqual(new Set(['Y', 'N']));
    expect(plain(screen)).toContain('"Xqd" holds months and years, or days and months');
    for (const header of ['Xqe', 'Xqf'])
      expect(plain(screen)).toContain(`"${header}" holds numbers like those of records`);
    for (const header of ['Xqh', 'Xqi'])
      expect(plain(screen)).toContain(`"${header}" holds words whose meaning is not known`);
  });
});

describe('files that cannot be copied', () => {
  it.each([
    ['one that is not there', undefined, 2, /there is no such file/],
    ['a workbook', 'PK\x03\x04 xl/workbook.xml', 1, /this is a workbook/],
    ['one without rows', 'Patient ID,Eye,Op date\n', 1, /no header with rows below it|no row of headers/],
    [
      'one without headers',
      'Quillfeather;R;01.03.2024;21,5\nFernsby;L;02.03.2024;20,0\n',
      1,
      /no row of headers was found/,
    ],
    [
      'one with an open quotation mark',
      'Patient ID,Eye,Op date\nA1,R,2024-03-01\nA2,"R,2024-03-02\nA3,R,2024-03-03\n',
      1,
      /quotation mark/,
    ],
  ])('%s', async (_, content, expected, said) => {
    folder.put('good.csv', text(['Patient ID,Eye,Op date', 'A1,R,2024-03-01']));
    if (content !== undefined) folder.put('Quillfeather, Anna.csv', content);
    const { code, screen } = await run(folder, ['Quillfeather, Anna.csv', 'good.csv']);
    expect(code).toBe(expected);
    expect(plain(screen)).toMatch(said);
    expect(plain(screen)).toContain('file 1:');
    expect(screen).not.toMatch(/Quillfeather|Fernsby|2024/);
    expect(folder.filesBelow('.').has('clinic/codes.csv')).toBe(false);
  });
});

describe('copies', () => {
  it('of files of one name stand side by side', async () => {
    folder.put('north/lane.csv', text(['Patient ID,Eye,Op date', 'A1,R,2024-03-01']));
    folder.put('south/lane.csv', text(['Patient ID,Eye,Op date', 'A2,R,2024-03-01']));
    await run(folder, ['north/lane.csv', 'south/lane.csv']);
    expect([...folder.filesBelow('copies').keys()]).toEqual(expect.arrayContaining(['lane.csv', 'lane-2.csv']));
  });

  it('can be copied again: nothing of an earlier copy is lost', async () => {
    folder.put('list.csv', text(['Patient ID,Eye,Op date,Age', 'A1,R,2024-03-01,91', 'A2,L,2024-03-02,70']));
    folder.put('lane.csv', text(['Patient ID,Eye,Exam date,Sph', 'A1,R,2024-03-31,0.25', 'A2,L,2024-04-02,0.25']));
    await run(folder, ['list.csv', 'lane.csv']);
    const again = await run(folder, ['copies/list.csv', 'copies/lane.csv'], { out: folder.at('again') });
    expect(again.code).toBe(0);
    const without = (name: string): readonly string[] =>
      String(folder.filesBelow(name.split('/')[0] as string).get(name.split('/')[1] as string))
        .split('\n')
        .map((line) => line.replace(/^P\w+/, ''))
        .sort();
    expect(without('again/list.csv')).toEqual(without('copies/list.csv'));
    expect(without('again/lane.csv')).toEqual(without('copies/lane.csv'));
    expect(without('again/list.csv').join('\n')).toContain('90+');
  });

  it('keep a row of units, and what a row of groups says stands in the headers', async () => {
    const rows = ['A1,R,2024-03-01,43.00,0.25', 'A2,L,2024-03-02,44.00,0.50', 'A3,L,2024-03-03,44.50,0.75'];
    folder.put('units.csv', text(['Patient ID,Eye,Op date,K1,Sph', ',,,(D),(D)', ...rows]));
    folder.put('groups.csv', text([',,,Before surgery,1 month', 'Patient ID,Eye,Op date,Sph,Sph', ...rows]));
    await run(folder, ['units.csv', 'groups.csv']);
    expect(copied('units.csv')[1]).toEqual(['', '', '', '', '(D)', '(D)']);
    expect(copied('groups.csv')[0]?.slice(4)).toEqual(['before Sph', '1 month Sph']);
  });
});
