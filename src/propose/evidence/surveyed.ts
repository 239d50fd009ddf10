import type { Laterality } from '../../intake/laterality.js';
import { type EyeOfRow, eyeAt } from '../eye-rows.js';
import type { EyeReading } from '../eyes-of-file.js';
import type { RecognisedFile } from '../placed.js';

/** A file whose eyes can be told from row to row. */
export interface SurveyedFile {
  of: RecognisedFile;
  eyes: EyeReading;
  /** The eye of each row; undefined where the file names no patient or no eye. @param side  named by a header */
  eyeOf(side?: Laterality): EyeOfRow | undefined;
}

export function surveyed(of: RecognisedFile, eyes: EyeReading): SurveyedFile {
  return { of, eyes, eyeOf: (side) => eyeAt(of, eyes.words, side) };
}
