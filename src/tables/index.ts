import { accuracyBySubgroup } from './accuracy-by-subgroup.js';
import { acuityChange } from './acuity-change.js';
import { astigmatismTreatment } from './astigmatism-treatment.js';
import { baseline } from './baseline.js';
import { benchmarks } from './benchmarks.js';
import { comparison } from './comparison.js';
import { confounding } from './confounding.js';
import { doubleAngleSummary } from './double-angle-summary.js';
import { eyeFlow } from './eye-flow.js';
import { followUp, missingOutcomes } from './follow-up-tables.js';
import { formulas } from './formulas.js';
import { formulasByBand } from './formulas-by-band.js';
import { inducedAstigmatism } from './induced-astigmatism.js';
import { lensConstants } from './lens-constants.js';
import { refractiveAccuracy } from './refractive-accuracy.js';
import { residualCylinder } from './residual-cylinder.js';
import { resources } from './resources.js';
import { safety } from './safety.js';
import { sensitivity } from './sensitivity.js';
import type { TableBuilder } from './shapes.js';
import { stability } from './stability.js';
import { toricAlignment } from './toric-alignment.js';
import { visualAcuity } from './visual-acuity.js';

/** Every published table by name, in the order of the report. */
export const publishedTables: ReadonlyMap<string, TableBuilder> = new Map<string, TableBuilder>([
  ['eye-flow', eyeFlow],
  ['follow-up', followUp],
  ['baseline', baseline],
  ['missing-outcomes', missingOutcomes],
  ['refractive-accuracy', refractiveAccuracy],
  ['formulas', formulas],
  ['formulas-by-band', formulasByBand],
  ['accuracy-by-subgroup', accuracyBySubgroup],
  ['lens-constants', lensConstants],
  ['residual-cylinder', residualCylinder],
  ['double-angle-summary', doubleAngleSummary],
  ['astigmatism-treatment', astigmatismTreatment],
  ['induced-astigmatism', inducedAstigmatism],
  ['toric-alignment', toricAlignment],
  ['visual-acuity', visualAcuity],
  ['acuity-change', acuityChange],
  ['safety', safety],
  ['resources', resources],
  ['stability', stability],
  ['confounding', confounding],
  ['comparison', comparison],
  ['sensitivity', sensitivity],
  ['benchmarks', benchmarks],
]);
