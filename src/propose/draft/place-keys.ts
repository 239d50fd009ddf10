import { foldedHeader } from '../../findings/header.js';
import type { ExportedFile } from '../exported.js';
import { yamlText } from './lines.js';

/** Keys of a column's long form, their values as audit.yaml takes them. */
export type Keys = readonly (readonly [key: string, value: string])[];

/** Where the column stands: its header, which of several like it, or its number where it has none. */
export function placeKeys({ header }: ExportedFile, index: number): Keys {
  const name = foldedHeader(header[index] ?? '');
  if (name === '') return [['position', String(index + 1)]];
  const alike = header.flatMap((one, at) => (foldedHeader(one) === name ? [at] : []));
  const column = ['column', yamlText(header[index] ?? '')] as const;
  return alike.length === 1 ? [column] : [column, ['occurrence', String(alike.indexOf(index) + 1)]];
}
