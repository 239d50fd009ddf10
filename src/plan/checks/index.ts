import type { Fault } from '../../records/plan.js';
import type { DocumentNode } from '../document.js';
import { type Survey, survey } from '../survey.js';
import { checkConditions } from './conditions.js';
import { checkFiles } from './files.js';
import { checkFollowUp } from './follow-up.js';
import { checkGroups } from './groups.js';
import { checkOutputs } from './outputs.js';
import { checkPredictions } from './predictions.js';
import { checkSources } from './sources.js';
import { checkStatistics } from './statistics.js';
import { checkStudy } from './study.js';
import { checkValues } from './values.js';

const checks: readonly ((about: Survey) => readonly Fault[])[] = [
  checkStudy,
  checkFiles,
  checkSources,
  checkValues,
  checkFollowUp,
  checkConditions,
  checkGroups,
  checkPredictions,
  checkStatistics,
  checkOutputs,
];

/**
 * What keys of audit.yaml have to do with one another. Checks look at the document as written, so that a slip of
 * form in one place does not hide a fault in another.
 */
export function relationFaults(root: DocumentNode): readonly Fault[] {
  const about = survey(root);
  return checks.flatMap((check) => check(about));
}
