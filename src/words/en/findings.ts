import type { IdentifierKind } from '../../findings/detail-kinds.js';
import type { NotATable } from '../../intake/not-a-table.js';
import type { Effect } from '../../records/finding.js';
import { exports, leftoverWords } from './finding-exports.js';
import { columns, files } from './finding-files.js';
import { rows, values } from './finding-values.js';
import type { RuleWords } from './finding-words.js';

const effects: Readonly<Record<Effect, string>> = {
  kept: 'kept',
  'value left out': 'this value is left out',
  'vector left out': 'astigmatism left out, sphere and cylinder kept',
  'refraction left out': 'refraction left out, acuity kept',
  'keratometry left out': 'keratometry left out',
  'acuity left out': 'this acuity left out',
  'prediction left out': 'this prediction is left out',
  'induced astigmatism left out': 'this keratometry is left out: what surgery changed is not known',
  'later examinations left out': 'examinations from that day on are left out',
  'row left out': 'the row is left out',
  'nothing published': 'nothing is published',
};

const identifiers: Readonly<Record<IdentifierKind, string>> = {
  'header-name': 'is headed like names of persons',
  'header-birth': 'is headed like a birth',
  'header-address': 'is headed like an address',
  'header-contact': 'is headed like a way to reach a person',
  'header-number': 'is headed like a number of a person',
  'header-photo': 'is headed like pictures',
  'value-email': 'holds what looks like an e-mail address',
  'value-web-address': 'holds what looks like a web address',
  'value-phone': 'holds what looks like a telephone number',
  'value-person': 'holds what looks like surname and first name',
  'value-birth-date': 'holds what looks like dates of birth',
  'value-long-number': 'holds long numbers where a code is expected',
  'value-national-number': 'holds numbers with the check digit of a national number',
};

const fileKinds: Readonly<Record<NotATable, string>> = {
  workbook: 'a workbook',
  pdf: 'a PDF',
  archive: 'an archive',
  image: 'an image',
  'web page': 'a web page',
  binary: 'binary content',
};

/** English words: findings, rule by rule. */
export const findings = {
  rules: { ...files, ...columns, ...exports, ...rows, ...values } as Readonly<Record<string, RuleWords>>,
  effects,
  identifiers,
  fileKinds,
  leftovers: leftoverWords,
  /** A pair of limits with its unit. */
  between: (low: string, high: string, unit: string) => `${low} to ${high}${unit === '°' ? '' : ' '}${unit}`,
  /** A lower limit alone. */
  from: (low: string, unit: string) => `${low}${unit === '' ? '' : ` ${unit}`} or more`,
  /** All findings of a rule: what it is, what was done with it, how many eyes it is about. */
  group: (title: string, effect: string, isKept: boolean, eyes: string) => {
    const about = eyes === '0' ? '' : ` (${eyes} ${eyes === '1' ? 'eye' : 'eyes'})`;
    return `${isKept ? title : `${title}: ${effect}`}${about}`;
  },
  eye: { right: 'right', left: 'left' },
  before: 'before',
};
