import { describe, expect, it } from 'vitest';
import { mcNemarMidP } from '../../../src/statistics/cohorts/mid-p.js';
import { newcombePaired, squareAndAdd } from '../../../src/statistics/cohorts/newcombe.js';
import { wilson } from '../../../src/statistics/share.js';
import { referencePresent } from '../../shared-reference.js';
import { agrees, example } from '../reference-examples.js';

const withLimits = (x: number, n: number) => {
  const [low, high] = wilson(x, n, 0.95);
  return { share: x / n, low, high };
};
const unpaired = (x1: number, n1: number, x2: number, n2: number) =>
  squareAndAdd(withLimits(x1, n1), withLimits(x2, n2), 0);

const ids = [
  ...['prop2-newcombe-56_70-48_80', 'prop2-newcombe-9_10-3_10', 'prop2-newcombe-6_7-2_7', 'prop2-newcombe-5_56-0_29'],
  ...['prop2-newcombe-0_10-0_20', 'prop2-newcombe-0_10-0_10', 'prop2-newcombe-10_10-0_20', 'prop2-newcombe-10_10-0_10'],
  'prop2-fagerland-perondi',
];

describe('squareAndAdd', () => {
  it.skipIf(!referencePresent).each(ids)('is Newcombe’s method 10 on Wilson limits of prop.test: %s', (id) => {
    const { input, expected, tolerance } = example(id);
    const [low, high] = unpaired(input.x1, input.n1, input.x2, input.n2);
    expect(agrees(low, expected.newcombe[0], tolerance)).toBe(true);
    expect(agrees(high, expected.newcombe[1], tolerance)).toBe(true);
  });

  it.skipIf(!referencePresent)('with an empty cell: fisher-ritland', () => {
    const { input, expected, tolerance } = example('fisher-ritland');
    const [[x1, y1], [x2, y2]] = input.table;
    const [low, high] = unpaired(x1, x1 + y1, x2, x2 + y2);
    expect(agrees(low, expected.newcombe[0], tolerance)).toBe(true);
    expect(agrees(high, expected.newcombe[1], tolerance)).toBe(true);
  });

  // Standards page, checks 33 and 34: Newcombe RG. Stat Med 1998;17:873–890, Table II, method 10, as printed there.
  it.each([
    [56, 70, 48, 80, 0.0524, 0.3339],
    [9, 10, 3, 10, 0.1705, 0.809],
    [6, 7, 2, 7, 0.0582, 0.8062],
    [5, 56, 0, 29, -0.0381, 0.1926],
    [0, 10, 0, 20, -0.1611, 0.2775],
    [0, 10, 0, 10, -0.2775, 0.2775],
    [10, 10, 0, 20, 0.6791, 1],
  ])('has the printed limits of %d/%d − %d/%d', (x1, n1, x2, n2, low, high) => {
    expect(unpaired(x1, n1, x2, n2)[0]).toBeCloseTo(low, 4);
    expect(unpaired(x1, n1, x2, n2)[1]).toBeCloseTo(high, 4);
  });

  it('narrows where the shares move together, and stays within −1 and 1', () => {
    const [low, high] = squareAndAdd(withLimits(7, 10), withLimits(6, 10), 0.5);
    const [wideLow, wideHigh] = unpaired(7, 10, 6, 10);
    expect(low).toBeGreaterThan(wideLow);
    expect(high).toBeLessThan(wideHigh);
    expect(unpaired(1, 1, 0, 1)[1]).toBe(1);
  });
});

const pairedIds = ['paired-fagerland-cavo', 'paired-fagerland-bentur', 'paired-agresti-approval'];

describe.skipIf(!referencePresent)('paired shares against R 4.2.2', () => {
  it.each(pairedIds)('%s: corrected φ and mid-p', (id) => {
    const { input, expected, tolerance } = example(id);
    const [[both, onlyA], [onlyB, neither]] = input.table;
    const [low, high] = newcombePaired({ both, onlyA, onlyB, neither }, 0.95);
    expect(agrees(low, expected.newcombe_paired_phi_corrected[0], tolerance)).toBe(true);
    expect(agrees(high, expected.newcombe_paired_phi_corrected[1], tolerance)).toBe(true);
    expect(agrees(mcNemarMidP(onlyA, onlyB), expected.p_midp, tolerance)).toBe(true);
  });
});

describe('newcombePaired', () => {
  it('takes φ as 0 where a margin is empty, and does not correct a negative one', () => {
    expect(newcombePaired({ both: 10, onlyA: 0, onlyB: 0, neither: 0 }, 0.95)).toEqual(unpaired(10, 10, 10, 10));
    // ad − bc = 1·1 − 4·4 = −15; margins 5, 5, 5, 5: φ = −15/25.
    const expected = squareAndAdd(withLimits(5, 10), withLimits(5, 10), -0.6);
    newcombePaired({ both: 1, onlyA: 4, onlyB: 4, neither: 1 }, 0.95).forEach((limit, side) => {
      expect(limit).toBeCloseTo(expected[side] as number, 14);
    });
  });
});
