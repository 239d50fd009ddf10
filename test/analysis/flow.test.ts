import { expect, it } from 'vitest';
import { flowRows } from '../../src/analysis/flow.js';

const flow = {
  family: 'refraction',
  steps: ['no_visit', 'set_aside', 'analysed'],
  code: Uint8Array.of(2, 2, 0, 2),
} as const;

it('counts eyes and patients at every step of a group, nothing included', () => {
  const rows = flowRows(flow, { key: 'all', eyes: Int32Array.of(0, 1, 2, 3) }, Int32Array.of(7, 7, 7, 8));
  expect(rows.map(({ statistic, value, patients, eyes }) => [statistic, value, patients, eyes])).toEqual([
    ['operated', 4, 2, 4],
    ['no_visit', 1, 1, 4],
    ['set_aside', 0, 0, 4],
    ['analysed', 3, 2, 4],
  ]);
});

it('refuses a flow that loses an eye', () => {
  const lost = { ...flow, code: Uint8Array.of(2, 9) };
  expect(() => flowRows(lost, { key: 'all', eyes: Int32Array.of(0, 1) }, Int32Array.of(1, 2))).toThrow(RangeError);
});
