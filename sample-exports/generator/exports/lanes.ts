import type { Acuity } from '../acuity.js';
import { dayFirst, monthName } from '../calendar.js';
import { equivalent } from '../devices.js';
import type { Eye } from '../eyes.js';
import { fixed, type Sheet } from '../sheet.js';
import { byDay, type Row, side } from './rows.js';

const comma = (text: string) => text.replace('.', ',');

function decimalAcuity(acuity: Acuity | undefined): string {
  if (!acuity) return '';
  if ('word' in acuity) return acuity.word === 'CF' ? 'FZ' : 'HBW';
  const decimal = Math.round(100 * 10 ** -acuity.line) / 100;
  return comma(decimal === 0.05 || decimal === 1.25 ? fixed(decimal, 2) : fixed(decimal, 1));
}

const VISITS = ['before', '1 month', '3 months'] as const;
/** What the northern lane calls each visit. */
const APPOINTMENT = ['vor OP', '1 Monat', '3 Monate'] as const;

/** Minus cylinders with a decimal comma; an axis at 180 is written 0, as some phoropters do. */
function northRow({ eye, exam }: Row): string[] {
  const { refraction } = exam;
  const visit = VISITS.indexOf(exam.visit);
  return [
    eye.patient.code,
    side(eye, 'RA', 'LA'),
    dayFirst(exam.day, '.'),
    comma(fixed(refraction?.sphere, 2, true)),
    comma(fixed(refraction?.cylinder, 2)),
    fixed(refraction?.axis === 180 ? 0 : refraction?.axis, 0),
    decimalAcuity(exam.uncorrected),
    decimalAcuity(exam.corrected),
    fixed(exam.lensAxis, 0),
    refraction ? '12' : '',
    fixed(eye.further.pressure[visit], 0),
    APPOINTMENT[visit] ?? '',
  ];
}

/** The northern lane's export. */
export function laneNorth(eyes: readonly Eye[]): Sheet {
  return {
    file: 'lane-north.csv',
    encoding: 'windows-1252',
    delimiter: ';',
    lineEnd: '\r\n',
    above: [],
    header: [
      'Fall',
      'Auge',
      'Datum',
      'Sphäre',
      'Zylinder',
      'Achse °',
      'Visus s.c.',
      'Visus c.c.',
      'IOL-Achse °',
      'HSA mm',
      'Tensio',
      'Termin',
    ],
    rows: byDay(eyes, ({ eye }) => eye.patient.site === 'North').map(northRow),
  };
}

function feetAcuity(acuity: Acuity | undefined): string {
  if (!acuity) return '';
  return 'word' in acuity ? acuity.word : `20/${Math.round(20 * 10 ** acuity.line)}`;
}

/** Plus cylinders without a sign, `plano` for a sphere of nothing, `DS` for a cylinder of nothing; the equivalent beside. */
function southRow({ eye, exam }: Row): string[] {
  const { refraction } = exam;
  return [
    eye.patient.code,
    side(eye, 'OD', 'OS'),
    monthName(exam.day),
    refraction?.sphere === 0 ? 'plano' : fixed(refraction?.sphere, 2, true),
    refraction?.cylinder === 0 ? 'DS' : fixed(refraction?.cylinder, 2),
    fixed(refraction?.axis, 0),
    feetAcuity(exam.uncorrected),
    feetAcuity(exam.corrected),
    fixed(exam.lensAxis, 0),
    fixed(refraction && equivalent(refraction), 2, true),
    refraction ? '6' : '',
  ];
}

/** The southern lane's export. */
export function laneSouth(eyes: readonly Eye[]): Sheet {
  return {
    file: 'lane-south.csv',
    encoding: 'utf-8',
    delimiter: ',',
    lineEnd: '\n',
    above: [],
    header: ['patient', 'eye', 'exam date', 'sph', '+cyl', 'axis', 'UCVA', 'BCVA', 'IOL axis', 'SE', 'lane m'],
    rows: byDay(eyes, ({ eye }) => eye.patient.site === 'South').map(southRow),
  };
}
