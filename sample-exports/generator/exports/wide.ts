import type { Acuity } from '../acuity.js';
import { isoDate } from '../calendar.js';
import type { SeriesEye } from '../series.js';
import { fixed, type Sheet } from '../sheet.js';

const HEADER = [
  'Code',
  'Eye',
  'Op date',
  'Age',
  'Lens',
  'Power',
  'AL',
  'Predicted',
  'Aim',
  'pre K1',
  'pre A1',
  'pre K2',
  'pre A2',
  'pre CDVA',
  'm1 date',
  'm1 sph',
  'm1 cyl',
  'm1 axis',
  'm1 UDVA',
  'm1 CDVA',
];

function decimal(acuity: Acuity): string {
  return 'word' in acuity ? acuity.word : `${Math.round(100 * 10 ** -acuity.line) / 100}`;
}

function row(eye: SeriesEye): string[] {
  const { keratometry, after } = eye;
  const readings = [keratometry.first, keratometry.second];
  return [
    eye.code,
    eye.laterality === 'right' ? 'R' : 'L',
    isoDate(eye.day),
    `${eye.age}`,
    'D4',
    fixed(eye.power, 1),
    fixed(eye.axialLength, 2),
    fixed(eye.predicted, 2),
    fixed(eye.aim, 2),
    ...readings.flatMap(({ power, meridian }) => [fixed(power, 2), fixed(meridian, 0)]),
    decimal(eye.before.corrected),
    isoDate(after.day),
    fixed(after.refraction.sphere, 2),
    fixed(after.refraction.cylinder, 2),
    fixed(after.refraction.axis, 0),
    decimal(after.uncorrected),
    decimal(after.corrected),
  ];
}

/** The second series as one wide sheet, a row an eye. */
export function wideFile(eyes: readonly SeriesEye[]): Sheet {
  return {
    file: 'wide.csv',
    encoding: 'utf-8',
    delimiter: ',',
    lineEnd: '\n',
    above: [],
    header: HEADER,
    rows: eyes.map(row),
  };
}
