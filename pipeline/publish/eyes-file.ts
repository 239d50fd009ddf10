import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { Say } from '../io.js';
import { spreadsheetFile } from './csv-file.js';
import { eyeColumns } from './eye-columns.js';
import type { OutputFile } from './replace.js';

/** Above this many eyes a spreadsheet is of little use; audit.yaml can ask for the file all the same. */
const mostEyes = 100_000;

/** eyes.csv, one row an eye in canonical order; no file where `outputs.eye_rows` does not want one. */
export function eyesFile(path: string, derived: Derived, { outputs }: Plan, say: Say): readonly OutputFile[] {
  const eyes = derived.eyes.numRows();
  const wanted = outputs.eye_rows === 'always' || (outputs.eye_rows === 'auto' && eyes <= mostEyes);
  if (!wanted) return [];
  const columns = eyeColumns(derived, outputs.spreadsheet);
  function* rows(): Generator<readonly string[]> {
    for (let eye = 0; eye < eyes; eye++) yield columns.map(({ cell }) => cell(eye));
  }
  return [
    spreadsheetFile(
      path,
      columns.map(({ header }) => header),
      rows(),
      outputs.spreadsheet,
      (done) => say('list', Math.min(done, eyes), eyes),
    ),
  ];
}
