import type { Fault } from '../../records/plan.js';

/** What is told of a fault, beside its place. */
export type Told = Pick<Fault, 'message' | 'advice' | 'lacks'>;

export const told = (message: string, ...advice: (string | undefined)[]): Told => ({
  message,
  advice: advice.filter((line) => line !== undefined),
});

/** A line of advice under its label, aligned with the others. */
const labelled =
  (label: string) =>
  (what: string | undefined): string | undefined =>
    what === undefined ? undefined : `${label.padEnd(10)}${what}`;
export const nearestIs = labelled('Nearest');
export const knownAre = (known: readonly string[]) =>
  known.length > 0 ? labelled('Known')(known.join(', ')) : undefined;
export const expectedIs = labelled('Expected');
export const exampleIs = labelled('Example');
export const doThis = labelled('Do');
export const write = labelled('Write');
export const atLine = (line: number, what: string) => labelled(`Line ${line}`)(what);

const listed = (words: readonly string[], last: string): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words[words.length - 1]}`;
export const oneOf = (values: readonly string[]): string => listed(values, 'or');
export const all = (values: readonly string[]): string => listed(values, 'and');

/** What is expected where a value stands; one phrase a form. */
export const expected = {
  text: 'a word or a text',
  mapping: 'keys with values below or in braces: { key: value }',
  columns: 'our field on the left, their header on the right',
  list: 'a list: lines that start with "- ", or [a, b]',
  oneOrMany: 'a word, or a list of words: [a, b]',
  pair: 'two values, the smaller first: [from, to]',
  edges: 'numbers from small to large: [22, 24.5, 26]',
  day: 'a day of the calendar written yyyy-mm-dd',
  dayOrYear: 'a day written yyyy-mm-dd, or a year',
  profileName: 'small letters a to z and digits, joined by -',
  twoFigures: 'at least two figures: [prediction-error, accuracy-shares]',
  name: 'small letters a to z, digits, - and _',
  acuity: 'a line of a chart: 20/40, 6/12 or 0.5',
  statistic: 'measure/statistic',
  eachEyeOrRatio: 'each-eye, or a number from 0.1 to 2',
  allNoneOrList: 'all, none, or a list',
  column: 'a header, or { column: header } with keys that say how it is read',
  columnWith: (wanted: readonly string[]) => `{ column: header } with ${all(wanted)}: neither has a default`,
  columnOrPosition: 'either column or position',
  clockWithView: 'view together with unit: clock, and only with it',
  indexOfDioptres: 'index only where the unit is D',
  oneOf,
  number: (from: number, to: number) => `a number from ${from} to ${to}, with a decimal point`,
  whole: (from: number, to: number) => `a whole number from ${from} to ${to}`,
  numberOrDay: 'a number with a decimal point, or a day written yyyy-mm-dd',
  plainNumber: 'a number with a decimal point',
} as const;
