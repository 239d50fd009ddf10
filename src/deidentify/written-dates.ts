import { daysFromCalendar } from '../intake/calendar.js';
import { type DateOrder, parseDate } from '../intake/date.js';
import { type DateOrderJudgement, judgeDateOrder } from '../intake/date-order.js';
import { columnOf, type ExportedFile } from '../propose/exported.js';
import type { Days } from '../units.js';
import type { Role } from './roles.js';

/** What a cell of dates says. */
export type WrittenDay = Days | 'blank' | 'unread';

/** Nothing that an audit is about happened before: an older date is a birth in the wrong cell. A judgement. */
const firstDay = daysFromCalendar({ year: 1990, month: 1, day: 1 }) as Days;

/**
 * The dates of a column, once a word.
 *
 * @param births  whether they are dates of birth; elsewhere such a date is not read: days from surgery would give it away
 */
export function daysOfRows(
  file: ExportedFile,
  index: number,
  order: DateOrder,
  births = false,
): (row: number) => WrittenDay {
  const { words, codes } = columnOf(file, index);
  const days = words.map((word): WrittenDay => {
    if (file.isMissing(word)) return 'blank';
    const day = parseDate(word, order);
    return day === undefined || (day < firstDay && !births) ? 'unread' : day;
  });
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
