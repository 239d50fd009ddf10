import { describe, expect, it } from 'vitest';
import { windowsOf } from '../../src/propose/draft/windows.js';

const visit = (aim: number | undefined, days: readonly number[] = []) => ({ name: 'v', aim, labels: [], days });

// The windows of the specification's own example: one month 21 to 45 days, three months 46 to 135.
describe('windows of visits', () => {
  it('are those in general use', () => {
    expect(windowsOf([visit(30), visit(90)])).toEqual([
      { from: 21, to: 45 },
      { from: 46, to: 135 },
    ]);
  });

  it('never overlap, whatever visits there are', () => {
    const windows = windowsOf([1, 7, 28, 30, 42, 90, 180, 365, 730].map((aim) => visit(aim)));
    windows.forEach((window, at) => {
      const former = windows[at - 1];
      if (former) expect(window?.from).toBeGreaterThan(former.to);
      expect(window?.to).toBeGreaterThanOrEqual(window?.from ?? 0);
    });
  });

  it('are widened by the days at which examinations of a visit were found', () => {
    expect(windowsOf([visit(30, [18, 25, 33, 52])])).toEqual([{ from: 18, to: 52 }]);
  });

  it('leave out a day that stands alone among many', () => {
    const days = [...Array.from({ length: 99 }, (_, i) => 25 + (i % 10)), 400];
    expect(windowsOf([visit(30, days)])).toEqual([{ from: 21, to: 45 }]);
  });

  it('a visit of which nothing is known but its label has none', () => {
    expect(windowsOf([visit(undefined)])).toEqual([undefined]);
    expect(windowsOf([visit(undefined, [60, 70])])).toEqual([{ from: 28, to: 120 }]);
  });
});
