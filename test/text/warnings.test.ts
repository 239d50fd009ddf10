import { describe, expect, it } from 'vitest';
import type { ResultRow } from '../../src/records/result.js';
import { indexResults } from '../../src/results/index.js';
import { warnings } from '../../src/text/warnings.js';
import { en } from '../../src/words/index.js';
import { auditRows, replaced } from '../tables/audit.js';
import { comparedRows } from '../tables/compared.js';
import { planOf } from '../tables/plan.js';
import { rowsOf } from '../tables/rows.js';

const manual = 'technique=manual';
const laser = 'technique=laser & co';

function idsWith(...changes: readonly (readonly ResultRow[])[]): readonly string[] {
  return warnings(indexResults(replaced(auditRows, changes.flat())), planOf(), en).map(({ id }) => id);
}

/** Eyes with outcome of 200 due. */
function known(group: string, eyes: number): readonly ResultRow[] {
  return rowsOf({ measure: 'completeness', group, n: 200, unit: 'share' }, { share: eyes / 200, count: eyes });
}

function patients(group: string, number: number): readonly ResultRow[] {
  return rowsOf({ measure: 'eyes_operated', group, n: 60, patients: number, unit: 'eyes' }, { count: 60 });
}

describe('warnings', () => {
  it('are silent but for fellow eyes where all is well', () => {
    expect(warnings(indexResults(auditRows), planOf(), en)).toEqual([
      {
        id: 'both-eyes',
        text: '153 of 268 patients have both eyes in the audit. Fellow eyes resemble each other; every interval allows for it.',
      },
    ]);
  });

  it('tell of fewer than 30 patients, in any cohort', () => {
    expect(idsWith(patients(manual, 30))).toEqual(['both-eyes']);
    expect(idsWith(patients(manual, 29))).toEqual(['few-patients', 'both-eyes']);
  });

  it('tell of a follow-up below 80 %, the limit itself being enough', () => {
    expect(idsWith(known('all', 160), known(manual, 160), known(laser, 160))).toEqual(['both-eyes']);
    expect(idsWith(known('all', 159), known(manual, 160), known(laser, 160))).toEqual(['follow-up-low', 'both-eyes']);
  });

  // 183/200 − 163/200 is 0.10000000000000009 in binary: ten points are not more than ten points.
  it('tell of cohorts that differ by more than 10 points', () => {
    expect(idsWith(known(manual, 183), known(laser, 163))).toEqual(['both-eyes']);
    expect(idsWith(known(manual, 183), known(laser, 162))).toEqual(['follow-up-uneven', 'both-eyes']);
  });

  it('pass over cohorts of which no eye was due', () => {
    const none = rowsOf({ measure: 'completeness', group: laser, n: 0, unit: 'share' }, { share: undefined });
    expect(idsWith(none)).toEqual(['both-eyes']);
  });

  it('say nothing of fellow eyes where each patient has one eye', () => {
    expect(idsWith(rowsOf({ measure: 'eyes_operated', n: 421 }, { patients_both_eyes: 0 }))).toEqual([]);
  });

  it('name the cohorts with their numbers', () => {
    const rows = replaced(auditRows, [...known(manual, 190), ...known(laser, 150)]);
    const [low, uneven] = warnings(indexResults(rows), planOf(), en);
    expect(low?.text).toContain('(laser & co: 150 of 200, 75.0 %)');
    expect(uneven?.text).toContain('(manual: 190 of 200, 95.0 %; laser & co: 150 of 200, 75.0 %)');
  });

  it('tell what else differs between cohorts that are compared', () => {
    const told = warnings(indexResults(comparedRows), planOf(), en);
    expect(told.map(({ id }) => id)).toEqual(['confounded', 'operated-apart', 'seen-apart', 'both-eyes']);
    expect(told[0]?.text).toContain('laser & co and manual are not alike in surgeon (25.5 % of their mix is common)');
  });
});
