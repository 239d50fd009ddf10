/** An invented eye: enough of it that exports of any layout can be written. */
export interface Eye {
  patient: string;
  side: 'right' | 'left';
  /** yyyy-mm-dd, a working day. */
  operated: string;
  power: string;
  /** Corneal powers, D, and the meridian of the steeper one. */
  flat: number;
  steep: number;
  steepAxis: number;
  /** Refraction after surgery in minus notation: the axis is 90° from the steep meridian. */
  sphere: number;
  cylinder: number;
  axis: number;
  target: number;
}

const wrap = (axis: number): number => ((axis + 179) % 180) + 1;

/** Mondays of 2025, of which days beyond the twelfth settle the order of day and month. */
const mondays = ['2025-01-13', '2025-02-03', '2025-03-17', '2025-04-28', '2025-05-12', '2025-06-16'];

/** So many invented eyes, one a patient, right and left in turn; every number follows from its place. */
export function clinic(eyes: number): readonly Eye[] {
  return Array.from({ length: eyes }, (_, i) => {
    const steepAxis = wrap(80 + 7 * (i % 5));
    const cylinder = -1 - 0.25 * (i % 3);
    const target = -0.25 * (i % 2);
    return {
      patient: `Q${100 + i}`,
      side: i % 2 === 0 ? 'right' : 'left',
      operated: mondays[i % mondays.length] as string,
      power: (19 + 0.5 * (i % 9)).toFixed(1),
      flat: 42.5 + 0.1 * (i % 7),
      steep: 43.75 + 0.1 * (i % 7),
      steepAxis,
      sphere: target - cylinder / 2,
      cylinder,
      axis: wrap(steepAxis + 90),
      target,
    };
  });
}

/** A date so many days later. */
export function later(date: string, days: number): string {
  const [year, month, day] = date.split('-').map(Number) as [number, number, number];
  return new Date(Date.UTC(year, month - 1, day + days)).toISOString().slice(0, 10);
}

/** CSV text of a header and one row an eye. */
export function csv(
  header: string,
  eyes: readonly Eye[],
  row: (eye: Eye, at: number) => readonly (string | number)[],
): string {
  return `${[header, ...eyes.map((eye, at) => row(eye, at).join(','))].join('\n')}\n`;
}

export const letter = ({ side }: Eye): string => (side === 'right' ? 'R' : 'L');

/** A list of operations. */
export function theatreList(eyes: readonly Eye[]): string {
  return csv('ID,Eye,Op date,Lens,Power,Aim', eyes, (eye) => [
    eye.patient,
    letter(eye),
    eye.operated,
    'A1',
    eye.power,
    eye.target,
  ]);
}

/** A keratometer's export before surgery. */
export function keratometer(eyes: readonly Eye[]): string {
  return csv('ID,Eye,Date,K1,A1,K2,A2', eyes, (eye) => [
    eye.patient,
    letter(eye),
    later(eye.operated, -9),
    eye.flat.toFixed(2),
    eye.axis,
    eye.steep.toFixed(2),
    eye.steepAxis,
  ]);
}
