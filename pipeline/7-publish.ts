import type { Plan } from '../src/records/plan.js';
import type { Figure } from '../src/records/report.js';
import type { Words } from '../src/words/index.js';
import { renderSvg } from './artwork/svg.js';
import type { Io, Say } from './io.js';
import { columnsFile } from './publish/columns-file.js';
import { editedFiles } from './publish/edited.js';
import type { Everything, Gathered } from './publish/everything.js';
import { figureFiles } from './publish/figure-files.js';
import { findingsFile, queriesFile, queriesOf } from './publish/finding-lists.js';
import { flowFile } from './publish/flow-file.js';
import { type Former, readFormer } from './publish/former.js';
import { takeLock } from './publish/lock.js';
import { manifest } from './publish/manifest.js';
import { type Obstacle, systemCode } from './publish/prepare.js';
import { moveIntoPlace, type OutputFile, replaceFolder } from './publish/replace.js';
import { reportFiles } from './publish/report-files.js';
import { type ReportFolder, reportFolder } from './publish/report-folder.js';

/** What was written, and what it replaced. */
export interface Published {
  kind: 'published';
  /** The report, relative to the folder of audit.yaml. */
  folder: string;
  files: readonly string[];
  /** Eyes to look at again. */
  review: number;
  former: Former | undefined;
}

export interface PublishOptions {
  words: Words;
  /** Whether files of the former report that were changed by hand may be lost. */
  replace: boolean;
}

/**
 * Stage 7 · publish: what does the reader keep?
 *
 * in       everything the run has made
 * out      one report folder: publication/ without single eyes, internal/ with them, manifest.json
 * promise  the only stage that writes; all or nothing: written beside the target, moved in place by a rename, and an
 *          interrupted run leaves the former report as it was; the same inputs give the same bytes
 */
export async function publish(
  all: Everything,
  plan: Plan,
  io: Io,
  say: Say,
  { words, replace }: PublishOptions,
): Promise<Published | { kind: 'refused'; obstacle: Obstacle }> {
  const folder = reportFolder(plan);
  if (!(await takeLock(io, folder.lock))) return refused({ kind: 'locked', folder: folder.target, lock: folder.lock });
  try {
    const edited = replace ? [] : await editedFiles(io, folder.target);
    if (edited.length > 0) return refused({ kind: 'edited', folder: folder.target, files: edited });
    const former = await readFormer(io, folder.target);
    const { files, review } = await reportFiles(all, plan, words, say);
    await writeReport(io, folder, [...files, manifest(all, plan, files)], say);
    return { kind: 'published', folder: folder.target, files: files.map(({ path }) => path), review, former };
  } catch (error) {
    return refused({ kind: 'unwritable', folder: folder.target, code: systemCode(error) });
  } finally {
    await io.remove(folder.fresh);
    await io.remove(folder.lock);
  }
}

function refused(obstacle: Obstacle): { kind: 'refused'; obstacle: Obstacle } {
  return { kind: 'refused', obstacle };
}

async function writeReport(io: Io, folder: ReportFolder, files: readonly OutputFile[], say: Say): Promise<void> {
  await io.remove(folder.fresh);
  for (const [done, { path, bytes }] of files.entries()) {
    say('publish', done, files.length);
    await io.write(`${folder.fresh}/${path}`, bytes);
  }
  await moveIntoPlace(io, folder);
  await io.remove(folder.check);
}

/**
 * What `check`, and a run that the data stopped, leave behind: findings, queries, columns and books in a folder
 * beside the report, which is not touched.
 *
 * @returns the folder, relative to that of audit.yaml
 */
export async function publishCheck(found: Gathered, plan: Plan, io: Io, words: Words): Promise<string> {
  const { check } = reportFolder(plan);
  const { spreadsheet } = plan.outputs;
  await replaceFolder(io, check, [
    findingsFile('findings.csv', found, plan, words),
    ...(found.tables ? [queriesFile('queries.csv', queriesOf(found, plan, words), plan)] : []),
    columnsFile('columns.csv', found.raw, plan, spreadsheet),
    flowFile('flow.csv', found.raw, found.tables, found.results, spreadsheet),
  ]);
  return check;
}

/**
 * One figure in a folder beside the report, which is not touched; the same files again take the place of the former.
 *
 * @returns the files, relative to the folder of audit.yaml
 */
export async function publishFigure(figure: Figure, plan: Plan, io: Io, say: Say): Promise<readonly string[]> {
  const folder = `${reportFolder(plan).target}.figures`;
  const drawn = { figure, svg: await renderSvg(figure, { identified: false }) };
  const files = await figureFiles([drawn], plan.outputs.figures, say, ({ id }) => `${folder}/${id}`);
  for (const { path, bytes } of files) await io.write(path, bytes);
  return files.map(({ path }) => path);
}
