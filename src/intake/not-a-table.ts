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
  // NUL belongs into UTF-16 text and nowhere else.
  return bytes.includes(0) && !encodingOfBeginning(bytes)?.encoding.startsWith('utf-16') ? 'binary' : undefined;
}
