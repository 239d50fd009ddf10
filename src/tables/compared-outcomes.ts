import { type Compared, comparedBy } from '../comparison/compared.js';
import { declaredFor, nameOf } from '../comparison/primaries.js';
import { type Verdict, verdicts } from '../comparison/verdict.js';
import { measureRegistry } from '../measures/index.js';
import { complicationPrefix } from '../measures/safety.js';
import type { Measure } from '../records/measure.js';
import type { Plan } from '../records/plan.js';
import type { ResultRow } from '../records/result.js';
import type { Results } from '../results/index.js';
import { formulasOf } from './formula-measures.js';
import { noteCodes } from './marks.js';

/** One statistic by which two cohorts are compared, and the row that holds it. */
export interface ComparedOutcome {
  measure: Measure;
  one: Compared;
  /** The estimate; of a vector the length of the difference. */
  row: ResultRow;
  isPrimary: boolean;
  /** Of primaries with an interval. */
  verdict: Verdict | undefined;
  /** Declared in audit.yaml, on the scale of the statistic. */
  margin: number | undefined;
  /** Difference of interest. */
  difference: number | undefined;
}

/** Names of the complications that an audit tells apart. */
function complicationsOf({ rows }: Results): readonly string[] {
  const measures = new Set(rows.map(({ measure }) => measure).filter((name) => name.startsWith(complicationPrefix)));
  return [...measures].map((measure) => measure.slice(complicationPrefix.length));
}

/** The registry of an audit, from its results: further formulas and named complications have measures of their own. */
function registryOf(results: Results): readonly Measure[] {
  const formulas = formulasOf(results).map(({ formula }) => formula);
  return measureRegistry(formulas, [], undefined, complicationsOf(results));
}

/** How cohorts would be compared by a statistic of one group; undefined where the registry has no such statistic. */
export function comparedAs(
  results: Results,
  name: string,
  statistic: string,
): Pick<ComparedOutcome, 'measure' | 'one'> | undefined {
  const measure = registryOf(results).find((one) => nameOf(one) === name);
  const one = measure && comparedBy(measure).find(({ of }) => of === statistic);
  return measure && one ? { measure, one } : undefined;
}

/** Under which name a statistic's test, power and adjustment stand; its estimate too, but for vectors. */
export function estimateOf({ by, statistic }: Compared): string {
  return by === 'centroid' ? 'difference_magnitude' : statistic;
}

function verdictOf(codes: readonly string[]): Verdict | undefined {
  return verdicts.find((verdict) => codes.includes(`verdict:${verdict}`));
}

/**
 * Every outcome of the registry in one comparison that any eye has, each with all statistics by which it is compared,
 * in the order of the registry.
 *
 * @param group  of the comparison
 */
export function comparedOutcomes(results: Results, plan: Plan, group: string): readonly ComparedOutcome[] {
  const { margins, differences } = plan.statistics;
  return registryOf(results).flatMap((measure) =>
    comparedBy(measure).flatMap((one) => {
      const row = results.find(nameOf(measure), group, estimateOf(one));
      if (!row || row.n === 0) return [];
      const codes = noteCodes(row);
      return {
        measure,
        one,
        row,
        isPrimary: codes.some((code) => code.startsWith('primary:')),
        verdict: verdictOf(codes),
        margin: declaredFor(margins, measure, one),
        difference: declaredFor(differences, measure, one),
      };
    }),
  );
}

/** Shares that are told of an error or an acuity; a measure without any of them is told by all of its own. */
const told = /_(within_(0\.50|1\.00)|at_or_better_20\/(20|40))$/;

/**
 * Whether an outcome stands in table and chart: primaries and what a margin or a difference is declared for always;
 * else every statistic, of many limits the two that audits are judged by, and ratios of shares only of what happens or
 * does not; nothing of measures that are parts of another. The rest stands in results.csv.
 */
export function isTold(outcome: ComparedOutcome, all: readonly ComparedOutcome[]): boolean {
  const { measure, one, isPrimary, margin, difference } = outcome;
  if (isPrimary || margin !== undefined || difference !== undefined) return true;
  if (measure.secondary) return false;
  if (one.by === 'risk-ratio') return measure.kind === 'share';
  if (one.by !== 'risk' || told.test(one.statistic)) return true;
  return !all.some((other) => other.measure === measure && told.test(other.one.statistic));
}

/** Verdicts that leave the question open. */
const open: readonly ComparedOutcome['verdict'][] = [
  'inconclusive',
  'no-difference-shown',
  'worse-margin-not-excluded',
];

/** Whether an outcome with a verdict is still undecided, so that what these eyes could show is told. */
export function isOpen({ verdict }: ComparedOutcome): boolean {
  return open.includes(verdict);
}
