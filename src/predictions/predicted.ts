import { integersOf, numbersOf, statesOf } from '../columns/table.js';
import type { CanonicalTables } from '../records/canonical.js';

/**
 * Predicted spherical equivalent of one formula, one value an eye, dioptres.
 *
 * @param formula  undefined where the audit has no prediction of its own
 * @returns NaN where an eye has none, or where it was set aside
 * @example predictedBy('planned', tables)[eye]
 */
export function predictedBy(formula: string | undefined, tables: CanonicalTables): Float64Array {
  const predicted = new Float64Array(tables.eyes.numRows()).fill(Number.NaN);
  const code = formula === undefined ? -1 : tables.formulas.indexOf(formula);
  const { predictions } = tables;
  const [formulas, eye] = [integersOf(predictions, 'formula'), integersOf(predictions, 'eye')];
  const [value, state] = [numbersOf(predictions, 'predictedSe'), statesOf(predictions)];
  for (let row = 0; row < formulas.length; row++) {
    if (formulas[row] === code && (state[row] as number) < 2) predicted[eye[row] as number] = value[row] as number;
  }
  return predicted;
}
