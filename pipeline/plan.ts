import { relationFaults } from '../src/plan/checks/index.js';
import { pointedToComments } from '../src/plan/commented.js';
import { plainValue } from '../src/plan/document.js';
import { formFaults, inOrder } from '../src/plan/faults.js';
import { readDocument } from '../src/plan/read.js';
import { resolve } from '../src/plan/resolve.js';
import { auditSchema } from '../src/plan/schema.js';
import type { Fault, Plan } from '../src/records/plan.js';

/**
 * Stage 0 · plan: what is to be done?
 *
 * in       the text of audit.yaml, nothing else: whether files exist and folders can be written belongs to run
 * out      a plan with every default filled in, or every fault of the file at once, in its order
 * promise  a plan is handed on only when nothing is left to be asked
 */
export function plan(text: string): { plan: Plan } | { faults: readonly Fault[] } {
  const { root, faults: slips } = readDocument(text);
  if (!root) return { faults: inOrder(slips) };
  const parsed = auditSchema.safeParse(plainValue(root));
  const form = parsed.success ? [] : formFaults(parsed.error.issues, root);
  const faults = inOrder(pointedToComments([...slips, ...form, ...relationFaults(root)], text));
  if (faults.length > 0) return { faults };
  if (!parsed.success)
    throw new RangeError('plan: audit.yaml was refused and no fault told; expected one for each issue');
  return { plan: resolve(parsed.data, root) };
}
