import { op, table } from 'arquero';
import { expect, it } from 'vitest';
import { mapWords, numberColumn } from '../../src/columns/number-column.js';
import { wordColumnBuilder } from '../../src/columns/word-column.js';

function words(cells: readonly string[]) {
  const builder = wordColumnBuilder();
  for (const cell of cells) builder.push(cell);
  return builder.finish();
}

it('reads each distinct word once, and shares the codes with the words', () => {
  const column = words(['1', '2', '1', '']);
  const asked: string[] = [];
  const numbers = mapWords(column, (word) => {
    asked.push(word);
    return word === '' ? Number.NaN : Number(word);
  });
  expect(asked).toEqual(['', '1', '2']);
  expect(numbers.codes).toBe(column.codes);
  expect([0, 1, 2, 3].map((row) => numbers.at(row))).toEqual([1, 2, 1, Number.NaN]);
});

it('lets a source say what a blank means', () => {
  expect(mapWords(words(['']), (word) => (word === '' ? 0 : Number.NaN)).at(0)).toBe(0);
});

it('serves as a column of an arquero table', () => {
  const data = table({ sphere: numberColumn(Float64Array.of(Number.NaN, -1.5, 2), Uint16Array.of(1, 2, 0, 1)) });
  const { mean, valid } = data.rollup({ mean: op.mean('sphere'), valid: op.valid('sphere') }).object() as Record<
    string,
    number
  >;
  expect(valid).toBe(3);
  expect(mean).toBeCloseTo(-1 / 3, 12);
});
