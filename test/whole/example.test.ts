import { readdirSync, readFileSync, statSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type MemoryIo, memoryIo } from '../../pipeline/memory-io.js';
import { run } from '../../pipeline/run.js';

const samples = new URL('../../sample-exports/', import.meta.url);
const example = new URL('../../reports/example/', import.meta.url);

const text = (file: URL): string => readFileSync(file, 'utf8');

/** Files below a folder of the example, as paths. */
function filesOf(folder: string): readonly string[] {
  return readdirSync(new URL(folder, example), { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesOf(`${folder}${entry.name}/`) : [`${folder}${entry.name}`],
  );
}

async function reportOf(audit: string, files: readonly string[]): Promise<MemoryIo> {
  const io = memoryIo(Object.fromEntries(files.map((file) => [file, readFileSync(new URL(file, samples))])));
  const outcome = await run(text(new URL(audit, samples)), io, { replace: false }, () => undefined);
  expect(outcome.kind).toBe('published');
  return io;
}

describe('the example report in the repository', () => {
  let series: MemoryIo;
  beforeAll(async () => {
    series = await reportOf('wide-audit.yaml', ['wide.csv']);
  });

  it.each(filesOf('publication/'))('%s is what a run writes today', (path) => {
    const written = series.files.get(`../reports/short-sighted-2025/${path}`);
    // `npm run example` makes the folder anew; read what moved before it is committed.
    expect(written && Buffer.from(written).equals(readFileSync(new URL(path, example)))).toBe(true);
  });

  it('is small, and holds no pictures in pixels', () => {
    const files = filesOf('');
    expect(files.filter((path) => statSync(new URL(path, example)).size > 450_000)).toEqual([]);
    expect(files.filter((path) => !/\.(html|md|csv|svg)$/.test(path))).toEqual([]);
  });
});
