import { accuracyBySubgroup } from './accuracy-by-subgroup.js';
import { baseline } from './baseline.js';
import { comparison } from './comparison.js';
import { confounding } from './confounding.js';
import { doubleAngleSummary } from './double-angle-summary.js';
import { eyeFlow } from './eye-flow.js';
import { followUp, missingOutcomes } from './follow-up-tables.js';
import { formulas } from './formulas.js';
import { refractiveAccuracy } from './refractive-accuracy.js';
import { residualCylinder } from './residual-cylinder.js';
import { sensitivity } from './sensitivity.js';
import type { TableBuilder } from './shapes.js';
import { visualAcuity } from './visual-acuity.js';

/** Every published table by name, in the order of the report. */
export const publishedTables: ReadonlyMap<string, TableBuilder> = new Map<string, TableBuilder>([
  ['eye-flow', eyeFlow],
  ['follow-up', followUp],
  ['baseline', baseline],
  ['missing-outcomes', missingOutcomes],
  ['refractive-accuracy', refractiveAccuracy],
  ['formulas', formulas],
  ['accuracy-by-subgroup', accuracyBySubgroup],
  ['residual-cylinder', residualCylinder],
  ['double-angle-summary', doubleAngleSummary],
  ['visual-acuity', visualAcuity],
  ['confounding', confounding],
  ['comparison', comparison],
  ['sensitivity', sensitivity],
]);
