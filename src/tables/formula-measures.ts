import type { Results } from '../results/index.js';

const prefix = 'prediction_error:';

/** The formula whose prediction error a measure is; undefined of the primary one, and of all else. */
export function formulaOf(measure: string): string | undefined {
  return measure.startsWith(prefix) ? measure.slice(prefix.length) : undefined;
}

/** The formulas beside the primary one that an audit has errors of, by measure, in the order of the results. */
export function formulasOf({ rows }: Results): readonly { measure: string; formula: string }[] {
  return rows.flatMap(({ measure, group, statistic }) => {
    const formula = group === 'all' && statistic === 'n' ? formulaOf(measure) : undefined;
    return formula === undefined ? [] : [{ measure, formula }];
  });
}
