import type { HeaderIdentifier } from '../intake/identifier-header.js';
import type { ValueIdentifier } from '../intake/identifiers.js';
import type { NotATable } from '../intake/not-a-table.js';

export type IdentifierKind = HeaderIdentifier | ValueIdentifier;

/** What the de-identification gate stops at. `detail` of such a finding is an index here; the value is never told. */
export const identifierKinds: readonly IdentifierKind[] = [
  'header-name',
  'header-birth',
  'header-address',
  'header-contact',
  'header-number',
  'header-photo',
  'value-email',
  'value-web-address',
  'value-phone',
  'value-person',
  'value-birth-date',
  'value-long-number',
  'value-national-number',
];

/** What a file was that should have been a table of text. `detail` of such a finding is an index here. */
export const fileKinds: readonly NotATable[] = ['workbook', 'pdf', 'archive', 'image', 'web page', 'binary'];
