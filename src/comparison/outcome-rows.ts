import type { ResultRow } from '../records/result.js';
import { centroidRows } from './centroids.js';
import type { Compared } from './compared.js';
import { type EstimateSettings, estimateOf, type Found } from './estimates.js';
import { type LinearModel, linearModel } from './linear-model.js';
import type { Covariate } from './model-matrix.js';
import type { Pair, Pairs } from './pair.js';
import { type About, comparedRows, type Declared, rowAbout, testRows } from './rows.js';

/** Two cohorts in one outcome: the eyes they are compared on, and for vectors the second components. */
export interface OutcomePairs {
  values: Pairs;
  second: Pairs | undefined;
}

/** The rows of one statistic, and what Holm's adjustment needs of them. */
export interface OutcomeRows {
  rows: readonly ResultRow[];
  p: number | undefined;
}

/** One statistic of two cohorts, unadjusted. */
export function outcomeRows(
  about: About,
  one: Compared,
  { values, second }: OutcomePairs,
  declared: Declared,
  auditIcc: EstimateSettings['auditIcc'],
): OutcomeRows {
  if (one.by === 'centroid') {
    if (!second) throw new RangeError(`outcomeRows: ${about.measure} is a vector without second components`);
    return centroidRows(about, values.on(one.on), second.on(one.on), declared);
  }
  const found = estimateOf(one, values.on(one.on), { level: declared.level, auditIcc });
  return { rows: comparedRows(about, one, found, declared), p: found.p };
}

/** Adjustment of two cohorts for covariates, on the eyes whose covariates are known. */
export interface Adjustment {
  covariates: readonly Covariate[];
  /** The cohorts, restricted to those eyes. */
  values: Pairs;
  /** Models by the set of eyes that they stand on. */
  models: Map<Pair, { adjusted: LinearModel; plain: LinearModel }>;
}

function modelsOf({ covariates, models }: Adjustment, pair: Pair): { adjusted: LinearModel; plain: LinearModel } {
  const made = models.get(pair) ?? {
    adjusted: linearModel(pair.eyes, pair.cohorts, covariates),
    plain: linearModel(pair.eyes, pair.cohorts, []),
  };
  models.set(pair, made);
  return made;
}

/** The outcome of the model: values, or 1 and 0. */
function modelled({ meets }: Compared, values: Float64Array): Float64Array {
  return meets ? values.map((value) => (meets(value) ? 1 : 0)) : values;
}

const within = (share: number | undefined): number | undefined =>
  share === undefined ? undefined : Math.min(1, Math.max(-1, share));

/**
 * A mean or a share at equal covariates, beside the unadjusted one. Where eyes without a covariate are left out, the
 * unadjusted difference of the eyes that are left stands there too.
 *
 * @param unadjusted  eyes in the unadjusted estimate
 */
export function adjustedRows(
  about: About,
  one: Compared,
  adjustment: Adjustment,
  declared: Declared,
  unadjusted: number,
): readonly ResultRow[] {
  if (one.by !== 'mean' && one.by !== 'risk') return [];
  const pair = adjustment.values.on(one.on);
  const { adjusted, plain } = modelsOf(adjustment, pair);
  const [compared, reference] = [modelled(one, pair.compared), modelled(one, pair.reference)];
  const rowsOf = (prefix: string, model: LinearModel): readonly ResultRow[] => {
    const found = model.difference(compared, reference, declared.level);
    return modelRows(about, `${prefix}_${one.statistic}`, found, one.by === 'risk');
  };
  return [
    ...rowsOf('adjusted', adjusted),
    ...(pair.eyes.length === unadjusted ? [] : rowsOf('same_eyes', plain).slice(0, 1)),
  ];
}

function modelRows(
  about: About,
  statistic: string,
  found: Omit<Found, 'test'>,
  isShare: boolean,
): readonly ResultRow[] {
  const { value, low, high, method, notes } = found;
  const estimate = rowAbout(about, found, {
    statistic,
    value,
    ci_low: isShare ? within(low) : low,
    ci_high: isShare ? within(high) : high,
    unit: isShare ? 'share' : about.unit,
    method,
    note: notes.join(';'),
  });
  return [estimate, ...testRows(about, statistic, { ...found, test: method })];
}
