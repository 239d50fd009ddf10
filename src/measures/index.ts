import type { Recomputed } from '../predictions/recomputed.js';
import type { Measure } from '../records/measure.js';
import { acuityChangeMeasures } from './acuity-change.js';
import { astigmatismMeasures } from './astigmatism.js';
import { baselineMeasures } from './baseline.js';
import { endotheliumMeasures } from './endothelium.js';
import { incisionMeasures } from './incision.js';
import { acuityMeasures, followUpMeasures } from './outcome.js';
import { recomputedPrediction } from './recomputed.js';
import { refractionMeasures } from './refraction.js';
import { resourceMeasures } from './resources.js';
import { safetyMeasures } from './safety.js';
import { toricMeasures } from './toric.js';
import { treatmentMeasures } from './treatment.js';

/**
 * Every quantity of one eye that the audit knows, in the order of results.csv.
 *
 * @param formulas    prediction formulas found in the data, the primary one left out
 * @param recomputed  formulas that the audit computes itself; the primary one has its step here, and no error of its own
 * @param complications  names of the complications that the exports tell apart
 */
export function measureRegistry(
  formulas: readonly string[],
  recomputed: readonly Recomputed[] = [],
  primary?: string,
  complications: readonly string[] = [],
): readonly Measure[] {
  const further = recomputed.flatMap(({ label }) => (label === primary ? [] : [label]));
  return [
    ...baselineMeasures,
    ...recomputed.map(recomputedPrediction),
    ...refractionMeasures([...formulas, ...further]),
    ...astigmatismMeasures,
    ...treatmentMeasures,
    ...incisionMeasures,
    ...toricMeasures,
    ...acuityMeasures,
    ...acuityChangeMeasures,
    ...safetyMeasures(complications),
    ...endotheliumMeasures,
    ...resourceMeasures,
    ...followUpMeasures,
  ];
}
