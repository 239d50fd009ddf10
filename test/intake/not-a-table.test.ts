import iconv from 'iconv-lite';
import { expect, it } from 'vitest';
import { notATable } from '../../src/intake/not-a-table.js';

const latin1 = (text: string) => iconv.encode(text, 'latin1');

// File signatures as published for each format, from memory.
it.each([
  ['workbook', 'PK\x03\x04\x14\0\x06\0\x08\0\0\0!\0[Content_Types].xml'],
  ['workbook', 'PK\x03\x04\x14\0\0\0\0\0mimetypeapplication/vnd.oasis.opendocument.spreadsheet'],
  ['workbook', '\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1\0\0'],
  ['archive', 'PK\x03\x04\x14\0\0\0\x08\0exports.csv'],
  ['archive', '\x1f\x8b\x08\0'],
  ['pdf', '%PDF-1.7\n'],
  ['image', '\x89PNG\r\n\x1a\n'],
  ['image', '\xff\xd8\xff\xe0'],
  ['image', `${'\0'.repeat(128)}DICM`],
  ['web page', '<!DOCTYPE html><html><table>'],
  ['web page', '\xef\xbb\xbf<?xml version="1.0"?>'],
  ['binary', 'id;eye\n1;\0\x01\x02;OD\n'],
  ['binary', '{\\rtf1\\ansi'],
] as const)('recognises a %s', (kind, text) => {
  expect(notATable(latin1(text))).toBe(kind);
});

it('finds nothing against a table of text, in any encoding', () => {
  const text = 'id;eye;Größe\n1;OD;1,25\n2;OS;0,50\n';
  for (const encoding of ['utf8', 'windows-1252', 'utf-16le', 'utf-16be']) {
    expect([encoding, notATable(iconv.encode(text, encoding))]).toEqual([encoding, undefined]);
    expect([encoding, notATable(iconv.encode(text, encoding, { addBOM: true }))]).toEqual([encoding, undefined]);
  }
  expect(notATable(new Uint8Array(0))).toBeUndefined();
  expect(notATable(latin1('PK1,PK2\n43,44\n'))).toBeUndefined();
});
