/** Rules that the slips are planted for. */
export type SlipRule =
  | 'sphere-range'
  | 'cylinder-range'
  | 'axis-range'
  | 'keratometry-range'
  | 'axial-length-range'
  | 'acuity-range'
  | 'axis-missing'
  | 'same-key-equal'
  | 'same-key-differs'
  | 'patient-missing'
  | 'eye-missing'
  | 'eye-both'
  | 'exam-without-surgery'
  | 'surgery-without-exam'
  | 'number-unreadable'
  | 'acuity-unreadable'
  | 'date-unreadable'
  | 'word-unknown';

/** One planted slip. `row` is the number a spreadsheet shows, `value` what stands there. */
export interface Slip {
  readonly rule: SlipRule;
  readonly file: string;
  readonly row: number;
  /** Header as written. */
  readonly column: string;
  readonly value: string;
  readonly how:
    | { readonly kind: 'mistyped'; readonly should: string }
    /** The row above once more, but for the value in `column`. */
    | { readonly kind: 'repeated' }
    /** A row that belongs to no operation. */
    | { readonly kind: 'stray'; readonly cells: readonly string[] }
    /** An operation whose eye stands in no other file. */
    | { readonly kind: 'unexamined' };
}

function mistyped(rule: SlipRule, file: string, row: number, column: string, value: string, should: string): Slip {
  return { rule, file, row, column, value, how: { kind: 'mistyped', should } };
}

const THEATRE = 'theatre-list.csv';
const NORTH = 'lane-north.csv';
const SOUTH = 'lane-south.csv';
const KERATOMETER = 'keratometer.csv';
const BIOMETRY = 'biometry.csv';

const STRAY = ['P9004', 'RA', '27.11.2025', '+0,25', '-0,50', '90', '0,8', '1,0', '', '12'];

/** Every slip of the sample. The generator refuses to plant one on a row that does not hold what it should. */
export const SLIPS: readonly Slip[] = [
  mistyped('sphere-range', NORTH, 63, 'Sphäre', '+75', '+0,75'),
  mistyped('sphere-range', SOUTH, 77, 'sph', '-50', '-0.50'),
  mistyped('cylinder-range', NORTH, 155, 'Zylinder', '-17,5', '-1,75'),
  mistyped('cylinder-range', SOUTH, 351, '+cyl', '100', '1.00'),
  mistyped('axis-range', NORTH, 237, 'Achse °', '195', '105'),
  mistyped('axis-range', SOUTH, 146, 'axis', '249', '149'),
  mistyped('axis-range', KERATOMETER, 304, 'A1', '257', '157'),
  mistyped('keratometry-range', KERATOMETER, 638, 'R1', '0.78', '7.80'),
  mistyped('keratometry-range', KERATOMETER, 122, 'R1', '78.0', '7.80'),
  mistyped('keratometry-range', BIOMETRY, 89, 'K2', '453.6', '45.36'),
  mistyped('axial-length-range', BIOMETRY, 143, 'AL', '245.4', '24.54'),
  mistyped('axial-length-range', BIOMETRY, 259, 'AL', '2.318', '23.18'),
  mistyped('acuity-range', NORTH, 406, 'Visus c.c.', '10', '1,0'),
  mistyped('acuity-range', SOUTH, 286, 'BCVA', '20/2', '20/20'),
  mistyped('axis-missing', NORTH, 308, 'Achse °', '', '115'),
  mistyped('axis-missing', NORTH, 314, 'Achse °', '', '155'),
  mistyped('axis-missing', SOUTH, 355, 'axis', '', '20'),
  { rule: 'same-key-equal', file: SOUTH, row: 429, column: 'patient', value: 'P1217', how: { kind: 'repeated' } },
  { rule: 'same-key-equal', file: KERATOMETER, row: 838, column: 'ID', value: 'P1283', how: { kind: 'repeated' } },
  { rule: 'same-key-differs', file: NORTH, row: 630, column: 'Sphäre', value: '+0,50', how: { kind: 'repeated' } },
  { rule: 'same-key-differs', file: KERATOMETER, row: 816, column: 'R2', value: '7.76', how: { kind: 'repeated' } },
  mistyped('patient-missing', NORTH, 561, 'Fall', '', 'P1061'),
  mistyped('eye-missing', SOUTH, 421, 'eye', '', 'OD'),
  mistyped('eye-missing', KERATOMETER, 303, 'Eye', '', 'L'),
  mistyped('eye-both', SOUTH, 215, 'eye', 'OU', 'OS'),
  {
    rule: 'exam-without-surgery',
    file: NORTH,
    row: 627,
    column: 'Fall',
    value: 'P9004',
    how: { kind: 'stray', cells: STRAY },
  },
  {
    rule: 'surgery-without-exam',
    file: THEATRE,
    row: 121,
    column: 'Case',
    value: 'P1457',
    how: { kind: 'unexamined' },
  },
  mistyped('number-unreadable', NORTH, 489, 'Sphäre', '+O,75', '+0,75'),
  mistyped('number-unreadable', THEATRE, 203, 'Predicted', '-O.23', '-0.23'),
  mistyped('acuity-unreadable', SOUTH, 426, 'UCVA', '2O/25', '20/25'),
  mistyped('date-unreadable', SOUTH, 349, 'exam date', '33 Jun 2025', '3 Jun 2025'),
  mistyped('word-unknown', THEATRE, 48, 'Method', 'N', 'M'),
];
