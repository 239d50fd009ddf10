import { hostname } from 'node:os';
import { beforeEach, describe, expect, it } from 'vitest';
import { Interrupted, interruptible } from '../../pipeline/commands/interrupt.js';
import type { Io } from '../../pipeline/io.js';
import type { MemoryIo } from '../../pipeline/memory-io.js';
import { check } from '../../pipeline/run.js';
import { briefText, exports, filesOf, fingerprints, folderWith, report, runIn, textOf } from './publish-audit.js';

// The promise checked here is spec'd in the project: a report is replaced as a whole, by a run that ended well, and
// nobody's work in it is lost unasked. Nothing outside the project could tell; the files themselves are compared.

const first = folderWith();
await runIn(first, { text: briefText });
const finished = new Map(first.files);
const former = fingerprints(first, report);

/** A folder in which the report of an earlier run lies. */
let io: MemoryIo;
beforeEach(() => {
  io = folderWith(Object.fromEntries(finished));
});

/** audit.yaml under another title: a run whose report differs from the former. */
const other = briefText.replace('Twelve eyes', 'A dozen eyes');

const besides = (of: MemoryIo): readonly string[] =>
  [...of.files.keys()].filter((path) => path.startsWith('reports/') && !path.startsWith(`${report}/`));

/** Files that fail where they are told to. */
function failing(of: Io, fails: Partial<Io>): Io {
  return { ...of, ...fails };
}

const refusal = (code: string): Error => Object.assign(new Error(code), { code });

describe('an interrupted run', () => {
  const reportFiles = filesOf(first, report).size;

  // Before the first file, after it, in the middle, before the last.
  it.each([0, 1, Math.floor(reportFiles / 2), reportFiles - 1])(
    'leaves the former report as it was, and nothing beside it: after %s files',
    async (files) => {
      const controller = new AbortController();
      let written = 0;
      const counted = failing(io, {
        write: async (path, bytes) => {
          await io.write(path, bytes);
          if (!path.includes('.new/')) return;
          written += 1;
          if (written === files) controller.abort();
        },
        stat: async (path) => {
          if (files === 0 && path.endsWith('.lock')) controller.abort();
          return io.stat(path);
        },
      });
      await expect(runIn(interruptible(counted, controller.signal), { text: other })).rejects.toThrow(Interrupted);
      expect(fingerprints(io, report)).toEqual(former);
      expect(besides(io)).toEqual([]);
    },
  );

  it('reads no further either', async () => {
    const controller = new AbortController();
    controller.abort();
    const stopped = interruptible(io, controller.signal);
    const read = async (): Promise<void> => {
      for await (const _ of stopped.open('lane.csv')) expect.unreachable();
    };
    await expect(read()).rejects.toThrow(Interrupted);
    await expect(stopped.list('.')).rejects.toThrow(Interrupted);
    await expect(stopped.stat('lane.csv')).rejects.toThrow(Interrupted);
  });
});

describe('a disk that fails', () => {
  it('while files are written: the run says why, and the former report stays', async () => {
    const full = failing(io, {
      write: (path, bytes) =>
        path.endsWith('results.csv') ? Promise.reject(refusal('ENOSPC')) : io.write(path, bytes),
    });
    expect(await runIn(full, { text: other })).toMatchObject({
      kind: 'refused',
      obstacle: { kind: 'unwritable', code: 'ENOSPC' },
    });
    expect(fingerprints(io, report)).toEqual(former);
    expect(besides(io)).toEqual([]);
  });

  it('between the two renames: the former report comes back', async () => {
    const held = failing(io, {
      rename: (from, to) => (from.endsWith('.new') ? Promise.reject(refusal('EBUSY')) : io.rename(from, to)),
    });
    expect(await runIn(held, { text: other })).toMatchObject({ kind: 'refused', obstacle: { code: 'EBUSY' } });
    expect(fingerprints(io, report)).toEqual(former);
    expect(besides(io)).toEqual([]);
  });

  it('before anything is read, where the folder cannot be written', async () => {
    const read: string[] = [];
    const closed = failing(io, {
      write: () => Promise.reject(refusal('EACCES')),
      open: (path) => {
        read.push(path);
        return io.open(path);
      },
    });
    expect(await runIn(closed, { text: briefText })).toMatchObject({
      kind: 'refused',
      obstacle: { kind: 'unwritable', code: 'EACCES' },
    });
    expect(read.filter((path) => path in exports)).toEqual([]);
  });

  it('never hides a mistake of ours', async () => {
    const broken = failing(io, { rename: () => Promise.reject(new TypeError('not a function')) });
    await expect(runIn(broken, { text: other })).rejects.toThrow(TypeError);
    expect(fingerprints(io, report)).toEqual(former);
  });
});

