import type { Results } from '../results/index.js';
import type { Words } from '../words/index.js';
import { fieldLabel, valueLabel } from './groups.js';
import { noteCodes } from './marks.js';
import type { Column } from './shapes.js';

/** A cohort, and the reference that it is compared with. */
export interface CohortPair {
  /** Of results rows: 'technique=laser-assisted vs manual'. */
  group: string;
  /** What tells the cohorts apart, as readers see it: 'Technique'. */
  field: string;
  compared: Column;
  reference: Column;
}

/** Every comparison of an audit, in the order of its cohorts; none where it has fewer than two. */
export function cohortPairs(results: Results, words: Words): readonly CohortPair[] {
  return results.rows
    .filter(({ measure, statistic }) => measure === 'design' && statistic === 'patients_both')
    .map(({ group }) => pairOf(group, words));
}

function pairOf(group: string, words: Words): CohortPair {
  const [, field, compared, reference] = /^([^=]*)=(.*) vs (.*)$/.exec(group) ?? [];
  if (field === undefined || compared === undefined || reference === undefined) {
    throw new RangeError(`cohortPairs: "${group}"; expected field=cohort vs reference`);
  }
  const column = (value: string): Column => {
    return { group: `${field}=${value}`, label: valueLabel(decodeURIComponent(value), words) };
  };
  return {
    group,
    field: fieldLabel(decodeURIComponent(field), words),
    compared: column(compared),
    reference: column(reference),
  };
}

/** The references of all pairs are one: the first cohort of the audit. */
export function referenceOf(pairs: readonly CohortPair[]): Column {
  const [first] = pairs;
  if (!first) throw new RangeError('referenceOf: no pair of cohorts; expected at least one');
  return first.reference;
}

/** Note of the design that all eligible eyes of a comparison form: 'design:mixed'. */
export function designOf(results: Results, { group }: Pick<CohortPair, 'group'>): string {
  const [code] = noteCodes(results.get('design', group, 'patients_both'));
  if (code === undefined) throw new RangeError(`designOf: ${group} has no design; expected a note on its patients`);
  return code;
}
