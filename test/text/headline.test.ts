import { describe, expect, it } from 'vitest';
import { indexResults } from '../../src/results/index.js';
import { headlineBasis, headlines } from '../../src/text/headline.js';
import { en } from '../../src/words/index.js';
import { auditRows, replaced, without } from '../tables/audit.js';
import { rowsOf } from '../tables/rows.js';

const results = indexResults(auditRows);
const shown = (rows = auditRows) =>
  headlines(indexResults(rows), en).map(({ id, fraction, value, interval }) => [id, fraction, value, interval]);

describe('headlines', () => {
  // Texts by hand from audit.ts: 278/371 = 0.74933, 386/407 = 0.94840, 4/421 = 0.00950.
  it('are the six numbers that an audit is judged by, parts below theirs', () => {
    expect(shown()).toEqual([
      ['operated', '', '421 eyes, 268 patients', ''],
      ['outcome-known', '386 of 407', '94.8 %', '92.2 to 96.8, exact'],
      ['within-half', '278 of 371', '74.9 %', '70.3 to 79.1'],
      ['mean-error', '', '\u22120.06 D', '\u22120.10 to \u22120.01'],
      ['cylinder', '278 of 371', '74.9 %', '70.3 to 79.1'],
      ['corrected', '278 of 371', '74.9 %', '70.3 to 79.1'],
      ['uncorrected', '278 of 371', '74.9 %', '70.3 to 79.1'],
      ['complication', '4 of 421', '1.0 %', '0.3 to 2.4, exact'],
    ]);
    const parts = headlines(results, en).filter(({ part }) => part);
    expect(parts.map(({ id }) => id)).toEqual(['outcome-known', 'uncorrected']);
  });

  it('name the rows they come from', () => {
    const within = headlines(results, en).find(({ id }) => id === 'within-half');
    expect(within?.from).toEqual(['prediction_error|all|share_within_0.50', 'prediction_error|all|count_within_0.50']);
  });

  it('count the target error where too few eyes have a prediction, and say so', () => {
    const few = replaced(auditRows, rowsOf({ measure: 'prediction_error', n: 300 }, { n: 300 }));
    expect(headlineBasis(results, en)).toBe('by predicted refraction');
    expect(headlineBasis(indexResults(few), en)).toBe('by the surgeon’s target');
    const within = headlines(indexResults(few), en).find(({ id }) => id === 'within-half');
    expect(within?.from[0]).toBe('target_error|all|share_within_0.50');
  });

  it('leave out what no eye of the audit allows', () => {
    const bare = without(auditRows, ({ measure }) =>
      /^(prediction|target)_error|^cdva$|^any_complication$/.test(measure),
    );
    expect(shown(bare).map(([id]) => id)).toEqual(['operated', 'outcome-known', 'cylinder', 'uncorrected']);
    expect(headlines(indexResults(bare), en).at(-1)?.part).toBe(false);
    expect(headlineBasis(indexResults(bare), en)).toBe('');
  });

  it('leave out how many outcomes are known while none is due', () => {
    const none = replaced(auditRows, rowsOf({ measure: 'completeness', n: 0, unit: 'share' }, { share: undefined }));
    expect(shown(none).map(([id]) => id)).not.toContain('outcome-known');
  });

  it('show a share without an interval as its fraction', () => {
    const few = { measure: 'any_complication', n: 2, unit: 'share', note: 'not-estimable:few-patients' };
    const rows = replaced(auditRows, rowsOf(few, { share: 0, count: 0 }));
    const complication = headlines(indexResults(rows), en).at(-1);
    expect(complication).toMatchObject({ fraction: '', value: '0 of 2', interval: '', numerator: '0', n: '2' });
    expect(complication?.notes).toEqual(['Fewer than 5 patients: no interval is given.']);
  });

  it('bear the notes of their rows in words', () => {
    const few = { measure: 'any_complication', n: 9, unit: 'share', method: 'exact-patients', note: 'few-patients' };
    const rows = replaced(auditRows, rowsOf(few, { share: [0, 0, 0.3363], count: 0 }));
    const complication = headlines(indexResults(rows), en).at(-1);
    // Clopper–Pearson, 0 of 9: upper limit 1 − 0.025^(1/9) = 0.3363 (arithmetic).
    expect(complication).toMatchObject({ fraction: '0 of 9', value: '0 %', interval: '0 to 34, exact' });
    expect(complication?.notes).toEqual(['Few patients (5 to 9): read with care.']);
  });
});
