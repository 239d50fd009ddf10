import { acuityScale } from '../intake/acuity-scale.js';
import { dateOrdersOf } from '../intake/date-order.js';
import { delimiterCharacters } from '../intake/delimiter.js';
import { type DecimalMark, parseNumber } from '../intake/number.js';
import { fieldNamed } from '../plan/fields.js';
import { quoted } from '../plan/repair.js';
import type { Finding } from '../records/finding.js';
import type { ColumnPlan } from '../records/plan.js';
import { keptColumn, type RawTable } from '../records/raw-table.js';
import { locateColumn } from './header.js';

/** What stands between several words that one finding quotes. */
export const manyWords = '’ and ‘';

/** A finding with the file and the column that it is about, where they are known. */
export interface Unsettled {
  finding: Finding;
  table: RawTable | undefined;
  column: ColumnPlan | undefined;
}

/** A header as audit.yaml takes it: in quotation marks where a sign in it would mean something. */
function yamlText(header: string): string {
  return /^[\p{L}\d](?:[\p{L}\d .°²/+_-]*[\p{L}\d.°²])?$/u.test(header) ? header : quoted(header);
}

/** The name of a file, unless it may itself be a person's. */
function fileText(table: RawTable | undefined): string {
  return table && table.label === table.file ? yamlText(table.file) : '…';
}

/** The distinct words of the column; none where it is not known. */
function wordsIn({ table, column }: Unsettled): readonly string[] {
  const located = table && column && locateColumn(table.header, column);
  return !table || located?.index === undefined ? [] : keptColumn(table, located.index).words;
}

/** Scales that can hold every bare number of the column; all of them where none can. */
function scalesOf(about: Unsettled): readonly string[] {
  const words = wordsIn(about);
  if (words.length === 0 || !about.table) return [];
  const { scales } = acuityScale(words, about.table.read.decimal);
  return scales.length > 0 ? scales : ['decimal', 'logmar', 'letters'];
}

/** The unit that a header states, as the column form takes it; none where the field is read in one unit only. */
function unitsStated({ field = '', written = '' }: Finding): readonly string[] {
  const known = fieldNamed(field);
  if (known?.type === 'acuity') return [`numbers: ${written}`];
  if (written === 'clock')
    return ['facing', 'surgeon-superior', 'surgeon-temporal'].map((seat) => `unit: clock, view: ${seat}`);
  return (known?.units as readonly string[] | undefined)?.includes(written) ? [`unit: ${written}`] : [];
}

/** Ways to give words to the eyes: two words both ways round, one word to either; more are left to the reader. */
function eyeWords({ written = '' }: Finding): readonly string[] {
  const [one = '', other, ...more] = written.split(manyWords).map(yamlText);
  if (more.length > 0) return ['{ right: […], left: […] }'];
  if (other === undefined) return [`{ right: [${one}] }`, `{ left: [${one}] }`];
  return [`{ right: [${one}], left: [${other}] }`, `{ right: [${other}], left: [${one}] }`];
}

/** The decimal mark of a number that the mark of its file does not read; none where something else is wrong with it. */
function otherMark({ finding, table }: Unsettled): readonly DecimalMark[] {
  const marks = ['point', 'comma'] as const;
  return marks.filter(
    (mark) => mark !== table?.read.decimal && parseNumber(finding.written ?? '', { decimal: mark }) !== undefined,
  );
}

/** What a corneal number can be in either unit: 30 to 60 D are radii of 11.25 to 5.625 mm at 1.3375. */
const cornea = { mm: [5.625, 11.25], D: [30, 60] } as const;

/** The unit in which a column is to be read whose radii were read as powers, or powers as radii. */
function otherUnit({ finding, table, column }: Unsettled): readonly string[] {
  const { field = '', written = '' } = finding;
  const { unit, units = [] } = fieldNamed(field) ?? {};
  const isCorneal = unit === 'D' && (units as readonly string[]).includes('mm');
  const value = parseNumber(written, { decimal: table?.read.decimal ?? 'point' }) ?? Number.NaN;
  const other = column?.unit === 'mm' ? 'D' : 'mm';
  return isCorneal && value >= cornea[other][0] && value <= cornea[other][1] ? [other] : [];
}

function reading(key: string, values: readonly string[]): readonly string[] {
  return values.map((value) => `reading: { ${key}: ${value} }`);
}

/** Lines of audit.yaml that settle a finding. */
export function linesOf(about: Unsettled): readonly string[] {
  const { finding, table } = about;
  const { rule, column = '', field = '' } = finding;
  const mapped = (more: string): string => `${field}: { column: ${yamlText(column)}, ${more} }`;
  switch (rule) {
    case 'delimiter-open':
      return reading('delimiter', Object.keys(delimiterCharacters));
    case 'header-row-open':
      return reading('header_row', [String(finding.detail)]);
    case 'decimal-open':
    case 'decimal-mixed':
    case 'thousands-marks':
      return reading('decimal', ['point', 'comma']);
    case 'date-order-open':
    case 'date-order-mixed':
      return reading('date_order', dateOrdersOf(wordsIn(about)));
    case 'acuity-scale-open':
      return scalesOf(about).map((scale) => mapped(`numbers: ${scale}`));
    case 'notation-contradicted':
      return fieldNamed(field)?.notations.includes('signed') ? [mapped('notation: signed')] : [];
    case 'notation-open':
      return ['plus', 'minus'].map((notation) => mapped(`notation: ${notation}`));
    case 'unit-differs':
      return unitsStated(finding).map(mapped);
    case 'eye-words-open':
      return eyeWords(finding).map((words) => mapped(`words: ${words}`));
    case 'refraction-half-blank':
      return ['0', 'missing'].map((meaning) => `blank_means: { ${field}: ${meaning} }`);
    case 'acuity-suffix':
      return ['letters_per_line: 5'];
    case 'column-twice':
      return Array.from({ length: finding.detail }, (_, i) => mapped(`occurrence: ${i + 1}`));
    case 'delimiter-other':
      return reading('delimiter', [finding.written ?? '']);
    case 'column-unreadable':
      return reading('decimal', otherMark(about));
    case 'column-impossible':
      return otherUnit(about).map((unit) => mapped(`unit: ${unit}`));
    case 'column-missing':
      return finding.written === undefined ? [] : [`${field}: ${yamlText(finding.written)}`];
    case 'identifier-present':
      return ['identifiers_reviewed:', `  - { file: ${fileText(table)}, column: ${yamlText(column)}, reason: … }`];
    default:
      return [];
  }
}
