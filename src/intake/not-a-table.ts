import { encodingOfBeginning } from './encoding.js';

/** What a file is that was taken for a table of text. */
export type NotATable = 'workbook' | 'pdf' | 'archive' | 'image' | 'web page' | 'binary';

/** First bytes, as Latin-1 text, and what they begin. A workbook is an archive too, and is told apart by its parts. */
const beginnings: readonly (readonly [start: string, kind: NotATable])[] = [
  ['\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1', 'workbook'],
  ['%PDF-', 'pdf'],
  ['PK\x03\x04', 'archive'],
  ['PK\x05\x06', 'archive'],
  ['\x1f\x8b', 'archive'],
  ['7z\xbc\xaf\x27\x1c', 'archive'],
  ['Rar!\x1a\x07', 'archive'],
  ['\x89PNG\r\n', 'image'],
  ['\xff\xd8\xff', 'image'],
  ['GIF8', 'image'],
  ['II*\0', 'image'],
  ['MM\0*', 'image'],
  ['{\\rtf', 'binary'],
  // Marks of UTF-32, which no export uses and UTF-16 would take for its own.
  ['\xff\xfe\0\0', 'binary'],
  ['\0\0\xfe\xff', 'binary'],
];

const workbookPart = /\[Content_Types\]\.xml|xl\/|mimetypeapplication\/vnd\.oasis\.opendocument\.spreadsheet/;
const markup = /^\s*(?:<!doctype html|<html|<\?xml|<table)/i;

/**
 * Recognises a workbook, a PDF, an archive, an image, a web page or other binary content by its first bytes, so that
 * the message can say what to do ("save it as CSV") instead of reporting a thousand ragged rows.
 *
 * @param firstBytes  the beginning of the file; a few thousand bytes are enough
 * @returns undefined where nothing speaks against a table of text
 * @source published file signatures of these formats, *from memory*
 * @example notATable(new TextEncoder().encode('%PDF-1.7')) // 'pdf'
 */
export function notATable(firstBytes: Uint8Array): NotATable | undefined {
  const bytes = firstBytes.subarray(0, 4096);
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  const kind = beginnings.find(([start]) => text.startsWith(start))?.[1];
  if (kind === 'archive' && workbookPart.test(text)) return 'workbook';
  if (kind) return kind;
  if (text.startsWith('DICM', 128)) return 'image';
  if (markup.test(text.replace('\xef\xbb\xbf', ''))) return 'web page';
  return isBinary(bytes) && !encodingOfBeginning(bytes)?.encoding.startsWith('utf-16') ? 'binary' : undefined;
}

/** NUL alone may fill up the cells of a text; beside other control characters, or in most places, it is no text. */
function isBinary(bytes: Uint8Array): boolean {
  const nul = bytes.filter((byte) => byte === 0).length;
  const control = bytes.some((byte) => (byte > 0 && byte < 9) || (byte > 13 && byte < 32 && byte !== 26));
  return nul > 0 && (control || 2 * nul > bytes.length);
}
