import { z } from 'zod';
import { daysFromCalendar } from '../intake/calendar.js';
import { plan as words } from '../words/en/plan.js';

const { expected } = words;

/** YAML editors read 012 and 2025 as numbers; where a word is expected all of them are words to us. */
const anyScalar = { type: ['string', 'number', 'boolean'] } as unknown as Record<string, unknown>;

/** A text that is not blank. The message of every schema here is the form expected. */
export const text = z.string({ error: expected.text }).trim().min(1, expected.text).meta(anyScalar);

/** A text made to a pattern. */
export function patterned(pattern: RegExp, form: string) {
  return z.string({ error: form }).trim().regex(pattern, form);
}

const numberForm = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;

/** The number that a text writes with a decimal point; undefined where it writes none. */
export function writtenNumber(value: string): number | undefined {
  const plain = value.trim().replace('\u2212', '-');
  return numberForm.test(plain) ? Number(plain) : undefined;
}

const toNumber = (value: unknown): unknown => (typeof value === 'string' ? (writtenNumber(value) ?? value) : value);

/** A number between two limits, both included. */
export function number(from: number, to: number) {
  const error = expected.number(from, to);
  return z.preprocess(toNumber, z.number({ error }).min(from, error).max(to, error));
}

/** A whole number between two limits, both included. */
export function whole(from: number, to: number) {
  const error = expected.whole(from, to);
  return z.preprocess(toNumber, z.int({ error }).min(from, error).max(to, error));
}

/** One single number. */
export function exactly<const N extends number>(value: N) {
  return z.preprocess(toNumber, z.literal(value, { error: expected.oneOf([String(value)]) }));
}

/** Any number that a table of ours may hold. */
export const anyNumber = number(-1e6, 1e6);

/** Two numbers, the smaller first. */
export function pair<T extends z.ZodType<number>>(one: T) {
  const ends = z.tuple([one, one], { error: expected.pair });
  return ends.refine(([from, to]) => (from as number) <= (to as number), expected.pair);
}

/** One of few words. */
export function choice<const T extends readonly string[]>(values: T) {
  return z.enum(values, { error: expected.oneOf(values) });
}

const spelledYesNo: Readonly<Record<string, string>> = { true: 'yes', false: 'no' };

/** `yes` or `no`; `true` and `false` are taken for them. */
export const yesNo = z.preprocess(
  (value) => (typeof value === 'string' ? (spelledYesNo[value] ?? value) : value),
  choice(['yes', 'no']),
);

const dayForm = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Whether a text is a day of the calendar, written yyyy-mm-dd. */
export function isDay(value: string): boolean {
  const [, year, month, day] = (dayForm.exec(value) ?? []).map(Number);
  if (year === undefined || month === undefined || day === undefined) return false;
  return daysFromCalendar({ year, month, day }) !== undefined;
}

export const isYear = (value: string): boolean => /^(19|20|21)\d\d$/.test(value);

export const day = z.string({ error: expected.day }).trim().refine(isDay, expected.day);

export const dayOrYear = z
  .string({ error: expected.dayOrYear })
  .trim()
  .refine((value) => isDay(value) || isYear(value), expected.dayOrYear)
  .meta(anyScalar);

export function list<T extends z.ZodType>(item: T) {
  return z.array(item, { error: expected.list });
}

/** What a union's alternatives had to say of a value that fits none of them. */
interface UnionIssue {
  input?: unknown;
  errors?: readonly (readonly { message: string }[])[];
}

/** A single one, or a list of at least so many; a list either way. */
export function oneOrMany<T extends z.ZodType>(item: T, least: 0 | 1 = 1) {
  const several = list(item).min(least, expected.oneOrMany);
  const error = ({ input, errors }: UnionIssue) =>
    typeof input === 'string' ? (errors?.[0]?.[0]?.message ?? expected.oneOrMany) : expected.oneOrMany;
  return z
    .union([item, several], { error: error as (issue: object) => string })
    .transform((value) => (Array.isArray(value) ? value : [value]) as z.output<T>[]);
}

/** A word, or a list of words; none where left out. */
export const wordList = (description: string) => oneOrMany(text, 0).describe(description);

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Known keys with nothing behind the colon count as left out. */
function withoutEmpty(value: unknown, known: object): unknown {
  if (!isObject(value)) return value;
  return Object.fromEntries(
    Object.entries(value).filter(([key, inner]) => inner !== null || !Object.hasOwn(known, key)),
  );
}

/** A mapping with these keys and no other. @param form  what is expected where something else stands */
export function section<T extends z.ZodRawShape>(shape: T, form: string = expected.mapping) {
  const error = (issue: { code?: string }) => (issue.code === 'invalid_type' ? form : undefined);
  return z.preprocess((value) => withoutEmpty(value, shape), z.strictObject(shape, { error }));
}

/** A mapping whose keys are names of the reader's choice. */
export function named<T extends z.ZodType>(value: T, keyForm: RegExp = /\S/, form: string = expected.text) {
  return z.record(z.string().regex(keyForm, form), value, { error: expected.mapping });
}
