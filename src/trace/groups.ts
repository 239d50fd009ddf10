import { groupPair } from '../results/index.js';
import type { Traced } from './traced.js';

/** The groups of results that the eye belongs to: all eyes, its cohort, its subgroups, its strata. */
export function groupsOfEye({ derived, eye }: Traced): readonly string[] {
  const groupings = [...(derived.cohorts ? [derived.cohorts] : []), ...derived.subgroups, ...derived.strata];
  const keys = groupings.flatMap(({ field, names, code }) => {
    const name = names[(code[eye] as number) - 1];
    return name === undefined ? [] : [groupPair(field, name)];
  });
  return ['all', ...new Set(keys)];
}
