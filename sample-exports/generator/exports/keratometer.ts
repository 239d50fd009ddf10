import { isoDate } from '../calendar.js';
import { KERATOMETRIC } from '../devices.js';
import type { Eye } from '../eyes.js';
import { fixed, type Sheet } from '../sheet.js';
import { byDay, side } from './rows.js';

/** The keratometer's export: radii in millimetres, a time of day behind the date, two lines above the header. */
export function keratometerFile(eyes: readonly Eye[]): Sheet {
  const rows = byDay(eyes, ({ exam }) => exam.keratometry !== undefined);
  return {
    file: 'keratometer.csv',
    encoding: 'utf-8',
    delimiter: ',',
    lineEnd: '\n',
    above: ['Keratometer export', 'all examinations, radii in mm'],
    header: ['ID', 'Eye', 'Taken', 'R1', 'A1', 'R2', 'A2'],
    rows: rows.map(({ eye, exam }, i) => {
      const readings = exam.keratometry ? [exam.keratometry.first, exam.keratometry.second] : [];
      const time = `${String(8 + (i % 9)).padStart(2, '0')}:${String((7 * i) % 60).padStart(2, '0')}`;
      return [
        eye.patient.code,
        side(eye, 'R', 'L'),
        `${isoDate(exam.day)} ${time}`,
        ...readings.flatMap(({ power, meridian }) => [fixed(KERATOMETRIC / power, 2), fixed(meridian, 0)]),
      ];
    }),
  };
}
