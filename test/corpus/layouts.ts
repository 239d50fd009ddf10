import { header, type Peculiar, rows, usual, usualBut, withCells, withCommas, written } from './corpus.js';

const line = (cells: readonly string[], separator = ','): string => cells.join(separator);
const body = rows.map((cells) => line(cells)).join('\n');

/** Cells and rows as exports lay them out. */
export const layoutCases: readonly Peculiar[] = [
  { name: 'semicolons', peculiarity: 'semicolons between cells and a decimal comma', bytes: withCommas(';') },
  { name: 'tabs', peculiarity: 'tabs between cells', bytes: written('\t') },
  { name: 'pipes', peculiarity: 'upright strokes between cells', bytes: written('|') },
  {
    name: 'commas-both',
    peculiarity: 'commas between cells and in numbers, which stand in quotation marks',
    bytes: written(',', (cell, row, column) => (row >= 0 && column !== 2 ? `"${cell.replace('.', ',')}"` : cell)),
  },
  { name: 'sep-line', peculiarity: 'a separator line that spreadsheets hide', bytes: `sep=;\r\n${withCommas(';')}` },
  { name: 'sep-line-quoted', peculiarity: 'a separator line in quotation marks', bytes: `"sep=;"\n${withCommas(';')}` },
  { name: 'crlf', peculiarity: 'line ends of two characters', bytes: written(',', undefined, '\r\n') },
  { name: 'lone-returns', peculiarity: 'lone carriage returns', bytes: written(',', undefined, '\r') },
  {
    name: 'mixed-line-ends',
    peculiarity: 'every kind of line end in one file',
    bytes: `${line(header)}\r\n${line(rows[0] ?? [])}\n${line(rows[1] ?? [])}\r${line(rows[2] ?? [])}\r\n${line(rows[3] ?? [])}`,
  },
  { name: 'no-last-line-end', peculiarity: 'no line end at the end', bytes: `${line(header)}\n${body}` },
  { name: 'all-quoted', peculiarity: 'every cell in quotation marks', bytes: written(',', (cell) => `"${cell}"`) },
  {
    name: 'quoted-break',
    peculiarity: 'a line break inside a quoted remark; later rows keep their numbers',
    bytes: `${line([...header, 'Note'])}\n${rows.map((cells, i) => line([...cells, i === 0 ? '"two\nlines, one row"' : ''])).join('\n')}\n`,
  },
  {
    name: 'quote-inside',
    peculiarity: 'quotation marks inside unquoted cells',
    bytes: `${line([...header, 'Note'])}\n${rows.map((cells) => line([...cells, '5" lens'])).join('\n')}\n`,
  },
  {
    name: 'header-case',
    peculiarity: 'headers in capitals, with blanks around and inside',
    bytes: written(',', (cell, row) => (row < 0 ? ` ${cell.toUpperCase()}  ` : cell)),
  },
  {
    name: 'columns-moved',
    peculiarity: 'columns in another order, with others between them',
    bytes: ['VA,Remark,Axis,Cyl,Sph,Nr,Date,Eye,ID']
      .concat(
        rows.map(([id, eye, date, sph, cyl, axis, va], i) =>
          line([va, 'x', axis, cyl, sph, String(i), date, eye, id] as string[]),
        ),
      )
      .join('\n'),
  },
  {
    name: 'trailing-delimiters',
    peculiarity: 'a delimiter at the end of every line',
    bytes: written(',', undefined, ',\n'),
  },
  {
    name: 'trailing-delimiter-and-one-lost',
    peculiarity: 'a delimiter at the end of every line, and one lost inside: the cells behind it have moved',
    bytes: written(',', undefined, ',\n').replace('175,6/12', '1756/12'),
    reads: usualBut({ 'A2 right': undefined }),
    finds: [{ rule: 'row-ragged', severity: 'set aside', row: 4, detail: 7 }],
  },
  {
    name: 'trailing-blank-cells',
    peculiarity: 'blank cells beyond the header in some rows',
    bytes: `${line(header)}\n${rows.map((cells, i) => line(cells) + ','.repeat(i)).join('\n')}\n`,
  },
  {
    name: 'blank-rows',
    peculiarity: 'blank rows before, between and after',
    bytes: `\n${line(header)}\n,,,,,,\n${body}\n\n ;\n`.replace(' ;\n', '\n'),
    finds: [{ rule: 'rows-passed-over', severity: 'note', detail: 4 }],
  },
  {
    name: 'short-row',
    peculiarity: 'a row that breaks off',
    bytes: `${written()}A2,L,2025-02-24,-0.25\n`,
    finds: [{ rule: 'row-ragged', severity: 'set aside', row: 6, detail: 4 }],
  },
  {
    name: 'long-row',
    peculiarity: 'a comma in a remark that nobody quoted: the cells behind it have moved',
    bytes: withCells({ '3 Date': '2025-02-21,late' }),
    reads: usualBut({ 'A1 left': undefined }),
    finds: [{ rule: 'row-ragged', severity: 'set aside', row: 3, detail: 8 }],
  },
  {
    name: 'titles-above',
    peculiarity: 'two title lines above the header, declared',
    bytes: `Lane export\nall rows\n${written()}`,
    source: { reading: { header_row: 3 } },
    finds: [{ rule: 'rows-passed-over', severity: 'note', detail: 2 }],
  },
  {
    name: 'titles-undeclared',
    peculiarity: 'two title lines above the header, of which audit.yaml says nothing',
    bytes: `Lane export\nall rows\n${written()}`,
    reads: 'nothing',
    finds: [{ rule: 'header-row-open', row: 3, detail: 3 }],
    lines: ['reading: { header_row: 3 }'],
  },
  {
    name: 'groups-above',
    peculiarity: 'a row of groups above the headers',
    bytes: `,,Visit,Refraction,,,\n${written()}`,
    reads: 'nothing',
    finds: [{ rule: 'header-row-open', row: 2, detail: 2 }],
    lines: ['reading: { header_row: 2 }'],
  },
  {
    name: 'units-row',
    peculiarity: 'a row of units below the header',
    bytes: written().replace('\n', '\n,,yyyy-mm-dd,(D),(D),°,\n'),
    finds: [{ rule: 'rows-passed-over', severity: 'note', detail: 1 }],
  },
  {
    name: 'units-row-declared',
    peculiarity: 'a second header row in words, declared',
    bytes: written().replace('\n', '\ncode,side,when,power,power,direction,best\n'),
    source: { reading: { units_row: 'yes' } },
    finds: [{ rule: 'rows-passed-over', severity: 'note', detail: 1 }],
  },
  {
    name: 'units-in-header',
    peculiarity: 'units in the headers, as audit.yaml has them',
    bytes: written().replace('Sph,Cyl,Axis', 'Sph (D),Cyl [D],Axis °'),
    columns: { sphere: 'Sph (D)', cylinder: 'Cyl [D]', axis: 'axis °' },
  },
  {
    name: 'header-repeated',
    peculiarity: 'the header again after every page',
    bytes: `${line(header)}\n${line(rows[0] ?? [])}\n${line(rows[1] ?? [])}\n${line(header)}\n${line(rows[2] ?? [])}\n${line(header).toUpperCase()}\n${line(rows[3] ?? [])}\n`,
    finds: [
      { rule: 'row-header-again', severity: 'note', row: 4 },
      { rule: 'row-header-again', severity: 'note', row: 6 },
    ],
  },
  {
    name: 'header-moved-inside',
    peculiarity: 'two exports in one file, the second with its columns in another order',
    bytes: `${written()}ID,Eye,Date,Cyl,Sph,Axis,VA\nA2,L,2025-02-25,-0.50,+1.00,10,6/6\n`,
    reads: 'nothing',
    finds: [{ rule: 'header-changes', row: 6 }],
  },
  {
    name: 'table-below',
    peculiarity: 'another table in the same columns further down',
    bytes: `${written()}\nPatient,Eye,Date,AL,ACD,WTW,Lens\nA1,R,2025-01-02,23.50,3.10,11.9,B2\n`,
    reads: 'nothing',
    finds: [
      { rule: 'header-changes', row: 7 },
      { rule: 'rows-passed-over', severity: 'note', detail: 1 },
    ],
  },
  {
    name: 'summary-lines',
    peculiarity: 'a mean, a count and a total below the rows',
    bytes: `${written()}Mean,,,-0.25,-0.63,,\nn = 4,,,,,,\nTotal: 4 eyes\n`,
    finds: [6, 7, 8].map((row) => ({ rule: 'row-summary', severity: 'note', row }) as const),
  },
  {
    name: 'summary-lines-german',
    peculiarity: 'a mean and a count in German, the label under another column',
    bytes: `${written()},,,Mittelwert,-0.63,,\n,Anzahl,4,,,,\n`,
    finds: [6, 7].map((row) => ({ rule: 'row-summary', severity: 'note', row }) as const),
  },
  {
    name: 'patient-called-max',
    peculiarity: 'a patient coded Max, who is no summary line',
    bytes: written().replace(/A1/g, 'Max'),
    reads: Object.fromEntries(Object.entries(usual).filter(([eye]) => !eye.startsWith('A1'))),
  },
  {
    name: 'footer',
    peculiarity: 'a line below the rows that says when the export was made',
    bytes: `${written()}\nExported 2025-03-01 by lane 2\n`,
    finds: [
      { rule: 'row-ragged', severity: 'set aside', row: 7, detail: 1 },
      { rule: 'rows-passed-over', severity: 'note', detail: 1 },
    ],
  },
  {
    name: 'row-twice',
    peculiarity: 'one row twice',
    bytes: `${written()}${line(rows[2] ?? [])}\n`,
    finds: [{ rule: 'same-key-equal', severity: 'note', row: 6 }],
  },
  {
    name: 'row-twice-differing',
    peculiarity: 'one eye and day twice with two spheres: the field is left out',
    bytes: `${written()}${line(rows[2] ?? []).replace('-0.25', '-0.75')}\n`,
    reads: usualBut({ 'A2 right': 'day 45: NaN +1 × 85, corrected 0.301' }),
    finds: [{ rule: 'same-key-differs', severity: 'set aside', row: 6, column: 'Sph', written: '-0.75' }],
  },
  {
    name: 'quote-open',
    peculiarity: 'a quotation mark that nobody closed',
    bytes: withCells({ '4 VA': '"6/12' }),
    reads: 'nothing',
    finds: [{ rule: 'quote-open', row: 4 }],
  },
  {
    name: 'header-alone',
    peculiarity: 'a header without rows',
    bytes: `${line(header)}\n`,
    reads: {},
    finds: [{ rule: 'file-without-rows', severity: 'query' }],
  },
  {
    name: 'wide',
    peculiarity: 'one line an eye, two visits side by side',
    bytes: [
      'ID,Eye,m1 sph,m1 cyl,m1 ax,m3 sph,m3 cyl,m3 ax',
      'A1,R,-1.25,-0.50,90,-1.00,-0.50,90',
      'A1,L,0.50,-0.75,5,,,',
    ].join('\n'),
    source: {
      blocks: ['1', '3'].map((month) => ({
        visit: `${month} months`,
        columns: {
          patient: 'ID',
          eye: 'Eye',
          sphere: `m${month} sph`,
          cylinder: `m${month} cyl`,
          axis: `m${month} ax`,
        },
      })),
    },
    visits: ['1 months', '3 months'],
    reads: { 'A1 right': 'labelled: -1.75 +0.5 × 180, -1.5 +0.5 × 180', 'A1 left': 'labelled: -0.25 +0.75 × 95' },
  },
];
