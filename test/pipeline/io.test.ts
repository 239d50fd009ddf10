import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Io } from '../../pipeline/io.js';
import { memoryIo } from '../../pipeline/memory-io.js';
import { nodeIo } from '../../pipeline/node-io.js';

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

function freshDisk(): Io {
  const folder = mkdtempSync(join(tmpdir(), 'halfdiopter-io-'));
  folders.push(folder);
  return nodeIo(folder);
}

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

async function text(io: Io, path: string): Promise<string> {
  const parts: Uint8Array[] = [];
  for await (const part of io.open(path)) parts.push(part);
  return Buffer.concat(parts).toString('utf8');
}

// Both kinds keep the same promises, so that what holds in a test in memory holds on a disk.
describe.each([
  ['a disk', freshDisk],
  ['memory', () => memoryIo()],
])('files of %s', (_, fresh) => {
  it('reads back what was written, in folders made on the way', async () => {
    const io = fresh();
    await io.write('reports/a/é.csv', bytes('π;1,5\r\n'));
    expect(await text(io, 'reports/a/é.csv')).toBe('π;1,5\r\n');
    expect(await io.stat('reports/a/é.csv')).toEqual({ kind: 'file', bytes: 8 });
    expect((await io.stat('reports'))?.kind).toBe('folder');
  });

  it('lists files and folders by UTF-16 unit, and nothing where there is no folder', async () => {
    const io = fresh();
    for (const name of ['lane/b.csv', 'lane/B.csv', 'lane/é.csv', 'lane/10.csv', 'lane/9/x.csv', 'other.csv']) {
      await io.write(name, bytes('x'));
    }
    expect(await io.list('lane')).toEqual(['10.csv', '9', 'B.csv', 'b.csv', 'é.csv']);
    expect(await io.list('')).toEqual(['lane', 'other.csv']);
    expect(await io.list('nowhere')).toEqual([]);
    expect(await io.list('other.csv')).toEqual([]);
  });

  it('says that a file is not there, and refuses to open it', async () => {
    const io = fresh();
    expect(await io.stat('nothing.csv')).toBeUndefined();
    await expect(text(io, 'nothing.csv')).rejects.toThrow(/nothing\.csv/);
  });

  it('renames a folder with all that is in it, but never onto a full one', async () => {
    const io = fresh();
    await io.write('.audit.new/one.csv', bytes('1'));
    await io.write('.audit.new/deep/two.csv', bytes('2'));
    await io.rename('.audit.new', 'audit');
    expect(await text(io, 'audit/deep/two.csv')).toBe('2');
    expect(await io.stat('.audit.new')).toBeUndefined();
    await io.write('full/three.csv', bytes('3'));
    await expect(io.rename('audit', 'full')).rejects.toThrow();
    await expect(io.rename('absent', 'elsewhere')).rejects.toThrow();
  });

  it('removes a file or a folder, and is content where there is none', async () => {
    const io = fresh();
    await io.write('old/one.csv', bytes('1'));
    await io.write('older.csv', bytes('2'));
    await io.remove('old');
    await io.remove('never');
    expect(await io.list('')).toEqual(['older.csv']);
  });

  it('takes a path that leads out of a folder and in again', async () => {
    const io = fresh();
    await io.write('audit/../exports/./lane.csv', bytes('x'));
    expect(await io.list('exports')).toEqual(['lane.csv']);
  });
});

it('keeps what memory was given apart from the caller’s own bytes', async () => {
  const mine = bytes('abc');
  const io = memoryIo({ 'a.csv': mine });
  mine[0] = 0;
  expect(await text(io, 'a.csv')).toBe('abc');
  expect([...io.files.keys()]).toEqual(['a.csv']);
});
