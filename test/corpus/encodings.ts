import { type Peculiar, usualBut, withCells, written } from './corpus.js';

const bytesOf = (hex: string): Uint8Array => Uint8Array.from(Buffer.from(hex.replace(/ /g, ''), 'hex'));
const join = (...parts: readonly Uint8Array[]): Uint8Array => Uint8Array.from(Buffer.concat(parts));
const ascii = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'latin1'));
const little = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'utf16le'));
const big = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'utf16le').swap16());

/** Bytes below are those of the Unicode code charts and of the vendors' published tables of the Windows pages. */
export const encodingCases: readonly Peculiar[] = [
  { name: 'utf-8', peculiarity: 'nothing is peculiar', bytes: written() },
  { name: 'utf-8-mark', peculiarity: 'a byte order mark before the header', bytes: `\ufeff${written()}` },
  {
    name: 'utf-8-mark-quoted',
    peculiarity: 'a byte order mark before a quoted header',
    bytes: `\ufeff${written(',', (cell) => `"${cell}"`)}`,
  },
  {
    name: 'utf-16le-mark',
    peculiarity: 'UTF-16, little end first, as spreadsheets save "Unicode text"',
    bytes: little(`\ufeff${written('\t', undefined, '\r\n')}`),
  },
  { name: 'utf-16be-mark', peculiarity: 'UTF-16, big end first', bytes: big(`\ufeff${written(';')}`) },
  { name: 'utf-16le-bare', peculiarity: 'UTF-16 without its mark', bytes: little(written(';')) },
  {
    name: 'utf-16-declared',
    peculiarity: 'UTF-16 that audit.yaml declares; which end comes first the bytes say',
    bytes: big(`\ufeff${written()}`),
    source: { reading: { encoding: 'utf-16' } },
  },
  {
    name: 'windows-1252',
    peculiarity: 'a header with a degree sign and an accent in a Western page',
    bytes: join(
      ascii('ID,Eye,Date,Sph'),
      bytesOf('E8'),
      ascii('re,Cyl,Axis '),
      bytesOf('B0'),
      ascii(written().slice(24)),
    ),
    columns: { sphere: 'Sphère', axis: 'Axis °', cdva: 'VA' },
  },
  {
    name: 'windows-1252-minus',
    peculiarity: 'an en dash as minus sign, which is a byte of its own in a Western page',
    bytes: join(
      ascii('ID,Eye,Date,Sph,Cyl,Axis,VA\nA1,R,2025-02-20,'),
      bytesOf('96'),
      ascii('1.25,'),
      bytesOf('96'),
      ascii('0.50,90'),
      bytesOf('B0'),
      ascii(',6/9\n'),
    ),
    reads: { 'A1 right': 'day 41: -1.75 +0.5 × 180, corrected 0.1761' },
  },
  {
    name: 'windows-1253',
    peculiarity: 'Greek headers, found by their runs of high letters',
    // Python 3.11: 'Οφθαλμός'.encode('cp1253')
    bytes: join(ascii('ID,'), bytesOf('cff6e8e1ebecfcf2'), ascii(written().slice(6))),
    columns: { eye: 'Οφθαλμός' },
  },
  {
    name: 'windows-1251-declared',
    peculiarity: 'a Cyrillic header in the page that audit.yaml names',
    // Python 3.11: 'Глаз'.encode('cp1251')
    bytes: join(ascii('ID,'), bytesOf('c3ebe0e7'), ascii(written().slice(6))),
    source: { reading: { encoding: 'windows-1251' } },
    columns: { eye: 'Глаз' },
  },
  {
    name: 'iso-8859-2-declared',
    peculiarity: 'a Polish header in a page of ISO 8859 that audit.yaml names',
    // Python 3.11: 'Łódź'.encode('iso8859_2')
    bytes: join(ascii('ID,'), bytesOf('a3f364bc'), ascii(written().slice(6))),
    source: { reading: { encoding: 'iso-8859-2' } },
    columns: { eye: 'Łódź' },
  },
  {
    name: 'utf-8-broken',
    peculiarity: 'UTF-8 of which one character was cut in two: the file stays UTF-8, the cell is told',
    bytes: join(
      Uint8Array.from(Buffer.from('ID,Eye,Date,Sphère,Cyl,Axis °,Visus größer,Note\n')),
      ascii('A1,R,2025-02-20,-1.25,-0.50,90,6/9,'),
      Uint8Array.from(Buffer.from('°°°°°°°')),
      bytesOf('C3'),
      ascii('\n'),
    ),
    columns: { sphere: 'Sphère', axis: 'Axis °', cdva: 'Visus größer', device: 'Note' },
    reads: { 'A1 right': 'day 41: -1.75 +0.5 × 180, corrected 0.1761' },
    finds: [{ rule: 'encoding-doubtful', severity: 'query', detail: 1 }],
  },
  {
    name: 'encoding-declared-wrong',
    peculiarity: 'bytes that the declared encoding does not know',
    bytes: join(ascii('ID,Eye,Date,Sph,Cyl,Axis,VA\nA'), bytesOf('E9'), ascii(',R,2025-02-20,-1.25,-0.50,90,6/9\n')),
    source: { reading: { encoding: 'utf-8' } },
    reads: 'nothing',
    finds: [{ rule: 'encoding-doubtful', severity: 'query', detail: 1 }],
  },
  {
    name: 'nul-padding',
    peculiarity: 'cells filled up with NUL, as databases of fixed width write them',
    bytes: withCells({ '2 ID': 'A1\0\0\0', '3 Axis': '5\0\0', '5 VA': '\x006/7.5' }),
    finds: [{ rule: 'nul-bytes', severity: 'query', detail: 3 }],
  },
  {
    name: 'nul-tail',
    peculiarity: 'a tail of NUL, as a broken-off copy leaves it',
    bytes: `${written()}${'\0'.repeat(100)}`,
    finds: [
      { rule: 'nul-bytes', severity: 'query', detail: 1 },
      { rule: 'rows-passed-over', severity: 'note', detail: 1 },
    ],
  },
  {
    name: 'nul-inside',
    peculiarity: 'NUL inside a number, which is not joined over it',
    bytes: withCells({ '2 Sph': '-1\0.25' }),
    reads: usualBut({ 'A1 right': 'day 41: NaN +0.5 × 180, corrected 0.1761' }),
    finds: [
      { rule: 'nul-bytes', severity: 'query', detail: 1 },
      { rule: 'number-unreadable', severity: 'set aside', row: 2 },
    ],
  },
];
