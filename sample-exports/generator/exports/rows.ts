import type { Eye } from '../eyes.js';
import type { Examination } from '../follow-up.js';

export interface Row {
  readonly eye: Eye;
  readonly exam: Examination;
}

/** Rows as a lane or device piles them up: by day, then code, then right before left. */
export function byDay(eyes: readonly Eye[], keep: (row: Row) => boolean): Row[] {
  const rows = eyes.flatMap((eye) => eye.examinations.map((exam) => ({ eye, exam }))).filter(keep);
  return rows.sort((a, b) => a.exam.day - b.exam.day || compareEyes(a.eye, b.eye));
}

/** By code, then right before left. */
export function compareEyes(a: Eye, b: Eye): number {
  if (a.patient.code !== b.patient.code) return a.patient.code < b.patient.code ? -1 : 1;
  return Number(a.operation.laterality === 'left') - Number(b.operation.laterality === 'left');
}

/** One of two words, by side. */
export function side(eye: Eye, right: string, left: string): string {
  return eye.operation.laterality === 'right' ? right : left;
}
