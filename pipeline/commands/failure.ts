import { failureScreen } from '../../src/screens/failure.js';
import { en } from '../../src/words/index.js';
import { systemCode } from '../publish/prepare.js';
import { version } from '../publish/version.js';
import { Interrupted } from './interrupt.js';
import type { Reply } from './reply.js';

/** What a command says that did not come to its end: it was interrupted, the disk refused, or we made a mistake. */
export function failureReply(error: unknown): Reply {
  if (error instanceof Interrupted) {
    return { code: 130, screen: `${en.screens.interrupted}\n`, data: { outcome: 'interrupted' } };
  }
  const code = codeOf(error);
  if (code !== undefined) {
    const data = { outcome: 'not started', reason: 'unwritable', code };
    return { code: 2, screen: `${en.screens.notStarted.system(reasonText(code))}\n`, data };
  }
  const lines = [`halfdiopter ${version}, Node ${process.versions.node}`, nameOf(error), ...framesOf(error)];
  return { code: 3, screen: failureScreen(lines, en.screens), data: { outcome: 'our fault', report: lines } };
}

function codeOf(error: unknown): string | undefined {
  try {
    return systemCode(error);
  } catch {
    return undefined;
  }
}

function reasonText(code: string): string {
  return en.screens.notStarted.reasons[code] ?? en.screens.notStarted.otherReason(code);
}

function nameOf(error: unknown): string {
  return error instanceof Error ? error.name : typeof error;
}

/**
 * Where the mistake happened: functions, files and lines of ours. The message is left out, since it may quote a
 * value; so are the folders, since they may bear a name.
 */
function framesOf(error: unknown): readonly string[] {
  const stack = error instanceof Error ? (error.stack ?? '') : '';
  return stack.split('\n').flatMap((line) => {
    const [, of = '', path = '', place = ''] = /^\s+at (?:(.*) \()?(.*?):(\d+:\d+)\)?$/.exec(line) ?? [];
    if (path === '' || path.startsWith('node:')) return [];
    return [['at', of, `${path.split(/[\\/]/).at(-1)}:${place}`].filter((part) => part !== '').join(' ')];
  });
}
