import { lineOfLogMAR } from '../acuity/lines.js';
import { logMAROfFraction } from '../acuity/log-mar.js';
import type { Condition } from '../records/plan.js';
import { millionths } from '../units.js';
import { type Bound, boundOf } from './bound.js';

/** One value of one eye as a condition sees it; several where a cell holds several codes. Undefined: missing. */
export type Value = string | number | readonly string[] | undefined;

/** Looks a field up: its value for one eye, at the examination that `at` names. */
export type Lookup = (field: string, at: string | undefined) => (eye: number) => Value;

/** A text as a number, or as days since 1970-01-01 where it is compared with dates; undefined where it is neither. */
export type ReadText = (text: string, asDate: boolean) => number | undefined;

/** True or false, undefined where nothing can be said. */
type Test = (value: Exclude<Value, undefined>) => boolean | undefined;

const folded = (value: string): string => value.trim().toLowerCase();

function listOf(wanted: Condition['value']): readonly (string | number)[] {
  return typeof wanted === 'object' ? wanted : [wanted];
}

/** Equal to one of the values wanted: numbers and days by size, texts without case and outer blanks. */
function equals(wanted: Condition['value']): (value: Exclude<Value, undefined>) => boolean {
  const list = listOf(wanted);
  const texts = list.map((one) => folded(String(one)));
  const bounds = list.map(boundOf);
  return (value) => {
    if (typeof value === 'number') return bounds.some((bound) => bound !== undefined && contains(bound, value));
    return (typeof value === 'string' ? [value] : value).some((one) => texts.includes(folded(one)));
  };
}

function contains({ first, last }: Bound, value: number): boolean {
  return millionths(value) >= millionths(first) && millionths(value) <= millionths(last);
}

/** How each ordering compares a number with its limits; both ends of `between` are inside. */
const orders = {
  below: (value: number, low: Bound) => value < millionths(low.first),
  at_most: (value: number, low: Bound) => value <= millionths(low.last),
  above: (value: number, low: Bound) => value > millionths(low.last),
  at_least: (value: number, low: Bound) => value >= millionths(low.first),
  between: (value: number, low: Bound, high: Bound) => value >= millionths(low.first) && value <= millionths(high.last),
} as const;

function ordered(operator: keyof typeof orders, wanted: Condition['value'], read: ReadText): Test {
  const bounds = listOf(wanted).map(boundOf);
  const [low, high = low] = bounds;
  if (!low || !high) throw new RangeError(`condition: ${wanted} has no order; expected a number or a date`);
  return (value) => {
    const number = typeof value === 'string' ? read(value, low.isDate) : value;
    return typeof number === 'number' ? orders[operator](millionths(number), low, high) : undefined;
  };
}

/** The line of an acuity as written: a fraction, or a decimal. */
function lineOf(written: Condition['value']): number {
  const [numerator, denominator = 1] = String(written).split('/').map(Number);
  return lineOfLogMAR(logMAROfFraction(numerator as number, denominator));
}

function testOf({ operator, value: wanted }: Condition, read: ReadText): Test {
  switch (operator) {
    case 'is':
      return equals(wanted);
    case 'is_not':
      return (value) => !equals(wanted)(value);
    case 'worse_than':
      return (value) => lineOfLogMAR(Number(value)) > lineOf(wanted);
    case 'better_than':
      return (value) => lineOfLogMAR(Number(value)) < lineOf(wanted);
    default:
      return ordered(operator, wanted, read);
  }
}

/**
 * A condition as a question to one eye.
 *
 * @param lookup  where values come from
 * @param read    how texts are read where they are compared by size; without it they have none
 * @returns true or false; undefined where the value is missing, so that nothing can be said. `is: missing` and
 *          `is: present` ask about just that and are always decided.
 */
export function conditionOn(
  condition: Condition,
  lookup: Lookup,
  read: ReadText = () => undefined,
): (eye: number) => boolean | undefined {
  const looked = lookup(condition.where, condition.at);
  const asksPresence = condition.value === 'missing' || condition.value === 'present';
  const wanted = (condition.value === 'present') === (condition.operator === 'is');
  const test = asksPresence ? undefined : testOf(condition, read);
  const others = condition.and.map((other) => conditionOn(other, lookup, read));
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
