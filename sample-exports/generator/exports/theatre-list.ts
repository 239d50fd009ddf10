import { dayFirst } from '../calendar.js';
import type { Eye } from '../eyes.js';
import { fixed, type Sheet } from '../sheet.js';
import { compareEyes, side } from './rows.js';

const HEADER = [
  'Case',
  'Side',
  'Op date',
  'Age',
  'Sex',
  'Site',
  'Surgeon',
  'Method',
  'Incision',
  'Width',
  'Lens',
  'Power',
  'Lens cyl',
  'Lens axis',
  'Axis end',
  'Aim',
  'Predicted',
  'Res cyl',
  'Res axis',
  'Compl',
  'Comorbidity',
  'Phaco s',
  'Energy',
  'Case min',
];

/** South writes the method out; so two spellings stand for each. */
const METHOD = {
  North: { manual: 'M', 'laser-assisted': 'L' },
  South: { manual: 'man.', 'laser-assisted': 'laser' },
} as const;

/** One operation in this many has no prediction on the list. */
const NO_PREDICTION_EVERY = 130;

function row(eye: Eye, i: number): string[] {
  const { patient, operation, plan } = eye;
  return [
    patient.code,
    side(eye, 'R', 'L'),
    dayFirst(operation.day, '/'),
    patient.age >= 90 ? '90+' : `${patient.age}`,
    patient.sex,
    patient.site,
    patient.surgeon,
    METHOD[patient.site][operation.technique],
    `${eye.incision}`,
    patient.surgeon === 'S2' ? '2.4' : '2.2',
    plan.model,
    fixed(plan.power, 1),
    plan.axis === undefined ? '' : fixed(plan.cylinder, 2),
    fixed(plan.axis, 0),
    fixed(eye.lensAxisEnd, 0),
    fixed(operation.aim, 2),
    i % NO_PREDICTION_EVERY === NO_PREDICTION_EVERY - 1 ? '' : fixed(plan.predicted, 2),
    fixed(plan.residual?.cylinder, 2),
    fixed(plan.residual?.axis, 0),
    operation.complication,
    patient.comorbidity,
    fixed(eye.further.ultrasound, 0),
    fixed(eye.further.energy, 1),
    fixed(eye.further.duration, 0),
  ];
}

/** The theatres' own list, kept in a spreadsheet by people. */
export function theatreList(eyes: readonly Eye[]): Sheet {
  const sorted = [...eyes].sort((a, b) => a.operation.day - b.operation.day || compareEyes(a, b));
  return {
    file: 'theatre-list.csv',
    encoding: 'utf-8 with mark',
    delimiter: ',',
    lineEnd: '\r\n',
    above: [],
    header: HEADER,
    rows: sorted.map(row),
  };
}
