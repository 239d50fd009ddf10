import type { RunRecord } from '../../src/deidentify/run-record.js';
import { careNotes, deidentifiedScreen, notBegunScreen } from '../../src/screens/deidentify.js';
import { unfitScreen } from '../../src/screens/propose.js';
import { en } from '../../src/words/index.js';
import { type DeidentifyOutcome, deidentify as makeCopies, recordName } from '../deidentify/deidentify.js';
import { obstacleText, reasonText } from '../deidentify/reasons.js';
import type { Request } from '../deidentify/request.js';
import type { Say } from '../io.js';
import { nodeIo } from '../node-io.js';
import { askerOn, type Terminal } from '../propose/ask.js';
import { interruptible } from './interrupt.js';
import type { ExitCode, Reply } from './reply.js';

function shown(folder: string, name: string): string {
  const path = folder.replaceAll('\\', '/').replace(/\/+$/, '');
  const whole = path === '' ? `/${name}` : `${path}/${name}`;
  return /\s/.test(whole) ? `"${whole}"` : whole;
}

/** The same for programs: counts and headers, no cell. */
function doneData(record: RunRecord, out: string, replaced: boolean): Reply['data'] {
  return {
    outcome: 'de-identified',
    record: shown(out, recordName),
    replaced,
    patients: record.patients,
    newPatients: record.newPatients,
    files: record.files.map(({ copy, place, rows, columns }) => ({
      copy,
      place,
      rows,
      columns: columns.map(({ header, role, became, removed }) => ({ header, kind: role.kind, became, removed })),
    })),
    notes: careNotes(record, en),
  };
}

function replyOf(outcome: DeidentifyOutcome, { codebook, out }: Request): Reply {
  if (outcome.kind === 'refused') {
    const { title, mend } = obstacleText(outcome.obstacle, en);
    const data = { outcome: 'not started', reason: outcome.obstacle.kind };
    return { code: 2, screen: notBegunScreen(title, mend, en), data };
  }
  if (outcome.kind === 'stopped') {
    const { reasons } = outcome;
    const told = reasons.map((reason) => reasonText(reason, en));
    const isMissing = reasons.some((one) => one.why === 'unfit' && one.unfit.why === 'missing');
    const code: ExitCode = isMissing ? 2 : 1;
    const title = en.deidentify.stopped(String(reasons.length));
    const data = { outcome: isMissing ? 'not started' : 'stopped', reasons: told };
    return { code, screen: unfitScreen(title, told, en.deidentify.nextStopped, en), data };
  }
  const { record, replaced } = outcome;
  const places = { book: codebook, record: shown(out, recordName), copies: shown(out, '*.csv') };
  return { code: 0, screen: deidentifiedScreen(record, places, replaced, en), data: doneData(record, out, replaced) };
}

/**
 * `deidentify FILE…`: copies without what identifies persons, and the code book.
 *
 * @param terminal  where to ask; undefined where nobody answers
 */
export async function deidentify(
  request: Request,
  terminal: Terminal | undefined,
  say: Say,
  signal: AbortSignal,
): Promise<Reply> {
  const asker = terminal && askerOn(terminal, en);
  try {
    const io = interruptible(nodeIo('.'), signal);
    const ask = asker && ((question: Parameters<typeof asker.ask>[0]) => asker.ask(question));
    return replyOf(await makeCopies(request, { io, say, signal, ask }), request);
  } finally {
    asker?.close();
  }
}
