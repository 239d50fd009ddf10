import { acuityRange } from './acuity-range.js';
import { axialLengthRange } from './axial-length-range.js';
import { axisMissing } from './axis-missing.js';
import { axisRange } from './axis-range.js';
import { columnImpossible } from './column-impossible.js';
import { cylinderRange } from './cylinder-range.js';
import { examWithoutSurgery } from './exam-without-surgery.js';
import { keratometryRange } from './keratometry-range.js';
import type { Rule } from './rule.js';
import { sphereRange } from './sphere-range.js';
import { surgeryWithoutExam } from './surgery-without-exam.js';

/** Every rule of plausibility, in the order in which they judge and are listed. */
export const rules: readonly Rule[] = [
  columnImpossible,
  sphereRange,
  cylinderRange,
  axisRange,
  axisMissing,
  acuityRange,
  keratometryRange,
  axialLengthRange,
  surgeryWithoutExam,
  examWithoutSurgery,
];
