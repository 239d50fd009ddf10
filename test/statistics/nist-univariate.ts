import { referencePresent, referenceText } from '../shared-reference.js';

/** One univariate data set of NIST StRD (shared/reference/nist-strd.json). */
export interface Univariate {
  id: string;
  n: number;
  certified: { mean: number; sd_n_minus_1: number };
  data?: number[];
  data_rule?: { first: number; then_repeat_pair: [number, number]; pairs: number };
  data_digits?: string;
  /** Digits that plain two-pass arithmetic on doubles reaches. */
  double_two_pass_LRE: { mean: number; sd: number };
}

export const univariate: readonly Univariate[] = referencePresent
  ? JSON.parse(referenceText('nist-strd.json')).univariate
  : [];

export function valuesOf({ data, data_rule: rule, data_digits: digits }: Univariate): Float64Array {
  if (data) return Float64Array.from(data);
  if (digits) return Float64Array.from(digits, Number);
  if (!rule) throw new RangeError('valuesOf: no data');
  return Float64Array.from([rule.first, ...Array.from({ length: rule.pairs }, () => rule.then_repeat_pair).flat()]);
}

/** Digits that agree: −log10 of the relative error, 15 at most. */
export function digits(value: number | undefined, certified: number): number {
  return Math.min(15, -Math.log10(Math.abs((value as number) - certified) / Math.abs(certified)));
}
