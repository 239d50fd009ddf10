import type { ColumnTable } from 'arquero';
import { numbersOf } from '../../src/columns/table.js';
import { fixed, numberStyles } from '../../src/format/number.js';
import { complicationPrefix } from '../../src/measures/safety.js';
import { vectorMagnitude } from '../../src/optics/double-angle.js';
import type { ReviewEye } from '../../src/page/content.js';
import type { Derived } from '../../src/records/derived.js';
import { eventName } from '../../src/tables/safety.js';
import { millionths } from '../../src/units.js';
import type { Words } from '../../src/words/index.js';
import { numberCell, type Spreadsheet, spreadsheetFile } from './csv-file.js';
import type { OutputFile } from './replace.js';

/** A lens that stands further than this from where it was meant to, degrees. */
const misaligned = 10;
/** Cylinder further than this from the one predicted, dioptres (*judgement*). */
const cylinderSurprise = 1;

/** Errors beyond this are looked at again, dioptres; beyond the second limit they are a surprise. */
const largeError = 1;
const surprise = 2;
/** Two lines of the chart less the tolerance with which they are read, logMAR. */
const twoLines = 0.19;

const values = [
  'prediction_error',
  'target_error',
  'cylinder_prediction_error',
  'lens_misalignment',
  'cdva_before',
  'cdva',
  'any_complication',
] as const;
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
  const columns = values.map((name) => [name, valuesOf(eyes, name)] as const);
  const events = eyes.columnNames().filter((name) => isEvent(name));
  const [patient, laterality, year] = [column('patient'), column('laterality'), column('year')];
  const found: Review[] = [];
  for (let eye = 0; eye < eyes.numRows(); eye++) {
    const own = Object.fromEntries(columns.map(([name, of]) => [name, of[eye]])) as Record<Value, number>;
    const happened = events.filter((name) => column(name)[eye] === 1);
    const reasons = reasonsOf(own, happened, words);
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

/** The column of a value; a vector is its magnitude. */
function valuesOf(eyes: ColumnTable, name: Value): Float64Array {
  if (name !== 'cylinder_prediction_error') return numbersOf(eyes, name);
  const [x, y] = [numbersOf(eyes, `${name}_x`), numbersOf(eyes, `${name}_y`)];
  return x.map((value, eye) => vectorMagnitude(value, y[eye] as number));
}

/** What happened to an eye and is a reason by its name: a complication, a return to theatre. */
function isEvent(name: string): boolean {
  return name.startsWith(complicationPrefix) || name === 'return_to_theatre' || name === 'capsulotomy_incomplete';
}

function reasonsOf(eye: Readonly<Record<Value, number>>, events: readonly string[], words: Words): readonly string[] {
  const say = words.page.review.reasons;
  const worse = millionths(eye.cdva - eye.cdva_before) >= millionths(twoLines);
  const cylinder = eye.cylinder_prediction_error;
  const named = events.map((name) => eventName(name, words).toLowerCase());
  const unnamed = eye.any_complication === 1 && !events.some((name) => name.startsWith(complicationPrefix));
  return [
    ...errorReasons(eye, say),
    ...(isBeyond(cylinder, cylinderSurprise) ? [say.cylinder(fixed(cylinder, 2))] : []),
    ...(isBeyond(eye.lens_misalignment, misaligned) ? [say.misalignment(fixed(eye.lens_misalignment, 0))] : []),
    ...(worse ? [say.acuity(fixed(eye.cdva_before, 2), fixed(eye.cdva, 2))] : []),
    ...(unnamed ? [say.complication] : []),
    ...named,
  ];
}

const isBeyond = (value: number, limit: number): boolean => millionths(Math.abs(value)) > millionths(limit);

function errorReasons(eye: Readonly<Record<Value, number>>, say: Say): readonly string[] {
  const predicted = !Number.isNaN(eye.prediction_error);
  const error = predicted ? eye.prediction_error : eye.target_error;
  if (!isBeyond(error, largeError)) return [];
  const told = (predicted ? say.predictionError : say.targetError)(fixed(error, 2));
  return [isBeyond(error, surprise) ? say.surprise(told) : told];
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
    'cylinder_prediction_error_D',
    'lens_misalignment_deg',
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
