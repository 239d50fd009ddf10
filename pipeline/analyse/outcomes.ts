import { pick } from '../../src/analysis/sample.js';
import { hitsOf } from '../../src/analysis/shares.js';
import { type Basis, type Compared, comparedBy } from '../../src/comparison/compared.js';
import type { Compares } from '../../src/comparison/confounding.js';
import type { Covariate } from '../../src/comparison/model-matrix.js';
import { isComplete } from '../../src/comparison/model-matrix.js';
import { type Adjustment, adjustedRows, type OutcomePairs, outcomeRows } from '../../src/comparison/outcome-rows.js';
import { pairsOf } from '../../src/comparison/pair.js';
import { adjusted, declaredFor, nameOf, type Primaries } from '../../src/comparison/primaries.js';
import { type About, type Declared, rowAbout } from '../../src/comparison/rows.js';
import type { Derived } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { auditCorrelation } from '../../src/statistics/icc.js';
import { columnsOf, type MeasureColumns, valuesOn } from './columns.js';

/** What outcomes are compared with. */
export interface OutcomeSettings {
  derived: Derived;
  plan: Plan;
  primaries: Primaries;
  covariates: readonly Covariate[];
}

/** The rows of one statistic; a primary waits for its place in Holm's family. */
interface Block {
  rows: readonly ResultRow[];
  primary: { about: About; statistic: string; p: number | undefined } | undefined;
}

/** Pairs of eyes of two cohorts in one measure, of those that are analysed. */
export function outcomePairs(columns: MeasureColumns, compares: Compares, analysed = columns.analysed): OutcomePairs {
  const { second } = columns;
  const ofValues = { ...columns, ...compares, analysed };
  return {
    values: pairsOf(ofValues),
    second: second && pairsOf({ ...ofValues, values: second, absolute: undefined }),
  };
}

/** Correlation of fellow eyes in a share over every analysed eye, whatever its cohort. */
export function auditIccOf(columns: MeasureColumns, basis: Basis) {
  const { analysed, patient } = columns;
  const values = valuesOn(basis, columns);
  return (meets: (value: number) => boolean): number | undefined => {
    const eyes = eyesWith(values, analysed);
    return auditCorrelation(
      hitsOf(pick(values, eyes), meets),
      eyes.map((eye) => patient[eye] as number),
    );
  };
}

/** Analysed eyes that have a value. */
function eyesWith(values: Float64Array, analysed: Uint8Array): Int32Array {
  const eyes = new Int32Array(values.length);
  let count = 0;
  for (let eye = 0; eye < values.length; eye++) {
    if (analysed[eye] === 1 && !Number.isNaN(values[eye])) eyes[count++] = eye;
  }
  return eyes.subarray(0, count);
}

export function declaredOf(measure: Measure, one: Compared, { plan, primaries }: OutcomeSettings): Declared {
  const { confidence, margins, differences } = plan.statistics;
  const isPrimary = primaries.includes(measure, one);
  return {
    level: isPrimary ? primaries.level : confidence,
    primaries: isPrimary ? primaries.k : undefined,
    margin: declaredFor(margins, measure, one),
    difference: declaredFor(differences, measure, one),
  };
}

/** The eyes of a measure whose covariates are all known; undefined without covariates. */
function adjustmentOf(
  columns: MeasureColumns,
  compares: Compares,
  covariates: readonly Covariate[],
): Adjustment | undefined {
  if (covariates.length === 0) return undefined;
  const complete = columns.analysed.map((is, eye) => (is && isComplete(covariates, eye) ? 1 : 0));
  return { covariates, values: outcomePairs(columns, compares, complete).values, models: new Map() };
}

function blocksOf(
  measure: Measure,
  columns: MeasureColumns,
  compares: Compares,
  settings: OutcomeSettings,
): readonly Block[] {
  const pairs = outcomePairs(columns, compares);
  const adjustment = adjustmentOf(columns, compares, settings.covariates);
  const about = { measure: nameOf(measure), group: compares.group, eyes: pairs.values.eyes, unit: measure.unit };
  return comparedBy(measure).map((one) => {
    const declared = declaredOf(measure, one, settings);
    const { rows, p } = outcomeRows(about, one, pairs, declared, auditIccOf(columns, one.on));
    const unadjusted = rows[0]?.n ?? 0;
    const beside = adjustment ? adjustedRows(about, one, adjustment, declared, unadjusted) : [];
    const primary = declared.primaries === undefined ? undefined : { about, statistic: one.statistic, p };
    return { rows: [...rows, ...beside], primary };
  });
}

/** Holm's p of every primary that has a test, behind its other rows. */
function withHolm(blocks: readonly Block[]): readonly ResultRow[] {
  const primaries = blocks.flatMap(({ primary }) => (primary ? [primary] : []));
  const values = adjusted(primaries.map(({ p }) => p));
  const rowOf = ({ rows, primary }: Block): readonly ResultRow[] => {
    const value = primary && values[primaries.indexOf(primary)];
    const [first] = rows;
    if (!primary || !first || value === undefined) return [];
    const statistic = `p_adjusted:${primary.statistic}`;
    return [
      rowAbout(primary.about, first, { statistic, value, method: 'holm', note: `primary:k=${primaries.length}` }),
    ];
  };
  return blocks.flatMap((block) => [...block.rows, ...rowOf(block)]);
}

/** Every outcome of the registry in every comparison, primaries adjusted for their number. */
export function outcomesCompared(comparisons: readonly Compares[], settings: OutcomeSettings): readonly ResultRow[] {
  const { derived } = settings;
  const blocks = derived.registry
    .filter((measure) => comparedBy(measure).length > 0)
    .flatMap((measure) => {
      const columns = columnsOf(measure, derived);
      return comparisons.flatMap((compares) => blocksOf(measure, columns, compares, settings));
    });
  return withHolm(blocks);
}
