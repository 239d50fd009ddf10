import { isoDate } from '../calendar.js';
import type { Eye } from '../eyes.js';
import type { Examination } from '../follow-up.js';
import { fixed, type Sheet } from '../sheet.js';
import { byDay, side } from './rows.js';

/** The southern site counts cells before surgery and at three months. */
function isCounted({ visit }: Examination, { patient }: Eye): boolean {
  return patient.site === 'South' && visit !== '1 month';
}

/** The endothelial microscope's export. */
export function endotheliumFile(eyes: readonly Eye[]): Sheet {
  const rows = byDay(eyes, ({ eye, exam }) => isCounted(exam, eye));
  return {
    file: 'endothelium.csv',
    encoding: 'utf-8',
    delimiter: ',',
    lineEnd: '\n',
    above: [],
    header: ['Patient', 'Eye', 'Date', 'Cells/mm²'],
    rows: rows.map(({ eye, exam }) => [
      eye.patient.code,
      side(eye, 'R', 'L'),
      isoDate(exam.day),
      fixed(eye.further.cells[exam.visit === 'before' ? 0 : 1], 0),
    ]),
  };
}
