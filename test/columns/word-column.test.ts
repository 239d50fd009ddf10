import { table } from 'arquero';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { wordColumn, wordColumnBuilder } from '../../src/columns/word-column.js';

function columnOf(cells: readonly string[]) {
  const builder = wordColumnBuilder();
  for (const cell of cells) builder.push(cell);
  return builder.finish();
}

it('gives back every cell as it came, and stores each text once', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('', 'OD', 'OS', ' OD', '1,25'), { maxLength: 3000 }), (cells) => {
      const column = columnOf(cells);
      expect(column.length).toBe(cells.length);
      expect(cells.every((cell, row) => column.at(row) === cell)).toBe(true);
      expect(new Set(column.words).size).toBe(column.words.length);
    }),
  );
});

it('has the blank cell as word 0, whether or not it occurs', () => {
  expect(columnOf(['OD']).words).toEqual(['', 'OD']);
  expect(columnOf(['OD', '']).codes).toEqual(Uint16Array.of(1, 0));
  expect(columnOf([]).words).toEqual(['']);
});

it('takes two bytes a cell up to 65,536 words and four beyond, without losing a cell', () => {
  const cells = Array.from({ length: 65_537 }, (_, row) => `P${row}`);
  const narrow = columnOf(cells.slice(0, 65_535));
  expect(narrow.codes).toBeInstanceOf(Uint16Array);
  expect(narrow.at(65_534)).toBe('P65534');
  const wide = columnOf([...cells, 'P0']);
  expect(wide.codes).toBeInstanceOf(Uint32Array);
  expect([wide.at(0), wide.at(65_535), wide.at(65_536), wide.at(65_537)]).toEqual(['P0', 'P65535', 'P65536', 'P0']);
});

it('can be looked at while it is being read', () => {
  const builder = wordColumnBuilder();
  builder.push('a');
  builder.push('a');
  expect([builder.length, builder.words()]).toEqual([2, ['', 'a']]);
});

it('serves as a column of an arquero table', () => {
  const data = table({ eye: columnOf(['OD', '', 'OS']), row: [1, 2, 3] });
  expect(data.numRows()).toBe(3);
  expect(data.filter('d => d.eye === "OS"').array('row')).toEqual([3]);
  expect(data.orderby('eye').array('row')).toEqual([2, 1, 3]);
});

it('refuses words whose first is not the blank cell', () => {
  expect(() => wordColumn(['OD'], Uint16Array.of(0))).toThrow('wordColumn: word 0 is ‘OD’; expected the blank cell');
});
