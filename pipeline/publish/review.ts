import { fixed, numberStyles } from '../../src/format/number.js';
import type { ReviewEye } from '../../src/page/content.js';
import type { Derived } from '../../src/records/derived.js';
import { millionths } from '../../src/units.js';
import type { Words } from '../../src/words/index.js';
import { numberCell, type Spreadsheet, spreadsheetFile } from './csv-file.js';
import type { OutputFile } from './replace.js';

/** Errors beyond this are looked at again, dioptres; beyond the second limit they are a surprise. */
const largeError = 1;
const surprise = 2;
/** Two lines of the chart less the tolerance with which they are read, logMAR. */
const twoLines = 0.19;

const values = ['prediction_error', 'target_error', 'cdva_before', 'cdva', 'any_complication'] as const;
type Value = (typeof values)[number];

/** One eye to look at again, with the values that its reasons rest on. */
export interface Review extends ReviewEye {
  values: Readonly<Record<Value, number>>;
}

/**
 * Eyes to look at again: far from plan, worse after surgery than before, or with a complication. Where an eye has no
 * prediction its error against the intended refraction counts.
 *
 * @source limits settled for this project
 */
export function reviewEyes({ eyes, tables }: Derived, words: Words): readonly Review[] {
  const column = (name: string) => eyes.column(name) as unknown as ArrayLike<number>;
  const columns = values.map((name) => [name, column(name)] as const);
  const [patient, laterality, year] = [column('patient'), column('laterality'), column('year')];
  const found: Review[] = [];
  for (let eye = 0; eye < eyes.numRows(); eye++) {
    const own = Object.fromEntries(columns.map(([name, of]) => [name, of[eye]])) as Record<Value, number>;
    const reasons = reasonsOf(own, words.page.review.reasons);
    if (reasons.length === 0) continue;
    found.push({
      patient: tables.patients[patient[eye] as number] ?? '',
      laterality: words.page.sides[laterality[eye] === 0 ? 'right' : 'left'],
      year: Number.isNaN(year[eye]) ? '' : String(year[eye]),
      reasons,
      values: own,
    });
  }
  return found;
}

type Say = Words['page']['review']['reasons'];

function reasonsOf(eye: Readonly<Record<Value, number>>, say: Say): readonly string[] {
  const worse = millionths(eye.cdva - eye.cdva_before) >= millionths(twoLines);
  return [
    ...errorReasons(eye, say),
    ...(worse ? [say.acuity(fixed(eye.cdva_before, 2), fixed(eye.cdva, 2))] : []),
    ...(eye.any_complication === 1 ? [say.complication] : []),
  ];
}

function errorReasons(eye: Readonly<Record<Value, number>>, say: Say): readonly string[] {
  const predicted = !Number.isNaN(eye.prediction_error);
  const error = predicted ? eye.prediction_error : eye.target_error;
  const size = millionths(Math.abs(error));
  if (!(size > millionths(largeError))) return [];
  const told = (predicted ? say.predictionError : say.targetError)(fixed(error, 2));
  return [size > millionths(surprise) ? say.surprise(told) : told];
}

/** review.csv: the same eyes as a list that can be worked through. */
export function reviewFile(path: string, review: readonly Review[], spreadsheet: Spreadsheet): OutputFile {
  const header = [
    'patient',
    'eye',
    'surgery_year',
    'reasons',
    'prediction_error_D',
    'target_error_D',
    'cdva_before_logMAR',
    'cdva_logMAR',
    'any_complication',
  ];
  const hyphened = (text: string): string => text.replaceAll(numberStyles.typesetPoint.minus, '-');
  const rows = review.map((eye) => [
    eye.patient,
    eye.laterality,
    eye.year,
    hyphened(eye.reasons.join('; ')),
    ...values.map((name) => numberCell(eye.values[name], spreadsheet)),
  ]);
  return spreadsheetFile(path, header, rows, spreadsheet);
}
