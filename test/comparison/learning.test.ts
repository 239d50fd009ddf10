// Learning order, counted on paper; 20 eyes are the decision of this project.
import { describe, expect, it } from 'vitest';
import { firstEyes, learningRow } from '../../src/comparison/learning.js';
import { auditOfEyes, type MadeEye } from './made-up-audit.js';

const eyes = (from: number, to: number): Int32Array => Int32Array.from({ length: to - from }, (_, i) => from + i);
const patient = eyes(0, 100);
const inOrder = { compare: (a: number, b: number) => a - b, isKnown: () => true };
const one = { ...inOrder, surgeon: new Uint8Array(100) };

describe('early eyes of a cohort', () => {
  it('are its first 20 where 20 others come before it', () => {
    const laser = { key: 'technique=laser', eyes: eyes(firstEyes, 60) };
    expect(learningRow(laser, eyes(0, 60), one, patient)).toMatchObject({ value: 20, n: 40, note: 'learning' });
    expect(learningRow({ ...laser, eyes: eyes(20, 25) }, eyes(0, 25), one, patient)).toMatchObject({ value: 5, n: 5 });
  });

  it('are none where both were in use from the start, or 19 others come before', () => {
    const laser = { key: 'technique=laser', eyes: eyes(firstEyes - 1, 60) };
    expect(learningRow(laser, eyes(0, 60), one, patient)).toMatchObject({ value: 0, note: '' });
    const odd = { key: 'technique=laser', eyes: eyes(0, 60).filter((eye) => eye % 2 === 1) };
    expect(learningRow(odd, eyes(0, 60), one, patient).value).toBe(0);
  });

  it('are counted for each surgeon apart', () => {
    // Eyes 0 to 29 are of the first surgeon, who takes it up at eye 20; 30 to 59 of the second, who always used it.
    const order = { ...inOrder, surgeon: patient.map((eye) => (eye < 30 ? 1 : 2)) };
    const laser = { key: 'technique=laser', eyes: Int32Array.of(...eyes(20, 30), ...eyes(30, 60)) };
    expect(learningRow(laser, eyes(0, 60), order, patient)).toMatchObject({ value: 10, n: 40 });
  });

  it('follow the order of operations and not that of the file', () => {
    const backwards = { ...one, compare: (a: number, b: number) => b - a };
    const laser = { key: 'technique=laser', eyes: eyes(0, 10) };
    expect(learningRow(laser, eyes(0, 60), backwards, patient).value).toBe(10);
  });

  it('are not told where no order is known', () => {
    const unknown = { ...one, isKnown: () => false };
    const row = learningRow({ key: 'technique=laser', eyes: eyes(20, 60) }, eyes(0, 60), unknown, patient);
    expect(row).toMatchObject({ value: undefined, n: 0, note: 'not-estimable:no-order' });
  });
});

describe('a technique that is taken up during the audit', () => {
  const day = (i: number): string =>
    `2025-${String(1 + Math.floor(i / 20)).padStart(2, '0')}-${String(1 + (i % 20)).padStart(2, '0')}`;
  const series = (from: number, to: number, technique: string): readonly MadeEye[] =>
    Array.from(eyes(from, to), (i) => ({
      patient: `P${100 + i}`,
      side: 'R',
      technique,
      error: (i % 7) / 10,
      surgeon: 'S1',
      day: day(i),
      examined: '2025-12-01',
    }));

  it('is told with its eyes, the file being in any order', async () => {
    const made = [...series(0, 25, 'A'), ...series(25, 50, 'B')];
    for (const rows of [made, made.toReversed()]) {
      const { results } = await auditOfEyes(rows);
      expect(results.get('confounding', 'technique=B', 'early_eyes')).toMatchObject({ value: 20, n: 25 });
      expect(results.get('confounding', 'technique=A', 'early_eyes')).toMatchObject({ value: 0, note: '' });
    }
  });
});
