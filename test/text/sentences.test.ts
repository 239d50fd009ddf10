import { describe, expect, it } from 'vitest';
import type { ResultRow } from '../../src/records/result.js';
import { indexResults } from '../../src/results/index.js';
import { sentences } from '../../src/text/sentences.js';
import { en } from '../../src/words/index.js';
import { auditRows, replaced, without } from '../tables/audit.js';
import { planOf } from '../tables/plan.js';
import { rowsOf, type Shown } from '../tables/rows.js';

const told = (rows: readonly ResultRow[] = auditRows) => sentences(indexResults(rows), planOf(), en);

/** The second sentence, with another mean. */
function withMean(mean: Shown): string | undefined {
  return told(replaced(auditRows, rowsOf({ measure: 'prediction_error', n: 371 }, { mean })))[1];
}

describe('sentences', () => {
  it('are three, each share with its counts and its interval', () => {
    expect(told()).toEqual([
      '421 eyes of 268 patients were operated; the outcome is known for 386 of the 407 eligible eyes whose visit was ' +
        'due, 94.8 % (95 % CI 92.2 to 96.8, exact).',
      '278 of 371 eyes ended within half a dioptre of the predicted refraction, 74.9 % (95 % CI 70.3 to 79.1); on ' +
        'average they were 0.06 D more myopic than that (95 % CI \u22120.10 to \u22120.01).',
      'With correction, 278 of 371 eyes reach 20/40 (6/12) or better, 74.9 % (95 % CI 70.3 to 79.1); a complication ' +
        'during surgery is recorded in 4 of 421 eyes, 1.0 % (95 % CI 0.3 to 2.4, exact).',
    ]);
  });

  it('tell the direction of the mean error in words', () => {
    expect(withMean([0.125, 0.05, 0.2])).toContain('0.13 D more hyperopic than that (95 % CI 0.05 to 0.20)');
    expect(withMean([-0.125, -0.2, -0.05])).toContain('0.13 D more myopic than that');
  });

  it('give no direction to a mean that is shown as zero', () => {
    expect(withMean([-0.004, -0.05, 0.042])).toContain(
      'neither more myopic nor more hyperopic than that (95 % CI \u22120.05 to 0.04)',
    );
  });

  it('say so where there is no interval', () => {
    const few = { measure: 'prediction_error', n: 4, unit: 'share', note: 'not-estimable:few-patients' };
    const rows = replaced(auditRows, rowsOf(few, { 'share_within_0.50': 0.75, 'count_within_0.50': 3 }));
    expect(told(rows)[1]).toContain(
      '3 of 4 eyes ended within half a dioptre of the predicted refraction, too few patients for a percentage',
    );
  });

  it('speak of one eye as one', () => {
    const one = rowsOf({ measure: 'eyes_operated', n: 1, patients: 1, unit: 'eyes' }, { count: 1 });
    expect(told(replaced(auditRows, one))[0]).toMatch(/^1 eye of 1 patient was operated;/);
  });

  it('say what is not known', () => {
    const none = rowsOf({ measure: 'completeness', n: 0, unit: 'share' }, { share: undefined });
    const bare = without(auditRows, ({ measure }) =>
      /^(prediction|target)_error|^cdva$|^any_complication$/.test(measure),
    );
    expect(told(replaced(bare, none))).toEqual([
      '421 eyes of 268 patients were operated; no outcome visit was due when the data were exported.',
      'No eye has both a refraction after surgery and a prediction or a target.',
      'No corrected acuity after surgery is recorded; whether there were complications is not recorded.',
    ]);
  });
});
