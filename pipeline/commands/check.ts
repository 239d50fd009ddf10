import { checkScreen } from '../../src/screens/check.js';
import { en } from '../../src/words/index.js';
import type { Say } from '../io.js';
import { check as checkAudit } from '../run.js';
import { openAudit } from './audit-file.js';
import { checkData, checkSummary } from './check-summary.js';
import { haltedReply } from './halted.js';
import type { Reply } from './reply.js';

/** `check AUDIT`: reads and judges the data, writes the query list and no outcome. */
export async function check(typed: string, say: Say, signal: AbortSignal): Promise<Reply> {
  const audit = await openAudit(typed, signal);
  if ('code' in audit) return audit;
  const outcome = await checkAudit(audit.text, audit.io, say);
  if (outcome.kind !== 'checked') return haltedReply(outcome, audit, 'check');
  const summary = checkSummary(outcome, audit, en);
  return { code: 0, screen: checkScreen(summary, en.screens), data: checkData(outcome, summary) };
}
