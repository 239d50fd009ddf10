import { propose as words } from '../../words/en/propose.js';
import type { ExportedFile } from '../exported.js';

/** A header as it is named to the reader; the number of its column where it has none. */
export function headerName({ header }: Pick<ExportedFile, 'header'>, index: number): string {
  const single = (header[index] ?? '').replace(/\s+/g, ' ').trim();
  return single === '' ? words.columnNumber(index + 1) : single;
}
