import type { Plan } from '../../src/records/plan.js';
import type { Io } from '../io.js';

/** The report folder and the names that stand beside it while, before or instead of a report being written. */
export interface ReportFolder {
  /** The report itself. */
  target: string;
  /** Being written; becomes `target` in one rename. */
  fresh: string;
  /** The former report, for the moment between two renames. */
  old: string;
  lock: string;
  /** What `check`, and a run that stopped, leave behind. */
  check: string;
}

/** Where every aggregate number stands inside a report. */
export const resultsPath = 'publication/results.csv';

/** Paths are relative to the folder of audit.yaml, with '/'. */
export function reportFolder(plan: Plan): ReportFolder {
  const beside = (name: string): string => `${plan.outputs.folder.replace(/\/+$/, '')}/${name}`;
  return {
    target: beside(plan.name),
    fresh: beside(`.${plan.name}.new`),
    old: beside(`.${plan.name}.old`),
    lock: beside(`.${plan.name}.lock`),
    check: beside(`${plan.name}.check`),
  };
}

/** Every file under a folder, as paths relative to it, in the order of UTF-16 units of each name. */
export async function filesUnder(io: Io, folder: string, below = ''): Promise<readonly string[]> {
  const found: string[] = [];
  for (const name of await io.list(below === '' ? folder : `${folder}/${below}`)) {
    const path = below === '' ? name : `${below}/${name}`;
    const entry = await io.stat(`${folder}/${path}`);
    if (entry?.kind === 'folder') found.push(...(await filesUnder(io, folder, path)));
    else if (entry) found.push(path);
  }
  return found;
}
