import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { Request } from '../../pipeline/deidentify/request.js';

const asked = vi.hoisted(() => ({ requests: [] as unknown[], terminals: [] as unknown[] }));

// Only the way from words typed to a request is looked at here; the command itself has its own tests.
vi.mock('../../pipeline/commands/deidentify.js', () => ({
  deidentify: async (request: unknown, terminal: unknown) => {
    asked.requests.push(request);
    asked.terminals.push(terminal);
    return { code: 1, screen: 'stopped\n', data: { outcome: 'stopped' } };
  },
}));

const { argv } = process;
let told: string;
beforeEach(() => {
  told = '';
  asked.requests.length = 0;
  asked.terminals.length = 0;
  vi.resetModules();
  const take = (text: string | Uint8Array): boolean => {
    told += String(text);
    return true;
  };
  vi.spyOn(process.stdout, 'write').mockImplementation(take);
  vi.spyOn(process.stderr, 'write').mockImplementation(take);
});
afterEach(() => {
  vi.restoreAllMocks();
  process.argv = argv;
  process.exitCode = 0;
});

/** Gives the command these words. */
async function typed(...words: readonly string[]): Promise<number> {
  process.exitCode = 0;
  process.argv = ['node', 'halfdiopter', 'deidentify', ...words];
  await import('../../pipeline/cli.js');
  return process.exitCode as number;
}

const least = ['a.csv', 'b.csv', '--codebook', 'codes.csv', '--out', 'copies'];

it('takes files, book and folder; operations have their rank, and nothing is asked without a terminal', async () => {
  expect(await typed(...least)).toBe(1);
  expect(asked.requests[0]).toMatchObject({
    files: ['a.csv', 'b.csv'],
    codebook: 'codes.csv',
    out: 'copies',
    patient: [],
    surgeryDate: [],
    keep: [],
    order: true,
    yes: false,
  } satisfies Request);
  expect(asked.terminals).toEqual([undefined]);
  expect(told).toBe('stopped\n');
});

it('takes every option, columns more than once', async () => {
  const options = ['--patient', 'MRN', '--patient', 'ID', '--surgery-date', 'Termin', '--date-order', 'day-first'];
  await typed(...least, ...options, '--keep', 'Remarks', '--keep', 'Notes', '--no-order', '--yes', '--json');
  expect(asked.requests[0]).toMatchObject({
    patient: ['MRN', 'ID'],
    surgeryDate: ['Termin'],
    dateOrder: 'day-first',
    keep: ['Remarks', 'Notes'],
    order: false,
    yes: true,
  });
  expect(told).toContain('{"outcome":"stopped"}');
});

it.each([
  ['no file', ['--codebook', 'codes.csv', '--out', 'copies']],
  ['no code book', ['a.csv', '--out', 'copies']],
  ['no folder', ['a.csv', '--codebook', 'codes.csv']],
  ['an order that is none', [...least, '--date-order', 'last']],
])('ends with 2 for %s', async (_, words) => {
  expect(await typed(...words)).toBe(2);
  expect(asked.requests).toEqual([]);
  expect(told).toContain('Next   halfdiopter --help');
});
