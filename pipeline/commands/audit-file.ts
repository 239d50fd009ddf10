import { stat } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { noAuditScreen } from '../../src/screens/not-started.js';
import { en } from '../../src/words/index.js';
import type { Io } from '../io.js';
import { nodeIo } from '../node-io.js';
import { readAll } from '../publish/digest.js';
import { interruptible } from './interrupt.js';
import type { Reply } from './reply.js';

/** An audit.yaml that is there: its text, and the folder that all its paths start from. */
export interface AuditFile {
  text: string;
  io: Io;
  /** As typed, for the screens. */
  typed: string;
  /** A path of the audit's folder, as the reader may type it. */
  shown(path: string): string;
}

/** Opens audit.yaml, or says why it cannot be. */
export async function openAudit(typed: string, signal: AbortSignal): Promise<AuditFile | Reply> {
  const kind = await kindOf(typed);
  if (kind !== 'file') return notOpened(typed, kind);
  const folder = dirname(typed);
  const io = interruptible(nodeIo(folder), signal);
  try {
    const text = new TextDecoder().decode(await readAll(io, basename(typed)));
    return { text, io, typed, shown: (path) => plain(folder === '.' ? path : `${folder}/${path}`) };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === undefined) throw error;
    return notOpened(typed, 'unreadable');
  }
}

function notOpened(typed: string, kind: 'folder' | 'missing' | 'unreadable'): Reply {
  const data = { outcome: 'not started', reason: `audit file: ${kind}`, audit: typed };
  return { code: 2, screen: noAuditScreen(typed, kind, en.screens), data };
}

async function kindOf(path: string): Promise<'file' | 'folder' | 'missing'> {
  try {
    return (await stat(path)).isDirectory() ? 'folder' : 'file';
  } catch {
    return 'missing';
  }
}

/** A path without the detours of 'sample/../reports'. */
function plain(path: string): string {
  const detour = /(^|\/)(?!\.\.?\/)[^/]+\/\.\.\//;
  let shown = path;
  while (detour.test(shown)) shown = shown.replace(detour, '$1');
  return shown;
}
