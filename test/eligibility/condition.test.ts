// The operators are those of ../shared/spec/7-model.md §5; thresholds compare at 1e-6 (6-settled.md).
import { describe, expect, it } from 'vitest';
import { boundOf } from '../../src/eligibility/bound.js';
import { conditionOn, type Value } from '../../src/eligibility/condition.js';
import type { Condition, Operator } from '../../src/records/plan.js';

type Wanted = Condition['value'];

function condition(operator: Operator, value: Wanted, and: readonly Condition[] = []): Condition {
  return { where: 'field', at: undefined, operator, value, and };
}

/** What a condition says of one value. */
function says(operator: Operator, wanted: Wanted, value: Value): boolean | undefined {
  return conditionOn(condition(operator, wanted), () => () => value)(0);
}

/** An operator, what it compares with, then values and what it says of them. */
type Asked = [Operator, Wanted, ...[number, boolean][]];

function decidesAsExpected([operator, wanted, ...cases]: Asked): void {
  expect(cases.map(([value]) => says(operator, wanted, value))).toEqual(cases.map(([, expected]) => expected));
}

describe('is and is_not', () => {
  it.each([
    ['manual', 'manual', true],
    ['manual', ' Manual ', true],
    [['A1', 'B2'], 'b2', true],
    [['A1', 'B2'], 'C3', false],
    [30, 30, true],
    [0.3, 0.1 + 0.2, true],
    [30, 30.00001, false],
  ] satisfies [Wanted, Value, boolean][])('%j, of %j: %j', (wanted, value, expected) => {
    expect(says('is', wanted, value)).toBe(expected);
    expect(says('is_not', wanted, value)).toBe(!expected);
  });

  it('look at each of several codes', () => {
    expect(says('is', 'DR', ['GL', 'DR'])).toBe(true);
    expect(says('is', ['PCR', 'VL'], ['GL', 'DR'])).toBe(false);
    expect(says('is_not', 'none', ['none'])).toBe(false);
  });

  it('ask about presence, which is always decided', () => {
    expect([says('is', 'missing', undefined), says('is', 'missing', 'x')]).toEqual([true, false]);
    expect([says('is', 'present', undefined), says('is', 'present', 0)]).toEqual([false, true]);
    expect([says('is_not', 'missing', undefined), says('is_not', 'present', undefined)]).toEqual([false, true]);
  });
});

describe('below, at_most, above, at_least and between', () => {
  it.each([
    ['below', 30, [29.99, true], [30, false], [30.01, false]],
    ['at_most', 30, [29.99, true], [30, true], [30.01, false]],
    ['above', 30, [29.99, false], [30, false], [30.01, true]],
    ['at_least', 30, [29.99, false], [30, true], [30.01, true]],
    ['between', [22, 30], [21.99, false], [22, true], [30, true], [30.01, false]],
  ] satisfies Asked[])('%s %j', (...asked) => decidesAsExpected(asked));

  it('compare at a millionth, so that 0.54 − 0.29 is not above 0.25', () => {
    expect(0.54 - 0.29).toBeGreaterThan(0.25);
    expect(says('above', 0.25, 0.54 - 0.29)).toBe(false);
    expect(says('at_most', 0.25, 0.54 - 0.29)).toBe(true);
  });

  it('refuse what has no order', () => {
    expect(() => says('above', 'much', 1)).toThrow('condition: much has no order; expected a number or a date');
  });
});

// 2025-06-01 is day 20240; 2025 lasts from day 20089 to day 20453 (Python: (date(2025, 6, 1) - date(1970, 1, 1)).days).
describe('dates', () => {
  it('are days, and a year all of its days', () => {
    expect(boundOf('2025-06-01')).toEqual({ first: 20240, last: 20240, isDate: true });
    expect(boundOf('2025')).toEqual({ first: 20089, last: 20453, isDate: true });
    expect(boundOf(2025)).toEqual({ first: 2025, last: 2025, isDate: false });
    expect(boundOf('June')).toBeUndefined();
  });

  it.each([
    ['at_least', '2025-06-01', [20239, false], [20240, true]],
    ['below', '2025', [20088, true], [20089, false]],
    ['at_least', '2025', [20088, false], [20089, true]],
    ['at_most', '2025', [20453, true], [20454, false]],
    ['above', '2025', [20453, false], [20454, true]],
    ['between', ['2025', '2025-06-01'], [20088, false], [20089, true], [20240, true], [20241, false]],
    ['is', '2025-06-01', [20239, false], [20240, true]],
    ['is', '2025', [20088, false], [20240, true], [20454, false]],
  ] satisfies Asked[])('%s %j', (...asked) => decidesAsExpected(asked));
});

describe('worse_than and better_than', () => {
  // A line reaches to its nominal tenth of logMAR + 0.005: that of 20/40, 6/12 and 0.5 (0.30103) from 0.205 to 0.305.
  it.each([
    ['20/40', 0.301, false, false],
    ['6/12', 0.38, true, false],
    ['0.5', 0.204, false, true],
    ['0.5', 0.206, false, false],
    ['20/40', 0.304, false, false],
  ] as const)('%s, of %d logMAR', (wanted, logMAR, worse, better) => {
    expect(says('worse_than', wanted, logMAR)).toBe(worse);
    expect(says('better_than', wanted, logMAR)).toBe(better);
  });
});

describe('a value that is missing', () => {
  it('leaves a condition undecided', () => {
    const operators = ['is', 'is_not', 'below', 'at_most', 'above', 'at_least', 'worse_than', 'better_than'] as const;
    for (const operator of operators)
      expect(says(operator, operator.endsWith('than') ? '20/40' : 30, undefined)).toBeUndefined();
  });

  it('leaves `and` undecided only while no other part is false', () => {
    const both = (first: Value, second: Value) =>
      conditionOn(
        condition('above', 30, [{ ...condition('is', 'A1'), where: 'lens' }]),
        (field) => () => (field === 'lens' ? second : first),
      )(0);
    expect([both(31, 'A1'), both(31, 'B2'), both(undefined, 'A1'), both(undefined, 'B2'), both(31, undefined)]).toEqual(
      [true, false, undefined, false, undefined],
    );
  });
});

describe('texts under `only`', () => {
  const read = (text: string, asDate: boolean) => (asDate ? 20240 : Number(text.replace(',', '.')));

  it('are compared by size as the file writes them', () => {
    const above = conditionOn(condition('above', 1.2), () => () => '1,25', read);
    expect(above(0)).toBe(true);
    const since = conditionOn(condition('at_least', '2025-06-01'), () => () => '1.6.2025', read);
    expect(since(0)).toBe(true);
  });

  it('leave the condition undecided where nothing says how they are read', () => {
    expect(says('above', 1.2, '1,25')).toBeUndefined();
  });
});
