import { countRow, type EyeGroup, estimateRow, type Sample, sampleOf } from '../../src/analysis/sample.js';
import { hitsOf } from '../../src/analysis/shares.js';
import { type Compared, comparedBy } from '../../src/comparison/compared.js';
import { borrows } from '../../src/comparison/estimates.js';
import { withPair } from '../../src/comparison/group.js';
import { outcomeRows } from '../../src/comparison/outcome-rows.js';
import { nameOf } from '../../src/comparison/primaries.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import { eyeOrderOf, leftOutByOneEyeRule } from '../../src/eligibility/one-eye.js';
import type { Derived } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { meanInterval } from '../../src/statistics/mean.js';
import { shareInterval } from '../../src/statistics/share.js';
import { columnsOf, type MeasureColumns } from './columns.js';
import type { Groups } from './groups.js';
import { auditIccOf, declaredOf, type OutcomeSettings, outcomePairs } from './outcomes.js';
import { policyWays } from './policies.js';
import { queriedEyes } from './queried.js';

/**
 * The headline numbers, by measure and statistic. Another value for low-vision words moves none of them: every such
 * word is worse than the line that the acuities are counted at.
 */
const headlines: readonly (readonly [measure: string, statistic: string])[] = [
  ['prediction_error', 'share_within_0.50'],
  ['prediction_error', 'mean'],
  ['target_error', 'share_within_0.50'],
  ['target_error', 'mean'],
  ['refractive_cylinder_after_recorded', 'share_within_0.50'],
  ['cdva', 'share_at_or_better_20/40'],
  ['udva', 'share_at_or_better_20/40'],
  ['any_complication', 'share'],
];

/** One other way to look at the same numbers. */
interface Way {
  /** 'sensitivity=one-eye'. */
  pair: string;
  /** The columns of a measure in this way; undefined where it is the same in both. */
  columns: (measure: Measure) => MeasureColumns | undefined;
}

/** First operated eye of each patient, of the eligible; of all that were operated where safety is counted. */
function firstEyes(derived: Derived, plan: Plan): (measure: Measure) => Uint8Array {
  const { tables, membership } = derived;
  const order = eyeOrderOf(tables);
  const first: Plan = { ...plan, eligibility: { ...plan.eligibility, eyes_per_patient: 'first' } };
  const keptOf = (from: Uint8Array): Uint8Array => leftOutByOneEyeRule(order, from, first).map((out) => 1 - out);
  const [eligible, operated] = [keptOf(analysedIn(membership.eligible)), keptOf(analysedIn(membership.safety))];
  return ({ family }) => (family === 'safety' ? operated : eligible);
}

/** The headline numbers with fewer eyes, and by the policies that were not chosen. */
function waysOf(derived: Derived, plan: Plan): readonly Way[] {
  const first = firstEyes(derived, plan);
  const fewer = (pair: string, kept: (measure: Measure) => Uint8Array): Way => ({
    pair,
    columns: (measure) => restricted(columnsOf(measure, derived), kept(measure)),
  });
  return [
    fewer('sensitivity=one-eye', first),
    fewer('sensitivity=without-queries', ({ name }) => queriedEyes(name, derived, plan).map((is) => 1 - is)),
    ...policyWays(derived, plan),
  ];
}

/** A headline number of one group; a share with its numerator. */
function headlineRow(one: Compared, sample: Sample, auditIcc: () => number | undefined): readonly ResultRow[] {
  if (one.by === 'mean')
    return [estimateRow(sample, one.of, meanInterval(sample.values, sample.patients, sample.confidence))];
  const [values, patients] =
    one.on === 'absolute' ? [sample.absolute, sample.absolutePatients] : [sample.values, sample.patients];
  const method = sample.measure.family === 'safety' ? 'exact' : 'wilson';
  const hits = hitsOf(values, one.meets ?? (() => false));
  const borrowed = borrows(patients) ? auditIcc() : undefined;
  const share = shareInterval(hits, patients, sample.confidence, { method, auditIcc: borrowed });
  const numerator = countRow(sample, one.of.replace('share', 'count'), share.count, share.n);
  return [estimateRow(sample, one.of, share, 'share'), { ...numerator, patients: share.patients }];
}

/** The same columns with the eyes that are not kept taken out of the analysis. */
function restricted(columns: MeasureColumns, kept: Uint8Array): MeasureColumns {
  return { ...columns, analysed: columns.analysed.map((is, eye) => is & (kept[eye] as number)) };
}

interface Named {
  measure: Measure;
  one: Compared;
}

function named({ registry }: Derived, is: (measure: Measure, one: Compared) => boolean): readonly Named[] {
  return registry.flatMap((measure) =>
    comparedBy(measure).flatMap((one) => (is(measure, one) ? [{ measure, one }] : [])),
  );
}

function headlineRows(
  { measure, one }: Named,
  pair: string,
  columns: MeasureColumns,
  groups: readonly EyeGroup[],
  plan: Plan,
) {
  const settings = { confidence: plan.statistics.confidence, auditIcc: new Map<string, number | undefined>() };
  const ofAudit = auditIccOf(columns, one.on);
  const icc = (): number | undefined => one.meets && ofAudit(one.meets);
  return groups.flatMap(({ key, eyes }) => {
    const sample = sampleOf(measure, { key: withPair(key, pair), eyes }, columns, settings);
    return headlineRow(one, sample, icc);
  });
}

/** The primary outcomes of every comparison, their estimates alone. */
function primaryRows(
  { measure, one }: Named,
  pair: string,
  columns: MeasureColumns,
  groups: Groups,
  settings: OutcomeSettings,
) {
  return groups.comparisons.flatMap((compares) => {
    const pairs = outcomePairs(columns, compares);
    const group = withPair(compares.group, pair);
    const about = { measure: nameOf(measure), group, eyes: pairs.values.eyes, unit: measure.unit };
    const declared = { ...declaredOf(measure, one, settings), primaries: undefined };
    const { rows } = outcomeRows(about, one, pairs, declared, auditIccOf(columns, one.on));
    return rows.filter(({ statistic }) => !statistic.includes(':'));
  });
}

/** The headline numbers and the primary outcomes once more: with one eye a patient, without eyes that are asked about, by other policies. */
export function sensitivityRows(groups: Groups, settings: OutcomeSettings): readonly ResultRow[] {
  const { derived, plan, primaries } = settings;
  const inGroups = [groups.all, ...groups.cohorts];
  const isHeadline = ({ name }: Measure, { of }: Compared): boolean =>
    headlines.some(([measure, statistic]) => measure === name && statistic === of);
  const [heads, firsts] = [named(derived, isHeadline), named(derived, primaries.includes)];
  return waysOf(derived, plan).flatMap(({ pair, columns }) => {
    const rows = (named: readonly Named[], of: (one: Named, own: MeasureColumns) => readonly ResultRow[]) =>
      named.flatMap((one) => {
        const own = columns(one.measure);
        return own ? of(one, own) : [];
      });
    return [
      ...rows(heads, (one, own) => headlineRows(one, pair, own, inGroups, plan)),
      ...rows(firsts, (one, own) => primaryRows(one, pair, own, groups, settings)),
    ];
  });
}