describe('what a run finds when it starts', () => {
  it('puts a former report back that died between the two renames', async () => {
    await io.rename(report, 'reports/.hand-audit.old');
    expect((await check(briefText, io, () => {})).kind).toBe('checked');
    expect((await runIn(io, { text: briefText })).kind).toBe('published');
    expect(fingerprints(io, report)).toEqual(former);
    expect(besides(io)).toEqual([]);
  });

  it('puts it back even where the run then stops', async () => {
    await io.rename(report, 'reports/.hand-audit.old');
    await io.remove('lane.csv');
    expect((await runIn(io, { text: briefText })).kind).toBe('stopped');
    expect(fingerprints(io, report)).toEqual(former);
  });

  it('removes what an earlier run left half written', async () => {
    await io.write('reports/.hand-audit.new/publication/index.html', Buffer.from('half'));
    expect((await runIn(io, { text: briefText })).kind).toBe('published');
    expect(besides(io)).toEqual([]);
  });

  const lock = 'reports/.hand-audit.lock';
  // Process 1 runs on every machine of this kind; no process has a number above 2^22 (proc(5), pid_max).
  it.each([
    ['of a process that runs', `1 ${hostname()}`, 'refused'],
    ['of another machine, which cannot be asked', '4194305 elsewhere', 'refused'],
    ['of a process that died', `4194305 ${hostname()}`, 'published'],
    ['that is no lock of ours', '', 'refused'],
  ])('a lock %s', async (_, text, kind) => {
    await io.write(lock, Buffer.from(text));
    expect((await runIn(io, { text: briefText })).kind).toBe(kind);
    expect(io.files.has(lock)).toBe(kind === 'refused');
  });
});

describe('a report that was changed by hand', () => {
  const table = `${report}/publication/tables/2-baseline.csv`;

  it('is not replaced, and the files are named', async () => {
    await io.write(table, Buffer.from('my own numbers'));
    await io.write(`${report}/internal/notes.txt`, Buffer.from('a note'));
    expect(await runIn(io, { text: briefText })).toEqual({
      kind: 'refused',
      obstacle: {
        kind: 'edited',
        folder: report,
        files: [
          { file: 'internal/notes.txt', how: 'added' },
          { file: 'publication/tables/2-baseline.csv', how: 'changed' },
        ],
      },
    });
    expect(textOf(io, table)).toBe('my own numbers');
  });

  it('is replaced where the reader says so', async () => {
    await io.write(table, Buffer.from('my own numbers'));
    expect((await runIn(io, { text: briefText, replace: true })).kind).toBe('published');
    expect(fingerprints(io, report)).toEqual(former);
  });

  it('is replaced where a file was only removed, or a desktop left its litter', async () => {
    await io.remove(table);
    await io.write(`${report}/publication/.DS_Store`, Buffer.from('litter'));
    expect((await runIn(io, { text: briefText })).kind).toBe('published');
    expect(fingerprints(io, report)).toEqual(former);
  });

  it.each([
    ['is no JSON', '{'],
    ['has no list of files', '{}'],
  ])('counts as wholly changed where its manifest %s', async (_, manifest) => {
    await io.write(`${report}/manifest.json`, Buffer.from(manifest));
    const outcome = await runIn(io, { text: briefText });
    expect(outcome.kind).toBe('refused');
    expect(JSON.stringify(outcome)).toContain('publication/results.csv');
  });

  it('is not taken for a report where it never was one', async () => {
    const full = folderWith({ [`${report}/thesis.docx`]: 'years of work' });
    expect(await runIn(full, { text: briefText })).toMatchObject({
      kind: 'refused',
      obstacle: { files: [{ file: 'thesis.docx', how: 'added' }] },
    });
  });

  it('is found even when the change comes while the run works', async () => {
    let changed = false;
    const late = failing(io, {
      open: (path) => {
        if (path === 'lane.csv' && !changed) {
          changed = true;
          void io.write(table, Buffer.from('my own numbers'));
        }
        return io.open(path);
      },
    });
    expect(await runIn(late, { text: briefText })).toMatchObject({ kind: 'refused', obstacle: { kind: 'edited' } });
    expect(textOf(io, table)).toBe('my own numbers');
  });
});

describe('a run that the data stop, and a check', () => {
  const checkFolder = `${report}.check`;
  const noAxis = { ...exports, 'lane.csv': exports['lane.csv']?.replace('Axis', 'Meridian') ?? '' };

  it('stop writes findings beside the report and touches nothing else', async () => {
    const stopped = folderWith({ ...Object.fromEntries(finished), ...noAxis });
    expect(await runIn(stopped, { text: briefText })).toMatchObject({ kind: 'stopped', folder: checkFolder });
    expect(fingerprints(stopped, report)).toEqual(former);
    expect([...filesOf(stopped, checkFolder).keys()].sort()).toEqual(['columns.csv', 'findings.csv', 'flow.csv']);
    expect(textOf(stopped, `${checkFolder}/findings.csv`)).toContain('column-missing');
  });

  it('check writes its four lists, and the next good run removes them', async () => {
    const checked = folderWith();
    expect(await check(briefText, checked, () => {})).toMatchObject({ kind: 'checked', folder: checkFolder });
    const names = [...checked.files.keys()].filter((path) => path.startsWith('reports/')).sort();
    expect(names).toEqual(['columns', 'findings', 'flow', 'queries'].map((name) => `${checkFolder}/${name}.csv`));
    await runIn(checked, { text: briefText });
    expect(filesOf(checked, checkFolder).size).toBe(0);
  });

  it('columns.csv says what every column is read as, and how full it is', async () => {
    const checked = folderWith();
    await check(briefText, checked, () => {});
    const lines = textOf(checked, `${checkFolder}/columns.csv`).split('\n');
    // By hand: of 23 rows of lane.csv three have no axis and one no acuity; 17 different axes are written, 11 acuities.
    expect(lines).toContain('lane.csv,6,Axis,axis,exam,23,3,17');
    expect(lines).toContain('lane.csv,7,Unaided,udva,exam,23,1,11');
  });
});
