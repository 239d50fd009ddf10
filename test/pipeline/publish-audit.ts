import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { RunOutcome } from '../../pipeline/commands/outcome.js';
import type { Io } from '../../pipeline/io.js';
import { type MemoryIo, memoryIo } from '../../pipeline/memory-io.js';
import { run } from '../../pipeline/run.js';

const folder = new URL('../hand-audit/', import.meta.url);
const read = (name: string): string => readFileSync(new URL(name, folder), 'utf8');

/** Codes of patients that nothing else in a report can spell. */
export const patientCode = /ZQX\d{4}/;
const coded = (csv: string): string => csv.replace(/^H(\d),/gm, 'ZQX000$1,');

/** audit.yaml of the hand audit: twelve eyes of eight patients, worked in test/hand-audit/sheet.md. */
export const auditText = read('audit.yaml');

/** The same without a figure and without the table of the eye flow: a run that is soon over. */
export const briefText = `${auditText}
outputs: { leave_out: [eye-flow, prediction-error, accuracy-shares, acuity-cumulative, double-angle] }
`;

/** Its three exports, the patients called ZQX0001 to ZQX0008. */
export const exports: Readonly<Record<string, string>> = {
  'theatre.csv': coded(read('theatre.csv')),
  'lane.csv': coded(read('lane.csv')),
  'keratometer.csv': coded(read('keratometer.csv')),
};

export const report = 'reports/hand-audit';

/** A folder with the exports and whatever else is put there. */
export function folderWith(more: Readonly<Record<string, string | Uint8Array>> = {}): MemoryIo {
  return memoryIo({ ...exports, ...more });
}

export function runIn(io: Io, options: { text?: string; replace?: boolean } = {}): Promise<RunOutcome> {
  return run(options.text ?? auditText, io, { replace: options.replace ?? false }, () => {});
}

/** Files below a folder, by path relative to it. */
export function filesOf(io: MemoryIo, below: string): ReadonlyMap<string, Uint8Array> {
  const inside = [...io.files].filter(([path]) => path.startsWith(`${below}/`));
  return new Map(inside.map(([path, bytes]) => [path.slice(below.length + 1), bytes]));
}

/** The same as a hash a file: equal where every byte is equal, and compared in no time. */
export function fingerprints(io: MemoryIo, below: string): Readonly<Record<string, string>> {
  const hashed = [...filesOf(io, below)].map(([path, bytes]) => [
    path,
    createHash('sha256').update(bytes).digest('hex'),
  ]);
  return Object.fromEntries(hashed);
}

export function textOf(io: MemoryIo, path: string): string {
  const bytes = io.files.get(path);
  if (!bytes) throw new RangeError(`textOf: there is no ${path}`);
  return new TextDecoder('utf-8').decode(bytes);
}
