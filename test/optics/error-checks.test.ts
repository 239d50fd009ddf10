import { describe, expect, it } from 'vitest';
import { meanAbsolute, medianAbsolute } from '../../src/statistics/absolute-error.js';
import { clopperPearson, wilson } from '../../src/statistics/share.js';
import { rootMeanSquare } from '../../src/statistics/spread.js';
import { summary } from '../../src/statistics/summary.js';
import { isWithin } from '../../src/statistics/within.js';
import { errorChecks } from './reference.js';

// Twenty prediction errors; the fifth is the trap of binary fractions, 0.25000000000000006.
const errors = Float64Array.of(
  ...[-0.5, 0.25, 0.12, -0.31, 0.54 - 0.29, -0.87, 1, 0.05, -0.02, 0.37],
  ...[-0.62, 0.75, 0.18, -0.44, 0.5, -1.37, 0.08, -0.19, 2, 0.29],
);
const patients = Int32Array.from(errors, (_, i) => i);
const { n, mean, sd, median, q25, q75 } = summary(errors);

const computed = new Map<string, number | undefined>([
  ['5.n', n],
  ['5.mean', mean],
  ['5.sd', sd],
  ['5.median', median],
  ['5.q1', q25],
  ['5.q3', q75],
  ['5.mae', meanAbsolute(errors, patients, 0.95).value],
  ['5.medae', medianAbsolute(errors, patients, 0.95).value],
  ['5.rmse', rootMeanSquare(errors, patients, 0.95).value],
]);
for (const limit of [0.25, 0.5, 0.75, 1, 1.5, 2]) {
  const name = limit.toFixed(2);
  computed.set(`5.within.${name}`, errors.filter((error) => isWithin(error, limit)).length);
  // How it must not be counted: the trap loses an eye at 0.25.
  computed.set(`5.naive.${name}`, errors.filter((error) => Math.abs(error) <= limit).length);
}
for (const [x, of] of [
  [45, 60],
  [0, 20],
  [20, 20],
  [1, 1],
  [7, 20],
  [850, 1000],
] as const) {
  for (const [method, interval] of [
    ['wil', wilson],
    ['cp', clopperPearson],
  ] as const) {
    const [low, high] = interval(x, of, 0.95);
    computed.set(`5.${method}.${x}_${of}.lo`, low);
    computed.set(`5.${method}.${x}_${of}.hi`, high);
  }
}

describe('error-checks.csv (R 4.2.2 and Python, by different methods)', () => {
  const rows = [...errorChecks];

  it('holds the rows it should', () => {
    expect(rows.length).toBe(45);
    expect([...computed.keys()].filter((id) => !errorChecks.has(id))).toEqual([]);
  });

  it.each(rows)('%s', (id, expected) => {
    const value = computed.get(id);
    if (value === undefined) throw new Error(`${id} is not computed`);
    expect(Math.abs(value - expected)).toBeLessThan(1e-9);
  });
});
