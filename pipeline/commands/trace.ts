import { noEyeScreen, traceScreen } from '../../src/screens/trace.js';
import { en } from '../../src/words/index.js';
import type { Say } from '../io.js';
import { trace as traceEye } from '../run.js';
import { openAudit } from './audit-file.js';
import { haltedReply } from './halted.js';
import type { Reply } from './reply.js';

/** `trace AUDIT`: one eye from its raw cells to every number it enters; writes no report. */
export async function trace(
  typed: string,
  of: { patient: string; eye: 'right' | 'left' },
  say: Say,
  signal: AbortSignal,
): Promise<Reply> {
  const audit = await openAudit(typed, signal);
  if ('code' in audit) return audit;
  const outcome = await traceEye(audit.text, audit.io, of, say);
  switch (outcome.kind) {
    case 'no eye':
      return {
        code: 2,
        screen: noEyeScreen(of, typed, en.screens),
        data: { outcome: 'not started', reason: 'no such eye', ...of },
      };
    case 'traced':
      return {
        code: 0,
        screen: traceScreen(outcome.trace, typed, en.screens),
        data: { outcome: 'traced', ...outcome.trace },
      };
    default:
      return haltedReply(outcome, audit, 'trace');
  }
}
