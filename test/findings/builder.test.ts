import { describe, expect, it } from 'vitest';
import { concatFindings, countOfSeverity, findingAt, findingsBuilder } from '../../src/findings/builder.js';
import { groupFindings } from '../../src/findings/groups.js';
import { noDay } from '../../src/records/canonical.js';

const full = {
  rule: 'axis-range',
  severity: 'set aside',
  source: 2,
  row: 88,
  column: 'Ax',
  field: 'axis',
  written: '195',
  eye: 7,
  day: 40,
  effect: 'vector left out',
  detail: 180,
  other: 1.25,
} as const;

describe('findings', () => {
  it('come back as they were added; what was not said stands for none', () => {
    const found = findingsBuilder();
    found.add(full);
    found.add({ rule: 'file-missing', severity: 'stop', effect: 'nothing published' });
    const built = found.build();
    expect([found.length, built.length]).toEqual([2, 2]);
    expect(findingAt(built, 0)).toEqual(full);
    expect(findingAt(built, 1)).toEqual({
      rule: 'file-missing',
      severity: 'stop',
      source: -1,
      row: 0,
      column: undefined,
      field: undefined,
      written: undefined,
      eye: -1,
      day: noDay,
      effect: 'nothing published',
      detail: Number.NaN,
      other: Number.NaN,
    });
    expect(() => findingAt(built, 2)).toThrow(RangeError);
  });

  it('of several stages are joined in their order', () => {
    const lists = [1, 2, 3].map((row) => {
      const found = findingsBuilder();
      found.add({ ...full, row });
      return found.build();
    });
    const all = concatFindings([...lists, findingsBuilder().build()]);
    expect([...all.row]).toEqual([1, 2, 3]);
    expect(findingAt(all, 2)).toEqual({ ...full, row: 3 });
  });

  it('keep rows and places of more different values than a column of names can hold', () => {
    const found = findingsBuilder();
    for (let row = 1; row <= 70_000; row++) found.add({ ...full, row, written: `value ${row}` });
    const built = found.build();
    expect(built.length).toBe(70_000);
    expect(findingAt(built, 65_534).written).toBe('value 65535');
    expect(findingAt(built, 69_999)).toMatchObject({ row: 70_000, column: 'Ax', written: undefined });
  });

  it('are counted by severity, and grouped by rule with their eyes', () => {
    const found = findingsBuilder();
    for (const eye of [3, 3, 5]) found.add({ ...full, eye });
    found.add({ ...full, severity: 'query' });
    found.add({ rule: 'row-ragged', severity: 'set aside', effect: 'row left out', row: 4 });
    const built = found.build();
    expect(['note', 'query', 'set aside', 'stop'].map((one) => countOfSeverity(built, one as 'note'))).toEqual([
      0, 1, 4, 0,
    ]);
    expect(groupFindings(built, 'set aside')).toMatchObject([
      { rule: 'axis-range', severity: 'set aside', count: 3, eyes: 2, first: [{ eye: 3 }, {}, {}] },
      { rule: 'row-ragged', count: 1, eyes: 0, first: [{ row: 4 }] },
    ]);
  });
});
