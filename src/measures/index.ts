import type { Measure } from '../records/measure.js';
import { astigmatismMeasures } from './astigmatism.js';
import { baselineMeasures } from './baseline.js';
import { outcomeMeasures } from './outcome.js';
import { refractionMeasures } from './refraction.js';

/**
 * Every quantity of one eye that the audit knows, in the order of results.csv.
 *
 * @param formulas  prediction formulas found in the data, the primary one left out
 */
export function measureRegistry(formulas: readonly string[]): readonly Measure[] {
  return [...baselineMeasures, ...refractionMeasures(formulas), ...astigmatismMeasures, ...outcomeMeasures];
}
