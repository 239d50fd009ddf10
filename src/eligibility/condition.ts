import { lineOfLogMAR } from '../acuity/lines.js';
import { logMAROfFraction } from '../acuity/log-mar.js';
import { parseDate } from '../intake/date.js';
import type { Condition } from '../records/plan.js';
import { millionths } from '../units.js';

/** One value of one eye as a condition sees it. Undefined: missing. */
export type Value = string | number | undefined;

/** Looks a field up: its value for one eye, at the examination that `at` names. */
export type Lookup = (field: string, at: string | undefined) => (eye: number) => Value;

const folded = (value: string | number): string => String(value).trim().toLowerCase();

/** A number, or a date as days since 1970-01-01, in millionths. */
function comparable(value: string | number): number {
  return millionths(typeof value === 'number' ? value : (parseDate(value, 'year-first') ?? Number(value)));
}

/** The line of an acuity as written: a fraction, or a decimal. */
function lineOf(written: string | number): number {
  const [numerator, denominator = 1] = String(written).split('/').map(Number);
  return lineOfLogMAR(logMAROfFraction(numerator as number, denominator));
}

type Test = (value: string | number) => boolean;

function equals(wanted: Condition['value']): Test {
  const list = (Array.isArray(wanted) ? wanted : [wanted]).map(folded);
  return (value) => list.includes(folded(value));
}

/** How each operator compares a value that is present; both ends of `between` are inside. */
function testOf({ operator, value: wanted }: Condition): Test {
  const [first, second] = (Array.isArray(wanted) ? wanted : [wanted]) as (string | number)[];
  const low = first as string | number;
  const number = (compare: (value: number) => boolean): Test => {
    return (value) => compare(comparable(value));
  };
  switch (operator) {
    case 'is':
      return equals(wanted);
    case 'is_not':
      return (value) => !equals(wanted)(value);
    case 'below':
      return number((value) => value < comparable(low));
    case 'at_most':
      return number((value) => value <= comparable(low));
    case 'above':
      return number((value) => value > comparable(low));
    case 'at_least':
      return number((value) => value >= comparable(low));
    case 'between':
      return number((value) => value >= comparable(low) && value <= comparable(second as string | number));
    case 'worse_than':
      return (value) => lineOfLogMAR(Number(value)) > lineOf(low);
    case 'better_than':
      return (value) => lineOfLogMAR(Number(value)) < lineOf(low);
  }
}

/**
 * A condition as a question to one eye.
 *
 * @param lookup  where values come from
 * @returns true or false; undefined where the value is missing, so that nothing can be said. `is: missing` and
 *          `is: present` ask about just that and are always decided.
 */
export function conditionOn(condition: Condition, lookup: Lookup): (eye: number) => boolean | undefined {
  const looked = lookup(condition.where, condition.at);
  const asksPresence = condition.value === 'missing' || condition.value === 'present';
  const wanted = (condition.value === 'present') === (condition.operator === 'is');
  const test = asksPresence ? undefined : testOf(condition);
  const others = condition.and.map((other) => conditionOn(other, lookup));
  const own = (eye: number): boolean | undefined => {
    const value = looked(eye);
    if (!test) return (value !== undefined) === wanted;
    return value === undefined ? undefined : test(value);
  };
  return (eye) => {
    const answers = [own(eye), ...others.map((other) => other(eye))];
    if (answers.includes(false)) return false;
    return answers.includes(undefined) ? undefined : true;
  };
}
