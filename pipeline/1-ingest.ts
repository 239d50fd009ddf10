import { answersSource } from '../src/answers/given.js';
import { findingsBuilder } from '../src/findings/builder.js';
import { fileNameIdentifier } from '../src/intake/identifiers.js';
import type { Findings } from '../src/records/finding.js';
import type { Plan } from '../src/records/plan.js';
import type { RawTable } from '../src/records/raw-table.js';
import { filesOfSource, type SourceFile } from './ingest/files.js';
import { readFile } from './ingest/read-file.js';
import type { Io, Say } from './io.js';

/** Everything that was read, and everything that stands against using it. */
export interface Ingested {
  /** One table a file, in the order of `plan.sources`; a file that could not be read has no rows. */
  raw: readonly RawTable[];
  /** Query lists that came back with answers; findings name them as if they stood behind the tables. */
  answers: readonly RawTable[];
  findings: Findings;
}

/** The files of all sources, each source's in the order in which it is read. */
async function filesOf(plan: Plan, io: Io): Promise<readonly SourceFile[]> {
  const files: SourceFile[] = [];
  for (const [source, { file }] of plan.sources.entries()) files.push(...(await filesOfSource(source, file, io)));
  return files;
}

/** Bytes that will pass: every file is read twice. */
async function bytesToPass(files: readonly SourceFile[], io: Io): Promise<number> {
  let bytes = 0;
  for (const { path } of files) bytes += 2 * ((await io.stat(path))?.bytes ?? 0);
  return bytes;
}

/**
 * Stage 1 · ingest: what do the files hold?
 *
 * in       the plan; files, through io
 * out      one table of text a file, with the columns that audit.yaml maps; findings
 * promise  every row of a file is in its table, in a finding, or counted as passed over (checked for each file); no
 *          cell is altered; everything that files stop for is told at once; cells that identify a person are never told
 */
export async function ingest(given: Plan, io: Io, say: Say): Promise<Ingested> {
  const { answers } = given.quality;
  const exports = given.sources.length;
  const plan = answers.length > 0 ? { ...given, sources: [...given.sources, answersSource(answers)] } : given;
  const files = await filesOf(plan, io);
  const total = await bytesToPass(files, io);
  const found = findingsBuilder();
  const raw: RawTable[] = [];
  let done = 0;
  for (const [source, file] of files.entries()) {
    const { table, findings } = await readFile(file, plan, io, (bytes) => {
      done += bytes;
      say('ingest', done, total);
    });
    const namesPerson = fileNameIdentifier(file.path) !== undefined;
    raw.push(namesPerson ? { ...table, label: `file ${source + 1}` } : table);
    if (namesPerson) found.add({ rule: 'file-name-identifies', severity: 'query', effect: 'kept', source });
    for (const finding of findings) found.add({ ...finding, source });
  }
  const isExport = ({ source }: RawTable): boolean => source < exports;
  // A list of answers belongs to no source of the plan.
  const lists = raw.filter((table) => !isExport(table)).map((table) => ({ ...table, source: -1 }));
  return { raw: raw.filter(isExport), answers: lists, findings: found.build() };
}
