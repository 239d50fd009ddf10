import type { ResultRow } from './result.js';

/** A row of a former report, as its results.csv holds it. */
export type FormerRow = Pick<
  ResultRow,
  'measure' | 'group' | 'statistic' | 'value' | 'ci_low' | 'ci_high' | 'n' | 'patients'
>;
