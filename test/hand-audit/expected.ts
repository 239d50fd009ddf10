import { readFileSync } from 'node:fs';

/** One number of the sheet, named as results.csv names it. Counts of the eye flow have no `n` of their own. */
export interface ExpectedNumber {
  readonly measure: string;
  readonly group: string;
  readonly statistic: string;
  readonly value: number;
  /** Limits of the interval; absent where there is none, or where the sheet leaves it out. */
  readonly low?: number;
  readonly high?: number;
  /** Eyes, and patients with at least one of them. */
  readonly n?: number;
  readonly patients?: number;
  /** Last step of the working, as on the sheet. */
  readonly working?: string;
}

const here = (name: string) => readFileSync(new URL(name, import.meta.url), 'utf8');

/** Every number that was worked by hand, in the order of the sheet. */
export const expectedNumbers: readonly ExpectedNumber[] = JSON.parse(here('expected.json'));

/** The sheet on which they were worked. */
export const sheet = here('sheet.md');
