import { type Audit, auditOf, type Files } from './audit.js';

/** One eye with a toric lens, every cell of its exports; what is left out is blank. */
export interface ToricEye {
  patient: string;
  side: 'R' | 'L';
  /** Refraction one month after, spectacle plane. */
  sphere: number;
  cylinder: number;
  axis?: number | undefined;
  /** Keratometry: flat power, cylinder, steep meridian. */
  before?: readonly [flat: number, cylinder: number, steep: number] | undefined;
  after?: readonly [flat: number, cylinder: number, steep: number] | undefined;
  device?: string | undefined;
  incision?: number | string | undefined;
  width?: number | undefined;
  technique?: string | undefined;
  power?: number | undefined;
  label?: number | undefined;
  intended?: number | undefined;
  end?: number | undefined;
  observed?: number | undefined;
  length?: number | undefined;
  predicted?: number | undefined;
  residual?: number | undefined;
  residualAxis?: number | undefined;
  /** Day after surgery on which the lens was turned again, and the axis seen before. */
  turnedAgain?: { day: number; seen: number; on: number } | undefined;
  /** Axis seen on the day of surgery. */
  dayZero?: number | undefined;
  total?: readonly [cylinder: number, steep: number] | undefined;
}

const surgery = new Date('2025-01-10');
const date = (day: number): string => new Date(surgery.getTime() + day * 86_400_000).toISOString().slice(0, 10);
const followUp = 41;
const line = (cells: readonly (string | number | undefined)[]): string => cells.map((cell) => cell ?? '').join(',');
const sheet = (head: string, lines: readonly string[]): string => [head, ...lines].join('\n');
const across = (meridian: number): number => (meridian > 90 ? meridian - 90 : meridian + 90);

/** The four exports of a series of such eyes. */
export function toricFiles(eyes: readonly ToricEye[]): Files {
  const keratometry = (eye: ToricEye, day: number, of: ToricEye['before'], device: string): readonly string[] =>
    of
      ? [line([eye.patient, eye.side, date(day), of[0], across(of[2]), (of[0] + of[1]).toFixed(2), of[2], device])]
      : [];
  const turned = eyes.filter((eye) => eye.turnedAgain !== undefined);
  return {
    'theatre.csv': sheet(
      'Case,Side,Date,Kind,Method,Incision,Width,Lens,Power,Cyl,Meant,End,Length,Predicted,ResCyl,ResAxis',
      [
        ...eyes.map((eye) =>
          line([
            ...[eye.patient, eye.side, date(0), 'phaco', eye.technique ?? 'manual', eye.incision, eye.width, 'T'],
            ...[eye.power ?? 21, eye.label, eye.intended, eye.end, eye.length ?? 23.5, eye.predicted ?? 0],
            ...[eye.residual, eye.residualAxis],
          ]),
        ),
        ...turned.map((eye) => line([eye.patient, eye.side, date(eye.turnedAgain?.day ?? 0), 'turned'])),
      ],
    ),
    'lane.csv': sheet('Case,Side,Date,Sph,Cyl,Axis,Marks', [
      ...eyes.flatMap(({ patient, side, dayZero }) =>
        dayZero === undefined ? [] : [line([patient, side, date(0), '', '', '', dayZero])],
      ),
      ...turned.map(({ patient, side, turnedAgain }) =>
        line([patient, side, date(turnedAgain?.on ?? 0), '', '', '', turnedAgain?.seen]),
      ),
      ...eyes.map((eye) =>
        line([eye.patient, eye.side, date(followUp), eye.sphere, eye.cylinder, eye.axis, eye.observed]),
      ),
    ]),
    'keratometer.csv': sheet('Case,Side,Date,K1,A1,K2,A2,Device', [
      ...eyes.flatMap((eye) => keratometry(eye, -8, eye.before, 'one')),
      ...eyes.flatMap((eye) => keratometry(eye, followUp, eye.after, eye.device ?? 'one')),
    ]),
    'tomographer.csv': sheet('Case,Side,Date,Total,Steep', [
      line(['none', 'R', date(-8), '', '']),
      ...eyes.flatMap(({ patient, side, total }) => (total ? [line([patient, side, date(-8), ...total])] : [])),
    ]),
  };
}

/** audit.yaml of such exports; `more` stands at its end, `incision` is how the column of incisions is read. */
export function toricText({
  more = '',
  incision = 'Incision',
  notation = 'signed',
  total = false,
  plane = 'corneal',
}: {
  more?: string;
  incision?: string;
  notation?: string;
  total?: boolean;
  plane?: string;
} = {}): string {
  const tomographer = `
  - file: tomographer.csv
    holds: exam
    columns: { patient: Case, eye: Side, exam_date: Date, total_corneal_cylinder: Total, total_corneal_axis: Steep }`;
  return `
format: 1
title: Made-up toric eyes
name: toric-series
data_until: 2025-12-31
sources:
  - file: theatre.csv
    holds: surgery
    columns:
      patient: Case
      eye: Side
      surgery_date: Date
      procedure: { column: Kind, words: { lens: [phaco], reposition: [turned] } }
      technique: Method
      incision_axis: ${incision}
      incision_width: Width
      lens_model: Lens
      lens_power: Power
      lens_cylinder: Cyl
      lens_axis_intended: Meant
      lens_axis_end: End
      axial_length: Length
      predicted_se: Predicted
      predicted_cylinder: { column: ResCyl, plane: ${plane}, notation: plus }
      predicted_axis: ResAxis
  - file: lane.csv
    holds: exam
    columns:
      patient: Case
      eye: Side
      exam_date: Date
      sphere: Sph
      cylinder: { column: Cyl, notation: ${notation} }
      axis: Axis
      lens_axis: Marks
    constants: { vertex_mm: 12 }
  - file: keratometer.csv
    holds: exam
    columns: { patient: Case, eye: Side, exam_date: Date, k1: K1, k1_axis: A1, k2: K2, k2_axis: A2, device: Device }${total ? tomographer : ''}
follow_up:
  visits:
    - { name: 1 month, days: [21, 60] }
${more}`;
}

/** Such eyes through the whole audit. */
export function toricAudit(eyes: readonly ToricEye[], options: Parameters<typeof toricText>[0] = {}): Promise<Audit> {
  return auditOf(toricText(options), toricFiles(eyes));
}
