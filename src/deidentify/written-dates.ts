import { type DateOrder, parseDate } from '../intake/date.js';
import { type DateOrderJudgement, judgeDateOrder } from '../intake/date-order.js';
import { columnOf, type ExportedFile } from '../propose/exported.js';
import type { Days } from '../units.js';
import type { Role } from './roles.js';

/** What a cell of dates says. */
export type WrittenDay = Days | 'blank' | 'unread';

/** The dates of a column, once a word. */
export function daysOfRows(file: ExportedFile, index: number, order: DateOrder): (row: number) => WrittenDay {
  const { words, codes } = columnOf(file, index);
  const days = words.map((word): WrittenDay => (file.isMissing(word) ? 'blank' : (parseDate(word, order) ?? 'unread')));
  return (row) => days[codes[row] as number] as WrittenDay;
}

const isDated = ({ kind }: Role): boolean => kind === 'surgery-date' || kind === 'date' || kind === 'birth';

/**
 * Order of day, month and year of a file. Births are asked too where the other dates leave it open: 13/05/1948 tells.
 *
 * @param roles  of its columns
 */
export function dateOrderOf(file: ExportedFile, roles: readonly Role[]): DateOrderJudgement {
  const wordsOf = (births: boolean): readonly string[] =>
    roles.flatMap((role, index) => {
      if (!isDated(role) || (role.kind === 'birth' && !births)) return [];
      return columnOf(file, index).words.filter((word) => !file.isMissing(word));
    });
  const all = judgeDateOrder(wordsOf(true));
  return all.order === undefined || all.order === 'none' ? judgeAgain(all, wordsOf(false)) : all;
}

function judgeAgain(all: DateOrderJudgement, withoutBirths: readonly string[]): DateOrderJudgement {
  const again = judgeDateOrder(withoutBirths);
  return again.order === undefined || again.order === 'none' ? all : again;
}
