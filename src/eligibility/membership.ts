import { integersOf } from '../columns/table.js';
import type { CanonicalTables, Kind } from '../records/canonical.js';
import type { Flow, Membership } from '../records/derived.js';
import { type Family, families } from '../records/measure.js';
import type { Plan } from '../records/plan.js';
import { millionths } from '../units.js';
import type { Assembly } from '../visits/assemble.js';
import { conditionOn } from './condition.js';
import { dueBy } from './due.js';
import { eyeNumbers, lookupIn } from './lookup.js';
import { eyeOrderOf, leftOutByOneEyeRule } from './one-eye.js';
import { absenceOf, vectorAbsence } from './standing.js';

/** Eyes aimed at distance: |intended| inside the declared range; eyes without an intended refraction count as such. */
export function distanceTarget(target: Float64Array, [from, to]: readonly [number, number]): Uint8Array {
  const inside = (value: number): boolean =>
    millionths(value) >= millionths(from) && millionths(value) <= millionths(to);
  return Uint8Array.from(target, (value) => (Number.isNaN(value) || inside(value) ? 1 : 0));
}

/** What stands before any measurement is looked at, one entry an eye. */
interface Standing {
  /** Index of the first declared exclusion that holds; −1 none. */
  excluded: Int32Array;
  oneEye: Uint8Array;
  nearTarget: Uint8Array;
  due: Uint8Array;
  notToric: Uint8Array;
}

/** 1 where no export gives the lens a cylinder. */
function notToricEyes({ eyes }: CanonicalTables): Uint8Array {
  const cylinder = eyeNumbers(eyes, 'lens_cylinder');
  return Uint8Array.from({ length: eyes.numRows() }, (_, eye) => (cylinder && (cylinder[eye] as number) > 0 ? 0 : 1));
}

function declaredExclusions(tables: CanonicalTables, assembly: Assembly, plan: Plan): Int32Array {
  const lookup = lookupIn(tables, assembly);
  const holds = plan.eligibility.exclude.map(({ condition }) => conditionOn(condition, lookup));
  return Int32Array.from({ length: tables.eyes.numRows() }, (_, eye) => holds.findIndex((test) => test(eye) === true));
}

/** An eye is due when the last window of its outcome has closed by the export's day; without dates all are due. */
export function dueEyes(tables: CanonicalTables, plan: Plan): Uint8Array {
  const closes = plan.follow_up.visits
    .filter((visit) => plan.follow_up.outcome.includes(visit.name))
    .map((visit) => visit.days?.[1] ?? 0);
  return dueBy(tables, Math.max(0, ...closes));
}

function standingOf(tables: CanonicalTables, assembly: Assembly, distance: Uint8Array, plan: Plan): Standing {
  const excluded = declaredExclusions(tables, assembly, plan);
  const eligible = Uint8Array.from(excluded, (index) => (index < 0 ? 1 : 0));
  return {
    excluded,
    oneEye: leftOutByOneEyeRule(eyeOrderOf(tables), eligible, plan),
    nearTarget: distance.map((is) => 1 - is),
    due: dueEyes(tables, plan),
    notToric: notToricEyes(tables),
  };
}

/** Which measurement each family stands on, and where its flow ends. */
const familyKinds: Readonly<Partial<Record<Family, Kind>>> = {
  refraction: 'refractions',
  astigmatism: 'refractions',
  cornea: 'keratometries',
  corrected: 'corrected',
  uncorrected: 'uncorrected',
  near_target: 'uncorrected',
  near: 'near',
  intermediate: 'intermediate',
  endothelium: 'endothelia',
};

/** Families of all operated eyes: no eye is left out, a value that is not recorded is missing. */
const operatedFamilies: readonly Family[] = ['safety', 'resources'];

const distanceFamilies: readonly Family[] = ['distance', 'uncorrected'];

