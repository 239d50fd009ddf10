import type { EyeGroup } from '../../src/analysis/sample.js';
import type { Compares } from '../../src/comparison/confounding.js';
import { comparisonGroup } from '../../src/comparison/group.js';
import type { Derived, Grouping } from '../../src/records/derived.js';
import { groupPair } from '../../src/results/index.js';

/** The groups of eyes that results are given for. */
export interface Groups {
  all: EyeGroup;
  cohorts: readonly EyeGroup[];
  subgroups: readonly EyeGroup[];
  /** Of measures that name them, by field. */
  strata: readonly { field: string; groups: readonly EyeGroup[] }[];
  /** Each cohort against the first, which is the reference. */
  comparisons: readonly Compares[];
}

/** The eyes of each group. */
export function groupsFrom({ field, names, code }: Grouping, all: Int32Array): readonly EyeGroup[] {
  return names.map((name, i) => ({
    key: groupPair(field, name),
    eyes: all.filter((eye) => code[eye] === i + 1),
  }));
}

/** The eyes of two groups at once, its pairs in alphabetical order. */
export function both(one: EyeGroup, other: EyeGroup): EyeGroup {
  const kept = new Set(other.eyes);
  return { key: [one.key, other.key].sort().join(';'), eyes: one.eyes.filter((eye) => kept.has(eye)) };
}

function comparisonsOf({ field, names }: Grouping, cohorts: readonly EyeGroup[]): readonly Compares[] {
  return cohorts.slice(1).map((compared, i) => ({
    group: comparisonGroup(field, names[i + 1] as string, names[0] as string),
    compared,
    reference: cohorts[0] as EyeGroup,
  }));
}

/** A subgroup that is a cohort already would give two rows of one name. */
export function groupsOf({ eyes, cohorts, subgroups, strata }: Derived): Groups {
  const all = Int32Array.from({ length: eyes.numRows() }, (_, eye) => eye);
  const ofCohorts = cohorts ? groupsFrom(cohorts, all) : [];
  const taken = new Set([cohorts?.field]);
  return {
    all: { key: 'all', eyes: all },
    cohorts: ofCohorts,
    subgroups: subgroups.filter(({ field }) => field !== cohorts?.field).flatMap((one) => groupsFrom(one, all)),
    strata: strata
      .filter(({ field }) => !taken.has(field))
      .map((one) => ({ field: one.field, groups: groupsFrom(one, all) })),
    comparisons: cohorts ? comparisonsOf(cohorts, ofCohorts) : [],
  };
}
