import { type DateOrder, dateInOrder, splitDate } from '../../intake/date.js';
import { fieldNamed } from '../../plan/fields.js';
import type { Days } from '../../units.js';
import { propose as words } from '../../words/en/propose.js';
import { type Choice, likelierOf } from '../choices.js';
import type { RecognisedFile } from '../placed.js';

const orders = ['day-first', 'month-first'] as const;

/** Whether a day is a Saturday or Sunday; 1970-01-01 was a Thursday. */
const isWeekend = (day: Days): boolean => [0, 6].includes((((day + 4) % 7) + 7) % 7);

/** Distinct dates of the file that both orders read as different days. */
function openDates({ placed, profiles }: RecognisedFile): readonly (readonly [dayFirst: Days, monthFirst: Days])[] {
  const dated = placed.filter(({ term }) => fieldNamed(term)?.type === 'date');
  return dated.flatMap(({ index }) =>
    (profiles[index]?.words ?? []).flatMap(({ word }) => {
      const written = splitDate(word);
      const [day, month] = orders.map((order) => written && dateInOrder(written, order));
      return day === undefined || month === undefined || day === month ? [] : [[day, month] as const];
    }),
  );
}

/** The order of the other files whose dates are all digits, where it is one. */
function orderElsewhere(others: readonly RecognisedFile[]): DateOrder | undefined {
  const known = new Set(
    others.map(({ file }) => file.dateOrder).filter((order) => order === 'day-first' || order === 'month-first'),
  );
  const [order] = known;
  return known.size === 1 ? order : undefined;
}

/**
 * Whether dates that may be read both ways name the day or the month first: clinics close at weekends, and files of one
 * clinic are written alike.
 */
export function dateOrderChoice(of: RecognisedFile, others: readonly RecognisedFile[]): Choice {
  const dates = openDates(of);
  const atWeekend = [
    dates.filter(([day]) => isWeekend(day)).length,
    dates.filter(([, month]) => isWeekend(month)).length,
  ] as const;
  // A date speaks where one reading falls on a weekend and the other does not.
  const fits = {
    'day-first': dates.filter(([day, month]) => !isWeekend(day) && isWeekend(month)).length,
    'month-first': dates.filter(([day, month]) => isWeekend(day) && !isWeekend(month)).length,
  };
  const elsewhere = orderElsewhere(others);
  const evidence = (order: (typeof orders)[number], at: number): string => {
    const parts = [
      words.evidence.weekends(atWeekend[at] ?? 0, dates.length),
      ...(order === elsewhere ? [words.evidence.otherFiles] : []),
    ];
    return parts.join('; ');
  };
  return {
    id: `date-order ${of.file.file}`,
    kind: 'date-order',
    label: of.file.label,
    header: '',
    found: words.found.dateOrder,
    options: orders.map((order, at) => ({ value: order, evidence: evidence(order, at) })),
    likelier: likelierOf(fits) ?? elsewhere,
  };
}
