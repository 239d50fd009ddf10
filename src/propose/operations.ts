import { placedAs } from './eye-rows.js';
import type { RecognisedFile } from './placed.js';
import type { Term } from './vocabulary/vocabulary.js';

/** What is known of all files together. */
export interface AuditView {
  /** Whether some file has the date or year of operations. */
  dated: boolean;
  /** Whether some file lists operations. */
  operates: boolean;
}

/** Fields that speak of an operation so surely that their rows are operations. */
const sureOfSurgery: readonly Term[] = [
  'surgery_date',
  'surgery_year',
  'procedure',
  'technique',
  'incision_axis',
  'lens_model',
  'lens_power',
  'lens_cylinder',
  'lens_axis_intended',
  'target_se',
  'complication',
];

const isDated = (of: RecognisedFile): boolean =>
  placedAs(of, 'surgery_date') !== undefined || placedAs(of, 'surgery_year') !== undefined;

const isTimed = (of: RecognisedFile): boolean => ['exam_date', 'days', 'visit'].some((term) => placedAs(of, term));

const speaksOfSurgery = ({ placed }: RecognisedFile): boolean =>
  placed.some(({ term }) => sureOfSurgery.includes(term));

/** Whether the rows of a file are operations: examinations that repeat the lens beside their date are none. */
export function listsOperations(of: RecognisedFile, dated: boolean): boolean {
  return isDated(of) || (speaksOfSurgery(of) && !(dated && isTimed(of)));
}

/** What all files together know of operations. */
export function auditView(files: readonly RecognisedFile[]): AuditView {
  const dated = files.some(isDated);
  return { dated, operates: files.some((of) => listsOperations(of, dated)) };
}
