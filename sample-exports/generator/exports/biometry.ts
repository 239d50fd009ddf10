import { isoDate } from '../calendar.js';
import type { Eye } from '../eyes.js';
import { fixed, type Sheet } from '../sheet.js';
import { compareEyes, side } from './rows.js';

function row(eye: Eye): string[] {
  const { biometry, plan, further } = eye;
  const { first, second } = biometry.keratometry;
  return [
    eye.patient.code,
    side(eye, 'right', 'left'),
    isoDate(eye.patient.measured),
    fixed(biometry.axialLength, 2),
    fixed(biometry.chamberDepth, 2),
    fixed(further.lensThickness, 2),
    fixed(further.whiteToWhite, 1),
    fixed(further.cornealThickness, 0),
    fixed(first.power, 2),
    fixed(first.meridian, 0),
    fixed(second.power, 2),
    fixed(second.meridian, 0),
    fixed(plan.predicted, 2),
    fixed(plan.second, 2),
  ];
}

/** The biometer's export: one row an eye, K in dioptres, and what two formulas predict for the lens implanted. */
export function biometryFile(eyes: readonly Eye[]): Sheet {
  const sorted = [...eyes].sort((a, b) => a.patient.measured - b.patient.measured || compareEyes(a, b));
  return {
    file: 'biometry.csv',
    encoding: 'utf-8',
    delimiter: ';',
    lineEnd: '\n',
    above: [],
    header: [
      'Patient',
      'Eye',
      'Measured',
      'AL',
      'ACD',
      'LT',
      'WTW',
      'CCT',
      'K1',
      'Axis',
      'K2',
      'Axis',
      'Pred 1',
      'Pred 2',
    ],
    rows: sorted.map(row),
  };
}
