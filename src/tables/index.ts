import { accuracyBySubgroup } from './accuracy-by-subgroup.js';
import { baseline } from './baseline.js';
import { doubleAngleSummary } from './double-angle-summary.js';
import { eyeFlow } from './eye-flow.js';
import { refractiveAccuracy } from './refractive-accuracy.js';
import { residualCylinder } from './residual-cylinder.js';
import type { TableBuilder } from './shapes.js';
import { visualAcuity } from './visual-acuity.js';

/** Every published table by name, in the order of the report. */
export const publishedTables: ReadonlyMap<string, TableBuilder> = new Map<string, TableBuilder>([
  ['eye-flow', eyeFlow],
  ['baseline', baseline],
  ['refractive-accuracy', refractiveAccuracy],
  ['accuracy-by-subgroup', accuracyBySubgroup],
  ['residual-cylinder', residualCylinder],
  ['double-angle-summary', doubleAngleSummary],
  ['visual-acuity', visualAcuity],
]);
