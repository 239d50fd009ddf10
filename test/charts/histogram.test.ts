import { describe, expect, it } from 'vitest';
import { barsOf, binsOf, extentOf, shareAxis } from '../../src/charts/histogram.js';
import { indexResults } from '../../src/results/index.js';
import { inventedEyes, inventedRows } from './synthetic.js';

const results = indexResults(inventedRows(inventedEyes(50)));
const bins = binsOf(results, 'prediction_error', 'all');

describe('bins', () => {
  it('run from below −2.125 D to above +2.125 D without a gap', () => {
    expect(bins).toHaveLength(19);
    expect([bins[0]?.from, bins[0]?.to]).toEqual([-Infinity, -2.125]);
    expect([bins.at(-1)?.from, bins.at(-1)?.to]).toEqual([2.125, Infinity]);
    expect(bins.slice(1).map(({ from }) => from)).toEqual(bins.slice(0, -1).map(({ to }) => to));
  });

  it('are as wide as one another where they are drawn, the open ones a little apart', () => {
    const extents = bins.map((bin) => extentOf(bin, 0.25));
    for (const [from, to] of extents) expect(to - from).toBeCloseTo(0.25, 12);
    expect(extents[0]).toEqual([-2.5, -2.25]);
    expect(extents.at(-1)).toEqual([2.25, 2.5]);
  });
});

describe('bars', () => {
  it('add up to all eyes', () => {
    const total = barsOf(bins, 0.25).reduce((sum, { share }) => sum + share, 0);
    expect(total).toBeCloseTo(1, 12);
  });

  it('are left out where a count is hidden', () => {
    const hidden = bins.map((bin) => ({ ...bin, row: { ...bin.row, value: undefined } }));
    expect(barsOf(hidden, 0.25)).toEqual([]);
  });
});

it.each([
  { tallest: 1, top: 1, ticks: [0, 0.25, 0.5, 0.75, 1] },
  { tallest: 0.27, top: 0.3, ticks: [0, 0.1, 0.2, 0.3] },
  { tallest: 0.22, top: 0.25, ticks: [0, 0.1, 0.2] },
  { tallest: 0.08, top: 0.1, ticks: [0, 0.05, 0.1] },
  { tallest: 0, top: 0.05, ticks: [0, 0.05] },
])('the axis of shares ends just above $tallest', ({ tallest, top, ticks }) => {
  const axis = shareAxis(tallest);
  expect(axis.top).toBeCloseTo(top, 12);
  expect(axis.ticks).toHaveLength(ticks.length);
  axis.ticks.forEach((tick, i) => {
    expect(tick).toBeCloseTo(ticks[i] as number, 12);
  });
});
