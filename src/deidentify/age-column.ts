import type { Days } from '../units.js';
import { ageOn, ageText, birthBefore } from './age.js';
import type { CopiedCells } from './cells.js';
import { type CopyColumn, rowsThat, type TimeContext } from './dated-columns.js';
import { removed } from './harmless.js';
import { eyesOfRows } from './people.js';
import { daysOfRows, type WrittenDay } from './written-dates.js';

/** Day of the operation that a row is about: its own date of surgery, else the first operation of its eye or patient. */
function surgeryOfRows({ of, roles, dateOrder, patients, zeros }: TimeContext): (row: number) => Days | undefined {
  const index = roles.findIndex(({ kind }) => kind === 'surgery-date');
  const own = index < 0 ? undefined : daysOfRows(of.file, index, dateOrder);
  const eyes = eyesOfRows(of);
  return (row) => {
    const day = own?.(row);
    if (typeof day === 'number') return day;
    const patient = patients[row] as number;
    if (patient < 0) return undefined;
    return eyes ? zeros.ofEye(patient, eyes(row)) : zeros.ofPatient(patient);
  };
}

function ageAtSurgery(birth: WrittenDay, surgery: Days | undefined): string {
  if (typeof birth !== 'number') return birth === 'unread' ? removed : '';
  const born = surgery === undefined ? undefined : birthBefore(birth, surgery);
  const years = surgery === undefined || born === undefined ? undefined : ageOn(born, surgery);
  return years === undefined ? '' : ageText(years);
}

/**
 * Age at surgery, worked out from a column of births. Where that gives none, a column of ages in the same file does.
 *
 * @param birth    header index of the births
 * @param written  header and copied cells of the ages; undefined where the file has none
 */
export function ageColumn(
  context: TimeContext,
  birth: number,
  written: (CopiedCells & { header: string }) | undefined,
): CopyColumn {
  const { of, dateOrder } = context;
  const surgery = surgeryOfRows(context);
  const born = daysOfRows(of.file, birth, dateOrder, true);
  const cell = (row: number): string => ageAtSurgery(born(row), surgery(row)) || (written?.cell(row) ?? '');
  return {
    header: written?.header ?? 'age',
    cell,
    removed: rowsThat(of.file.rows, (row) => cell(row) === removed),
    withoutSurgery: rowsThat(of.file.rows, (row) => typeof born(row) === 'number' && cell(row) === ''),
  };
}
