import { acuityRange } from './acuity-range.js';
import { acuityWorseAfter } from './acuity-worse-after.js';
import { ageRange } from './age-range.js';
import { axialLengthRange } from './axial-length-range.js';
import { axialLengthSides } from './axial-length-sides.js';
import { axisMissing } from './axis-missing.js';
import { axisRange } from './axis-range.js';
import { chamberDepthRange } from './chamber-depth-range.js';
import { columnBlank } from './column-blank.js';
import { columnImpossible } from './column-impossible.js';
import { constantColumn } from './constant-column.js';
import { cornealThicknessRange } from './corneal-thickness-range.js';
import { correctedWorse } from './corrected-worse.js';
import { cylinderNotation } from './cylinder-notation.js';
import { cylinderRange } from './cylinder-range.js';
import { endotheliumRange } from './endothelium-range.js';
import { endotheliumRises } from './endothelium-rises.js';
import { energyRange } from './energy-range.js';
import { examAfterExport } from './exam-after-export.js';
import { examLabel } from './exam-label.js';
import { examLate } from './exam-late.js';
import { examWithoutSurgery } from './exam-without-surgery.js';
import { fellowEyeFits } from './fellow-eye-fits.js';
import { incisionAxisMissing } from './incision-axis-missing.js';
import { incisionWidthRange } from './incision-width-range.js';
import { keratometryCarriedForward } from './keratometry-carried-forward.js';
import { keratometryExchanged } from './keratometry-exchanged.js';
import { keratometryMeridians } from './keratometry-meridians.js';
import { keratometryRange } from './keratometry-range.js';
import { keratometryRemeasure } from './keratometry-remeasure.js';
import { keratometrySides } from './keratometry-sides.js';
import { labelSimilar } from './label-similar.js';
import { laneRange } from './lane-range.js';
import { lensAxisMissing } from './lens-axis-missing.js';
import { lensAxisUnseen } from './lens-axis-unseen.js';
import { lensCylinderRange } from './lens-cylinder-range.js';
import { lensPowerBiometry } from './lens-power-biometry.js';
import { lensPowerRange } from './lens-power-range.js';
import { lensPowerStep } from './lens-power-step.js';
import { lensThicknessRange } from './lens-thickness-range.js';
import { notationContradicted } from './notation-contradicted.js';
import { otherPatientFits } from './other-patient-fits.js';
import { outcomeNone } from './outcome-none.js';
import { predictionFar } from './prediction-far.js';
import { predictionIsTarget } from './prediction-is-target.js';
import { pressureRange } from './pressure-range.js';
import { refractionAcuity } from './refraction-acuity.js';
import { refractionEquivalent } from './refraction-equivalent.js';
import { refractionGrid } from './refraction-grid.js';
import { refractionHalfBlank } from './refraction-half-blank.js';
import { refractionSignSlip } from './refraction-sign-slip.js';
import { refractionSurprise } from './refraction-surprise.js';
import type { Rule } from './rule.js';
import { secondOperation } from './second-operation.js';
import { sidesCopied } from './sides-copied.js';
import { sphereRange } from './sphere-range.js';
import { surgeryWithoutExam } from './surgery-without-exam.js';
import { timeRange } from './time-range.js';
import { vertexRange } from './vertex-range.js';
import { whiteToWhiteRange } from './white-to-white-range.js';

/** Cells, columns and files as they stand. */
const alone: readonly Rule[] = [
  columnImpossible,
  columnBlank,
  refractionHalfBlank,
  sphereRange,
  cylinderRange,
  axisRange,
  acuityRange,
  keratometryRange,
  axialLengthRange,
  chamberDepthRange,
  lensThicknessRange,
  whiteToWhiteRange,
  endotheliumRange,
  cornealThicknessRange,
  pressureRange,
  vertexRange,
  laneRange,
  ageRange,
  incisionWidthRange,
  lensPowerRange,
  lensCylinderRange,
  timeRange,
  energyRange,
  lensPowerStep,
  keratometryMeridians,
  constantColumn,
  labelSimilar,
  surgeryWithoutExam,
  examWithoutSurgery,
  examAfterExport,
];

/** What is said of an examination or an operation as a whole. */
const whole: readonly Rule[] = [
  axisMissing,
  cylinderNotation,
  notationContradicted,
  refractionGrid,
  incisionAxisMissing,
  lensAxisMissing,
  examLabel,
  examLate,
  predictionIsTarget,
  predictionFar,
  secondOperation,
];

/** Values beside one another: of one eye, of its fellow, of two examinations. */
const beside: readonly Rule[] = [
  outcomeNone,
  correctedWorse,
  lensAxisUnseen,
  acuityWorseAfter,
  endotheliumRises,
  axialLengthSides,
  keratometrySides,
  sidesCopied,
  keratometryRemeasure,
  keratometryCarriedForward,
  keratometryExchanged,
  fellowEyeFits,
  otherPatientFits,
  lensPowerBiometry,
  refractionEquivalent,
  refractionSignSlip,
  refractionAcuity,
  refractionSurprise,
];

/**
 * Every rule of plausibility, in the order in which they judge and are listed. A later round no longer sees what an
 * earlier one set aside, so that one slip is told once.
 */
export const rounds: readonly (readonly Rule[])[] = [alone, whole, beside];

export const rules: readonly Rule[] = rounds.flat();
