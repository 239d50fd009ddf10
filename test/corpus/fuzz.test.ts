// Exports written otherwise, or damaged, at random: the same results or a finding, and never another number in silence.
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { ingest } from '../../pipeline/1-ingest.js';
import { harmonise } from '../../pipeline/2-harmonise.js';
import { qualify } from '../../pipeline/3-qualify.js';
import { derive } from '../../pipeline/4-derive.js';
import { analyse } from '../../pipeline/5-analyse.js';
import { memoryIo } from '../../pipeline/memory-io.js';
import { plan as planFrom } from '../../pipeline/plan.js';
import { concatFindings } from '../../src/findings/builder.js';
import { tell } from '../../src/findings/telling.js';
import type { Derived } from '../../src/records/derived.js';
import type { Finding } from '../../src/records/finding.js';
import { en } from '../../src/words/index.js';
import { allFindings } from '../findings/audited.js';
import { damaging } from './damaging.js';
import { harmless, type Mutation } from './harmless.js';
import { bytesOf, drawFrom, files, handExport, handText, type WrittenExport } from './written-export.js';

/** The audit of the twelve eyes; that cylinders carry their sign is left to be seen. */
const planned = planFrom(handText('audit.yaml').replace('{ column: Cyl, notation: signed }', 'Cyl'));
if ('faults' in planned) throw new RangeError('audit.yaml of the hand audit has faults');
const { plan } = planned;
const originals: Readonly<Record<string, Uint8Array>> = Object.fromEntries(
  files.map((file) => [file, bytesOf(handExport(file))]),
);

interface Found {
  /** Every value of every eye and visit; undefined where the audit stopped. */
  values: string | undefined;
  /** How many findings there are of each rule and severity. */
  told: ReadonlyMap<string, number>;
  derived: Derived | undefined;
}

/** Columns that say where a value stood, and not what it is. */
const places = ['source', 'block', 'row'];

function valuesOf({ eyes, eyeVisits, membership, tables }: Derived): string {
  const columns = [eyes, eyeVisits].flatMap((table) =>
    table
      .columnNames()
      .filter((name) => !places.includes(name))
      .map((name) => [name, Array.from(table.array(name) as Iterable<unknown>, String)]),
  );
  return JSON.stringify([tables.patients, columns, membership], undefined, 1);
}

async function found(changed: Readonly<Record<string, Uint8Array>>): Promise<Found> {
  const read = await ingest(plan, memoryIo({ ...originals, ...changed }), () => {});
  const harmonised = hasStop(allFindings(read.findings)) ? undefined : harmonise(read.raw, plan);
  const soFar = concatFindings([read.findings, ...(harmonised ? [harmonised.findings] : [])]);
  const qualified = harmonised && !hasStop(allFindings(soFar)) ? qualify(harmonised.tables, read.raw, plan) : undefined;
  const findings = allFindings(concatFindings([soFar, ...(qualified ? [qualified.findings] : [])]));
  // Every finding can be put into words, whatever stood in the file.
  for (const one of findings) tell(one, { raw: read.raw, plan, words: en.findings });
  const derived = qualified && !hasStop(findings) ? derive(qualified.tables, plan) : undefined;
  return { values: derived && valuesOf(derived), told: counted(findings), derived };
}

const hasStop = (findings: readonly Finding[]): boolean => findings.some(({ severity }) => severity === 'stop');

function counted(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const told = new Map<string, number>();
  for (const { rule, severity } of findings) {
    const key = `${severity} ${rule}`;
    told.set(key, (told.get(key) ?? 0) + 1);
  }
  return told;
}

const original = await found({});

/** What was told beyond what the undamaged exports raise; notes tell of nothing that is amiss. */
function newlyTold({ told }: Found): readonly string[] {
  return [...told].flatMap(([key, count]) =>
    !key.startsWith('note') && count > (original.told.get(key) ?? 0) ? [key] : [],
  );
}

/** Two changes of one kind would be one, or undo each other. */
function distinct(names: readonly Mutation[]): readonly Mutation[] {
  return names.filter((one, at) => names.indexOf(one) === at);
}

