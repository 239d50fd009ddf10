import { continuousRows } from '../../src/analysis/continuous.js';
import { type EyeGroup, type Sample, sampleOf } from '../../src/analysis/sample.js';
import { beyondRows } from '../../src/analysis/shares.js';
import { integersOf, numbersOf } from '../../src/columns/table.js';
import { withPair } from '../../src/comparison/group.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Derived } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { groupPair } from '../../src/results/index.js';

/** A change beyond this is counted, dioptres. */
const moved = 0.5;

/** What is followed over visits, in the spectacle plane. */
const followed = [
  { name: 'spherical_equivalent', column: 'spherical_equivalent' },
  { name: 'refractive_cylinder_recorded', column: 'cylinder' },
] as const;

function measureOf(name: string): Measure {
  return {
    name,
    family: 'eligible',
    kind: 'continuous',
    unit: 'D',
    plane: 'spectacle',
    inputs: [],
    formula: 'as at the outcome visit, of another visit',
    source: 'definition',
    groupings: 'cohorts',
    beyond: moved,
    of: (value) => value as number,
  };
}

/** One column an eye for every visit: NaN where the eye has no such examination. */
function byVisit({ eyeVisits, eyes }: Derived, column: string, visits: number): readonly Float64Array[] {
  const tables = Array.from({ length: visits }, () => new Float64Array(eyes.numRows()).fill(Number.NaN));
  const [eye, visit, values] = [
    integersOf(eyeVisits, 'eye'),
    integersOf(eyeVisits, 'visit'),
    numbersOf(eyeVisits, column),
  ];
  eye.forEach((of, row) => {
    (tables[(visit[row] as number) - 1] as Float64Array)[of] = values[row] as number;
  });
  return tables;
}

/**
 * The refraction at every declared visit: of all eyes that came, of the eyes that came to every visit, and how much the
 * same eyes changed from one visit to the next.
 */
export function stabilityRows(derived: Derived, groups: readonly EyeGroup[], plan: Plan): readonly ResultRow[] {
  const visits = plan.follow_up.visits;
  if (visits.length < 2) return [];
  const about = {
    patient: integersOf(derived.eyes, 'patient'),
    analysed: analysedIn(derived.membership.eligible),
    absolute: undefined,
  };
  return followed.flatMap(({ name, column }) => {
    const values = byVisit(derived, column, visits.length);
    const isComplete = (eye: number): boolean => values.every((of) => !Number.isNaN(of[eye] as number));
    const sample = (measure: string, group: EyeGroup, of: Float64Array, visit: string): Sample => {
      const key = withPair(group.key, groupPair('visit', visit));
      const settings = { confidence: plan.statistics.confidence, auditIcc: new Map<string, number | undefined>() };
      return sampleOf(measureOf(measure), { key, eyes: group.eyes }, { ...about, values: of }, settings);
    };
    return groups.flatMap((group) => {
      const same = { key: group.key, eyes: group.eyes.filter(isComplete) };
      const at = visits.flatMap((visit, i) => [
        ...continuousRows(sample(`${name}:visit`, group, values[i] as Float64Array, visit.name)),
        ...continuousRows(sample(`${name}:same_eyes`, same, values[i] as Float64Array, visit.name)),
      ]);
      const changes = visits.slice(1).flatMap((visit, i) => {
        const later = values[i + 1] as Float64Array;
        const change = later.map((value, eye) => value - ((values[i] as Float64Array)[eye] as number));
        const both = sample(`${name}:change`, group, change, visit.name);
        return [...continuousRows(both), ...beyondRows(both)];
      });
      return [...at, ...changes];
    });
  });
}