/** Statistic names of a family's flow, in the order in which the first reason is looked for. */
function stepsOf(family: Family, plan: Plan): readonly string[] {
  if (operatedFamilies.includes(family)) return ['analysed'];
  const declared = new Set(plan.eligibility.exclude.map(({ reason }) => `excluded:${reason}`));
  const aim = distanceFamilies.includes(family) ? ['near_target'] : family === 'near_target' ? ['distance_target'] : [];
  const followUp = familyKinds[family] ? ['not_yet_due', 'no_visit', 'not_recorded', 'set_aside'] : [];
  if (family === 'toric') return [...declared, 'one_eye_rule', 'not_toric', 'not_yet_due', 'analysed'];
  const device =
    family === 'cornea' ? ['no_same_device'] : family === 'endothelium' ? ['no_before', 'no_same_device'] : [];
  const reference = family === 'refraction' ? ['no_prediction'] : [];
  return [...declared, 'one_eye_rule', ...aim, ...followUp, ...device, ...reference, 'analysed'];
}

/**
 * Where every eye stands in every family: operated = analysed + reasons, the first reason counts.
 *
 * @param hasReference  1 where an eye has a predicted or an intended refraction
 * @param distance      1 where the eye was aimed at distance
 */
export function membershipOf(
  tables: CanonicalTables,
  assembly: Assembly,
  hasReference: Uint8Array,
  distance: Uint8Array,
  plan: Plan,
): Membership {
  const standing = standingOf(tables, assembly, distance, plan);
  const vector = vectorAbsence(tables, assembly);
  const flows = families.map((family): readonly [Family, Flow] => {
    const measured = reasonFromMeasurement(family, tables, assembly, vector, plan);
    const steps = stepsOf(family, plan);
    const reason = (eye: number): string => {
      if (operatedFamilies.includes(family)) return 'analysed';
      const index = standing.excluded[eye] as number;
      if (index >= 0) return `excluded:${plan.eligibility.exclude[index]?.reason}`;
      if (standing.oneEye[eye]) return 'one_eye_rule';
      if (standing.nearTarget[eye] && distanceFamilies.includes(family)) return 'near_target';
      if (!standing.nearTarget[eye] && family === 'near_target') return 'distance_target';
      if (family === 'toric' && standing.notToric[eye]) return 'not_toric';
      if (!familyKinds[family] && family !== 'toric') return 'analysed';
      if (!standing.due[eye]) return 'not_yet_due';
      if (family === 'toric') return 'analysed';
      return measured(eye) ?? (family === 'refraction' && !hasReference[eye] ? 'no_prediction' : 'analysed');
    };
    const at = new Map(steps.map((step, i) => [step, i]));
    const code = Uint8Array.from(standing.due, (_, eye) => at.get(reason(eye)) as number);
    return [family, { family, steps, code }];
  });
  return Object.fromEntries(flows) as unknown as Membership;
}

/** The reason in a family's measurement that leaves an eye out; undefined where the measurement is there. */
function reasonFromMeasurement(
  family: Family,
  tables: CanonicalTables,
  assembly: Assembly,
  vector: (eye: number) => string | undefined,
  plan: Plan,
): (eye: number) => string | undefined {
  const kind = familyKinds[family];
  if (!kind) return () => undefined;
  const absence = absenceOf(tables, assembly, plan, kind);
  const rows = assembly.outcome[kind];
  const device = tables.measurements[kind].numRows() > 0 ? integersOf(tables.measurements[kind], 'device') : undefined;
  const beforeAbsence = (after: number, before: number): string | undefined => {
    if (before < 0) return 'no_before';
    return device?.[after] === device?.[before] ? undefined : 'no_same_device';
  };
  return (eye) => {
    if ((rows[eye] as number) >= 0) {
      if (family === 'cornea') return (assembly.beforeSameDevice[eye] as number) < 0 ? 'no_same_device' : undefined;
      if (family === 'endothelium') return beforeAbsence(rows[eye] as number, assembly.before[kind][eye] as number);
      return family === 'astigmatism' ? vector(eye) : undefined;
    }
    const why = absence(eye);
    return assembly.outcomeVisit[eye] === 0 && why === 'not_recorded' ? 'no_visit' : why;
  };
}

/** 1 where an eye is analysed in a family. */
export function analysedIn({ steps, code }: Flow): Uint8Array {
  const last = steps.length - 1;
  return code.map((step) => (step === last ? 1 : 0));
}
