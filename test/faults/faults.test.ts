import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { allFaults, plantFault } from './plant.js';

const root = new URL('../../', import.meta.url);

describe('the list of faults', () => {
  it.each(allFaults.map((fault) => [fault.name, fault] as const))('%s: stands where the list says', (_, fault) => {
    const source = readFileSync(new URL(fault.file, root), 'utf8');
    expect(plantFault(source, fault)).not.toBe(source);
    expect(existsSync(new URL(fault.seenBy, root)), fault.seenBy).toBe(true);
  });

  it('names each fault once', () => {
    expect(new Set(allFaults.map(({ name }) => name)).size).toBe(allFaults.length);
  });
});

describe('planting', () => {
  const fault = { name: 'turned', file: 'a.ts', find: 'a - b', replace: 'b - a', seenBy: 'a.test.ts' };

  it('replaces the one text, and nothing in it means anything else', () => {
    expect(plantFault('return a - b;', fault)).toBe('return b - a;');
    expect(plantFault('return a - b;', { ...fault, replace: '$& - $1' })).toBe('return $& - $1;');
  });

  it('refuses a text that is not there, or there twice', () => {
    expect(() => plantFault('return a + b;', fault)).toThrow(
      'fault "turned": the text it replaces must stand once in a.ts; found 0 times',
    );
    expect(() => plantFault('a - b, a - b', fault)).toThrow('found 2 times');
  });
});
