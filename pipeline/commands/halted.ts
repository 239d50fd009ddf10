import { findingAt } from '../../src/findings/builder.js';
import { tell } from '../../src/findings/telling.js';
import type { Finding } from '../../src/records/finding.js';
import { editedScreen, faultsScreen, lockedScreen, unwritableScreen } from '../../src/screens/not-started.js';
import { type StopReason, stoppedScreen } from '../../src/screens/stopped.js';
import { en } from '../../src/words/index.js';
import { contextOf } from '../publish/finding-lists.js';
import type { Obstacle } from '../publish/prepare.js';
import { reportFolder } from '../publish/report-folder.js';
import type { AuditFile } from './audit-file.js';
import type { Halt } from './outcome.js';
import type { Reply } from './reply.js';

type Command = 'run' | 'check' | 'trace' | 'draw';
type Stopped = Extract<Halt, { kind: 'stopped' }>;

/** What a command says that could not start, or that the data stopped. */
export async function haltedReply(halt: Halt, audit: AuditFile, command: Command): Promise<Reply> {
  if (halt.kind === 'faults') return faultsReply(halt.faults, audit, command);
  if (halt.kind === 'refused') return obstacleReply(halt.obstacle, audit, command);
  return stoppedReply(halt, audit, command);
}

function faultsReply(
  faults: Extract<Halt, { kind: 'faults' }>['faults'],
  { typed }: AuditFile,
  command: Command,
): Reply {
  const next = command === 'run' ? en.screens.toRun(typed) : en.screens.toCheck(typed);
  const data = { outcome: 'not started', reason: 'faults in the audit file', audit: typed, faults };
  return { code: 2, screen: faultsScreen(typed, next, faults, en.screens), data };
}

/** Why the report cannot be written. */
function obstacleReply(obstacle: Obstacle, { typed, shown }: AuditFile, command: Command): Reply {
  const next = command === 'run' ? en.screens.toRun(typed) : en.screens.toCheck(typed);
  const folder = shown(obstacle.folder);
  const data = { outcome: 'not started', reason: obstacle.kind, folder };
  switch (obstacle.kind) {
    case 'edited':
      return {
        code: 2,
        screen: editedScreen(folder, obstacle.files, typed, en.screens),
        data: { ...data, files: obstacle.files },
      };
    case 'locked':
      return { code: 2, screen: lockedScreen(folder, shown(obstacle.lock), next, en.screens), data };
    case 'unwritable':
      return {
        code: 2,
        screen: unwritableScreen(folder, obstacle.code, next, en.screens),
        data: { ...data, code: obstacle.code },
      };
  }
}

async function stoppedReply({ plan, found, folder }: Stopped, audit: AuditFile, command: Command): Promise<Reply> {
  const former = (await audit.io.stat(reportFolder(plan).target)) !== undefined;
  const list = audit.shown(`${folder}/findings.csv`);
  const reasons = stopsOf(found).map((finding) => reasonOf(finding, found, plan, audit.typed));
  const screen = stoppedScreen({ audit: audit.typed, command, former, reasons, list }, en.screens);
  return { code: 1, screen, data: { outcome: 'stopped', reasons, findings: list } };
}

function stopsOf({ findings }: Stopped['found']): readonly Finding[] {
  return Array.from({ length: findings.length }, (_, i) => findingAt(findings, i)).filter(
    ({ severity }) => severity === 'stop',
  );
}

function reasonOf(finding: Finding, found: Stopped['found'], plan: Stopped['plan'], audit: string): StopReason {
  const context = { ...contextOf(found, plan, en), audit };
  const { sentence, expected, act, lines } = tell(finding, context);
  const { column, row, source, rule } = finding;
  const { stopped } = en.screens;
  const file = context.raw[source]?.label ?? '';
  return { place: stopped.place(file, row, column ?? ''), sentence, expected, do: act, lines, rule };
}
