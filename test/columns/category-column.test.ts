import { table } from 'arquero';
import { expect, it } from 'vitest';
import { categoryColumn, categoryColumnBuilder, mapCategories } from '../../src/columns/category-column.js';
import { wordColumnBuilder } from '../../src/columns/word-column.js';

it('names its values, with code 0 for the missing one', () => {
  const builder = categoryColumnBuilder();
  for (const name of ['manual', undefined, 'laser', '', 'manual']) builder.push(name);
  const column = builder.finish();
  expect(column.names).toEqual(['', 'manual', 'laser']);
  expect(column.codes).toEqual(Uint8Array.of(1, 0, 2, 0, 1));
  expect([0, 1, 2, 3].map((row) => column.at(row))).toEqual(['manual', undefined, 'laser', undefined]);
  expect([builder.length, column.length]).toEqual([5, 5]);
});

it('keeps the order of declared names, whether or not they occur', () => {
  const builder = categoryColumnBuilder(['right', 'left', 'right']);
  builder.push('left');
  builder.push('other');
  expect(builder.finish().names).toEqual(['', 'right', 'left', 'other']);
  expect(builder.finish().codes).toEqual(Uint8Array.of(2, 3));
});

it('takes one byte a cell up to 255 names and two beyond, without losing a cell', () => {
  const builder = categoryColumnBuilder();
  for (let name = 0; name < 255; name += 1) builder.push(`s${name}`);
  expect(builder.finish().codes).toBeInstanceOf(Uint8Array);
  for (let row = 0; row < 3000; row += 1) builder.push(`s${row % 300}`);
  const column = builder.finish();
  expect(column.codes).toBeInstanceOf(Uint16Array);
  expect([column.at(254), column.at(255 + 299), column.at(255 + 2999)]).toEqual(['s254', 's299', 's299']);
});

it('refuses a column of free text', () => {
  const builder = categoryColumnBuilder(Array.from({ length: 65_535 }, (_, name) => `n${name}`));
  builder.push('n65534');
  expect(() => builder.push('one more')).toThrow('expected at most 65,535');
});

it('reads a column of text once a word', () => {
  const builder = wordColumnBuilder();
  for (const cell of ['L', 'M', 'L', '', '?']) builder.push(cell);
  const asked: string[] = [];
  const column = mapCategories(
    builder.finish(),
    (word) => {
      asked.push(word);
      return { L: 'laser-assisted', M: 'manual' }[word];
    },
    ['manual', 'laser-assisted'],
  );
  expect(asked).toEqual(['', 'L', 'M', '?']);
  expect(column.codes).toEqual(Uint8Array.of(2, 1, 2, 0, 0));
});

it('serves as a column of an arquero table', () => {
  const data = table({ technique: categoryColumn(['', 'a', 'b'], Uint8Array.of(1, 0, 2)), row: [1, 2, 3] });
  expect(data.filter('d => d.technique === "b"').array('row')).toEqual([3]);
  expect(data.groupby('technique').count().array('count')).toEqual([1, 1, 1]);
});

it('refuses names whose first is not the empty text', () => {
  expect(() => categoryColumn(['a'], Uint8Array.of(0))).toThrow(
    'categoryColumn: name 0 is ‘a’; expected the empty text',
  );
});
