import type { Peculiar } from './corpus.js';

const bytes = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'latin1'));
const kinds = ['workbook', 'pdf', 'archive', 'image', 'web page', 'binary'];

/** First bytes as published for each format, from memory; `detail` is the kind's place in the list of kinds. */
const files: readonly (readonly [name: string, kind: string, content: string])[] = [
  ['workbook', 'workbook', 'PK\x03\x04\x14\0\x06\0\x08\0\0\0!\0[Content_Types].xml xl/workbook.xml'],
  ['workbook-open', 'workbook', 'PK\x03\x04\x14\0\0\0\0\0mimetypeapplication/vnd.oasis.opendocument.spreadsheet'],
  ['workbook-old', 'workbook', '\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1\0\0\0\0'],
  ['pdf', 'pdf', '%PDF-1.7\n%\xe2\xe3\xcf\xd3\n'],
  ['archive', 'archive', 'PK\x03\x04\x14\0\0\0\x08\0lane.csv'],
  ['archive-gzip', 'archive', '\x1f\x8b\x08\0\0\0\0\0'],
  ['photograph', 'image', '\xff\xd8\xff\xe0\0\x10JFIF'],
  ['screenshot', 'image', '\x89PNG\r\n\x1a\n'],
  ['page-of-a-browser', 'web page', '<html><body><table><tr><td>ID</td></tr></table></body></html>'],
  ['database', 'binary', 'ID,Eye\n\x01\x02\0\0A1,R\n'],
];

/** Files that are no table of text, answered with how to make one. */
export const notTableCases: readonly Peculiar[] = [
  ...files.map(([name, kind, content]): Peculiar => {
    return {
      name,
      peculiarity: `this is no CSV but: ${kind}`,
      bytes: bytes(content),
      reads: 'nothing',
      finds: [{ rule: 'file-not-csv', detail: kinds.indexOf(kind) }],
    };
  }),
  { name: 'nothing', peculiarity: 'an empty file', bytes: '', reads: 'nothing', finds: [{ rule: 'file-empty' }] },
  {
    name: 'blanks',
    peculiarity: 'blank rows alone',
    bytes: ';;\n;;\n',
    reads: 'nothing',
    finds: [{ rule: 'file-empty' }],
  },
];