function mutated(file: string, mutations: readonly Mutation[], seed: number) {
  const written: WrittenExport = handExport(file);
  const applied = distinct(mutations).filter((mutation, i) => mutation.apply(written, drawFrom(seed + i)));
  return { bytes: bytesOf(written), names: applied.map(({ name }) => name) };
}

const fileAndSeed = { file: fc.constantFrom(...files), seed: fc.integer({ min: 1, max: 1e9 }) };
const bounded = { seed: 20251, numRuns: 200, endOnFailure: false } as const;

describe('a harmless change', () => {
  const tried = new Map<string, { read: number; of: number; refused: Set<string> }>();
  let read = 0;
  let runs = 0;

  it('gives the same results, or a finding', async () => {
    const input = fc.record({
      ...fileAndSeed,
      mutations: fc.array(fc.constantFrom(...harmless), { minLength: 1, maxLength: 3 }),
    });
    await fc.assert(
      fc.asyncProperty(input, async ({ file, seed, mutations }) => {
        const { bytes, names } = mutated(file, mutations, seed);
        if (names.length === 0) return;
        const now = await found({ [file]: bytes });
        const isSame = now.values === original.values;
        if (!isSame) expect(newlyTold(now), names.join(', ')).not.toEqual([]);
        runs++;
        if (isSame) read++;
        for (const name of names) {
          const count = tried.get(name) ?? { read: 0, of: 0, refused: new Set() };
          tried.set(name, { ...count, read: count.read + (isSame ? 1 : 0), of: count.of + 1 });
          if (!isSame) for (const told of newlyTold(now)) count.refused.add(`${told} (${names.join(' + ')}, ${file})`);
        }
      }),
      bounded,
    );
  });

  it('is read, and not refused, in 95 of 100', () => {
    expect(runs).toBeGreaterThan(150);
    const refusals = [...tried]
      .filter(([, { read: own, of }]) => own < of)
      .map(([name, { refused }]) => [name, ...refused]);
    expect(read / runs, JSON.stringify(refusals, undefined, 1)).toBeGreaterThanOrEqual(0.95);
  });

  it('of every kind was tried, and each kind is read', () => {
    expect(harmless.filter(({ name }) => !tried.has(name)).map(({ name }) => name)).toEqual([]);
    expect([...tried].filter(([, { read: own }]) => own === 0).map(([name]) => name)).toEqual([]);
  });

  afterAll(() => console.log(`harmless changes read: ${read} of ${runs} exports`));
});

/** The given file first: some damage needs a column that not every file has. */
function damaged(first: string, mutations: readonly Mutation[], seed: number) {
  const order = [first, ...files.filter((file) => file !== first)];
  const tries = order.map((file) => ({ file, ...mutated(file, mutations, seed) }));
  return tries.find(({ names }) => names.includes(mutations.at(-1)?.name ?? ''));
}

describe('damage is told, or leaves everything as it was', () => {
  it.each(damaging.map((damage) => [damage.name, damage] as const))('%s', async (_, damage) => {
    let tried = 0;
    const input = fc.record({ ...fileAndSeed, before: fc.array(fc.constantFrom(...harmless), { maxLength: 2 }) });
    await fc.assert(
      fc.asyncProperty(input, async ({ file, seed, before }) => {
        const made = damaged(file, [...before, damage], seed);
        if (!made) return;
        const now = await found({ [made.file]: made.bytes });
        tried++;
        if (now.values !== original.values)
          expect(newlyTold(now), `${made.names.join(', ')} in ${made.file}`).not.toEqual([]);
      }),
      { ...bounded, numRuns: 12 },
    );
    expect(tried).toBeGreaterThan(6);
  });
});

it('results rows are the same where the values of eyes and visits are', async () => {
  const first = original.derived as Derived;
  const rows = JSON.stringify(analyse(first, plan));
  for (const [file, at] of files.map((name, i) => [name, i] as const)) {
    const { bytes } = mutated(file, harmless.slice(at * 5, at * 5 + 2), 7 + at);
    const { derived } = await found({ [file]: bytes });
    expect(JSON.stringify(analyse(derived as Derived, plan))).toBe(rows);
  }
});
