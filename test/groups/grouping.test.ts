import { describe, expect, it } from 'vitest';
import { categoryColumnBuilder } from '../../src/columns/category-column.js';
import { groupByBand, groupByCategory, groupByNumber, groupSizes, reordered } from '../../src/groups/grouping.js';
import type { Grouping } from '../../src/records/derived.js';

/** The group of each eye by name; undefined where it belongs to none. */
function groupOfEach({ names, code }: Grouping): (string | undefined)[] {
  return Array.from(code, (index) => names[index - 1]);
}

function categories(...values: readonly (string | undefined)[]) {
  const builder = categoryColumnBuilder();
  for (const value of values) builder.push(value);
  return builder.finish();
}

describe('groups by a named value', () => {
  it('stand in the order of UTF-16 units, whatever the order of the rows', () => {
    const one = groupByCategory('lens_model', categories('b', 'A', 'Ä', 'a'));
    expect(one.names).toEqual(['A', 'a', 'b', 'Ä']);
    expect(groupOfEach(one)).toEqual(['b', 'A', 'Ä', 'a']);
    expect(groupByCategory('lens_model', categories('a', 'Ä', 'A', 'b')).names).toEqual(one.names);
  });

  it('end with the eyes that have none, where there are any', () => {
    const groups = groupByCategory('surgeon', categories('S2', undefined, 'S1'));
    expect(groups.names).toEqual(['S1', 'S2', '(missing)']);
    expect(groupOfEach(groups)).toEqual(['S2', '(missing)', 'S1']);
  });
});

describe('groups by a number', () => {
  it('ascend as numbers, not as texts', () => {
    const groups = groupByNumber('year', Float64Array.of(10, 9, Number.NaN, 10));
    expect(groups.names).toEqual(['9', '10', '(missing)']);
    expect(groupOfEach(groups)).toEqual(['10', '9', '(missing)', '10']);
  });

  it('keep empty bands, so that tables have every row', () => {
    const groups = groupByBand('k_mean', Float64Array.of(43, 46, 47), [42, 46]);
    expect(groups.names).toEqual(['(-,42)', '[42,46]', '(46,-)']);
    expect(groupSizes(groups)).toEqual([0, 2, 1]);
  });
});

describe('another order', () => {
  it('keeps each eye in its group, and drops the groups that are not named', () => {
    const groups = groupByCategory('technique', categories('a', 'b', 'c', 'b'));
    const other = reordered(groups, ['c', 'b']);
    expect(other.names).toEqual(['c', 'b']);
    expect(groupOfEach(other)).toEqual([undefined, 'b', 'c', 'b']);
    expect(groupSizes(other)).toEqual([1, 2]);
  });
});
