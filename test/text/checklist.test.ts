import { describe, expect, it } from 'vitest';
import { tabulate } from '../../pipeline/6-tabulate.js';
import { figureNames, tableNames } from '../../src/plan/published.js';
import { indexResults } from '../../src/results/index.js';
import { checklist } from '../../src/text/checklist.js';
import { en } from '../../src/words/index.js';
import { comparedRows } from '../tables/compared.js';
import { planOf } from '../tables/plan.js';

const tables = tabulate(indexResults(comparedRows), planOf(), en);
const rows = checklist(tables, [], en)
  .split('\n')
  .filter((line) => line.startsWith('| ') && !line.startsWith('| ---'))
  .slice(1)
  .map((line) => line.slice(2, -2).split(' | '));

describe('checklist.md', () => {
  // The statement has 22 numbered items: von Elm E et al. PLoS Med 2007;4:e296 (from memory).
  it('has all 22 items, and for each who answers it', () => {
    const items = new Set(rows.map(([item]) => Number.parseInt(item ?? '', 10)));
    expect([...items]).toEqual(Array.from({ length: 22 }, (_, i) => i + 1));
    for (const [item, , answered, author] of rows) expect([item, answered, author]).not.toEqual([item, '–', '–']);
  });

  it('names tables by the numbers they have in this report, and none that it has not', () => {
    const flow = tables.find(({ id }) => id === 'eye-flow')?.number;
    expect(rows.find(([item]) => item === '13a–c')?.[2]).toBe(`Table ${flow}`);
    const named = rows.flatMap(([, , answered]) => answered?.match(/Table \d+/g) ?? []);
    const there = new Set(tables.map(({ number }) => `Table ${number}`));
    expect(named.filter((name) => !there.has(name))).toEqual([]);
  });

  it('refers to exhibits by names that the report knows', () => {
    const known = new Set<string>([...tableNames, ...figureNames]);
    expect(en.checklist.items.flatMap(({ exhibits }) => exhibits).filter((id) => !known.has(id))).toEqual([]);
  });
});
