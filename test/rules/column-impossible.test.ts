import { describe, expect, it } from 'vitest';
import { tell } from '../../src/findings/telling.js';
import { en } from '../../src/words/index.js';
import { findingsOf } from '../findings/audited.js';
import { planOf } from '../findings/plan.js';
import { before, lane } from './clinic.js';

const powers = { k1: 'K1', k2: 'K2' };
const rows = (first: readonly string[]): readonly string[] => first.map((k, i) => `A${i + 1},R,${before},${k},44`);

describe('column-impossible', () => {
  it('stops where radii are read as dioptres', async () => {
    const { findings, raw } = await lane('K1,K2', rows(['7.8', '7.7', '7.9', '43']), powers);
    const stops = findingsOf(findings, 'column-impossible');
    expect(stops).toMatchObject([
      {
        severity: 'stop',
        source: 1,
        row: 0,
        column: 'K1',
        field: 'k1',
        written: '7.8',
        effect: 'nothing published',
        detail: 3,
      },
    ]);
    const plan = planOf([{ file: 'x' }, { file: 'lane.csv', columns: { k1: { column: 'K1', line: 12 } } }]);
    const told = tell(stops[0] as never, { raw, plan, words: en.findings });
    expect(told.act).toBe('check the unit of the column (audit.yaml line 12) and the decimal mark of the file');
    expect(told.expected).toBe('30 to 60 D');
    expect(told.lines).toEqual(['k1: { column: K1, unit: mm }']);
  });

  it('offers dioptres where powers are read as radii, and no unit where neither explains the number', async () => {
    const told = async (first: string, unit: 'mm' | 'D') => {
      const columns = { k1: { column: 'K1', unit }, k2: 'K2' };
      const { findings, raw } = await lane('K1,K2', rows([first, first, first]), columns);
      const plan = planOf([{ file: 'x' }, { file: 'lane.csv', columns }]);
      return tell(findingsOf(findings, 'column-impossible')[0] as never, { raw, plan, words: en.findings }).lines;
    };
    expect(await told('43.5', 'mm')).toEqual(['k1: { column: K1, unit: D }']);
    expect(await told('435', 'D')).toEqual([]);
  });

  it('counts cells that hold a number: blanks and words do not dilute it, half is not more than half', async () => {
    const stops = async (first: readonly string[]): Promise<number> =>
      findingsOf((await lane('K1,K2', rows(first), powers)).findings, 'column-impossible').length;
    expect(await stops(['7.8', '7.7', '7.9', '', 'n/a', ''])).toBe(1);
    expect(await stops(['7.8', '7.7', '7.9', '43', '43', '43'])).toBe(0);
    expect(await stops(['7.8', '7.7', '7.9', '7.6', '43', '43', '43'])).toBe(1);
  });

  it('does not judge a column by one or two slips', async () => {
    const { findings } = await lane('K1,K2', rows(['7.8', '7.7']), powers);
    expect(findingsOf(findings, 'column-impossible')).toEqual([]);
    expect(findingsOf(findings, 'keratometry-range')).toHaveLength(2);
  });
});
