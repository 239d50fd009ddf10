import { runScreen } from '../../src/screens/run.js';
import { en } from '../../src/words/index.js';
import type { Say } from '../io.js';
import { run as runAudit } from '../run.js';
import { openAudit } from './audit-file.js';
import { haltedReply } from './halted.js';
import type { Reply } from './reply.js';
import { runData, runSummary } from './run-summary.js';

/**
 * `run AUDIT`: the whole audit, into one report folder.
 *
 * @param elapsed  seconds since the command was given
 */
export async function run(
  typed: string,
  options: { replace: boolean },
  say: Say,
  signal: AbortSignal,
  elapsed: () => number,
): Promise<Reply> {
  const audit = await openAudit(typed, signal);
  if ('code' in audit) return audit;
  const outcome = await runAudit(audit.text, audit.io, options, say);
  if (outcome.kind !== 'published') return haltedReply(outcome, audit, 'run');
  const summary = runSummary(outcome, audit, elapsed(), en);
  return { code: 0, screen: runScreen(summary, en.screens), data: runData(outcome, summary, en) };
}
