import { type DateOrder, dateInOrder, splitDate, type WrittenDate } from './date.js';

/** What the dates of a file say about their order. */
export type DateOrderJudgement =
  | { order: DateOrder | 'none' }
  /**
   * undecided      every date may be read in two orders, and they differ; `examples` has one such date
   * contradictory  no order reads all dates; `examples` has two dates that disagree
   */
  | { order: undefined; doubt: 'undecided' | 'contradictory'; examples: readonly string[] };

interface Dated {
  word: string;
  date: WrittenDate;
}

/**
 * Judges the order of day, month and year from all distinct words of a file. Nothing is guessed: 05/06/2024 in every
 * row stays undecided.
 *
 * Dates with a four-digit year in front or a month's name explain themselves and decide nothing; what no order can
 * read (31.02.2024) is left to be found cell by cell. Among dates of three two-digit numbers the year is the outer
 * number that takes at most half as many values as the other.
 *
 * @param words  distinct words of the columns that hold dates, as written
 * @returns the order ('year-first' where only such dates occur, 'none' where there are none), or the doubt
 * @source calendar arithmetic; the rule for two-digit years is a judgement
 * @example judgeDateOrder(['05/06/2024', '13/06/2024']) // { order: 'day-first' }
 */
export function judgeDateOrder(words: Iterable<string>): DateOrderJudgement {
  const dates = datesAmong(words);
  const asking = dates.filter(asksForOrder);
  if (asking.length === 0) return { order: dates.length === 0 ? 'none' : 'year-first' };
  const candidates = possibleOrders(asking);
  const readable = asking.filter(({ date }) => candidates.some((order) => dateInOrder(date, order) !== undefined));
  return verdict(readable, candidates);
}

function datesAmong(words: Iterable<string>): readonly Dated[] {
  const dates: Dated[] = [];
  for (const word of words) {
    const date = splitDate(word);
    if (date) dates.push({ word, date });
  }
  return dates;
}

const asksForOrder = ({ date }: Dated): boolean => date.monthAt === undefined && date.numbers[0].length <= 2;

/**
 * The orders that dates can be in, of which audit.yaml may name one: a year of four digits at the end is never in front.
 *
 * @example dateOrdersOf(['05/06/2024']) // ['day-first', 'month-first']
 */
export function dateOrdersOf(words: Iterable<string>): readonly DateOrder[] {
  return possibleOrders(datesAmong(words).filter(asksForOrder));
}

function possibleOrders(asking: readonly Dated[]): DateOrder[] {
  if (asking.some(({ date }) => date.numbers[2].length > 2)) return ['day-first', 'month-first'];
  const first = new Set(asking.map(({ date }) => Number(date.numbers[0]))).size;
  const last = new Set(asking.map(({ date }) => Number(date.numbers[2]))).size;
  if (2 * last <= first) return ['day-first', 'month-first'];
  return 2 * first <= last ? ['year-first'] : ['day-first', 'month-first', 'year-first'];
}

function verdict(readable: readonly Dated[], candidates: readonly DateOrder[]): DateOrderJudgement {
  const whole = candidates.filter((order) => readable.every(({ date }) => dateInOrder(date, order) !== undefined));
  const [order, ...others] = whole;
  if (order === undefined) return { order, doubt: 'contradictory', examples: disagreement(readable, candidates) };
  const differs = readable.find(({ date }) =>
    others.some((other) => dateInOrder(date, other) !== dateInOrder(date, order)),
  );
  return differs ? { order: undefined, doubt: 'undecided', examples: [differs.word] } : { order };
}

function disagreement(readable: readonly Dated[], candidates: readonly DateOrder[]): string[] {
  return candidates.flatMap((order) => {
    const against = readable.find(({ date }) => dateInOrder(date, order) === undefined);
    return against ? [against.word] : [];
  });
}
