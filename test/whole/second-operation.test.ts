// ../shared/spec/7-model.md, follow_up.after_second_operation. The outcome is the error at the visit, by
// hand from S + C/2, of a prediction of 0.00: −1.00 on day 40, before the second operation of day 60, and 0.00 on day 100, after it.
import { describe, expect, it } from 'vitest';
import { auditOf } from './audit.js';

const audit = (rule: string): string => `format: 1
title: Second operations
data_until: 2025-12-31
sources:
  - file: theatre.csv
    holds: surgery
    columns: { patient: ID, eye: Eye, surgery_date: Date, procedure: What }
    constants: { predicted_se: 0 }
  - file: lane.csv
    holds: exam
    columns: { patient: ID, eye: Eye, exam_date: Date, sphere: S, cylinder: C, axis: A }
follow_up:
  visits:
    - { name: outcome, days: [28, 120], aim: 90 }
  after_second_operation: ${rule}
policies: { vertex_mm: 0 }
`;

/** Three patients alike: of one there is no mean. */
const patients = ['A', 'B', 'C'];
const written = (rows: readonly string[]): string =>
  patients.flatMap((patient) => rows.map((row) => `${patient},${row}\n`)).join('');

// 2025-01-10 and 40, 60, 100 days from it.
const lane = `ID,Eye,Date,S,C,A\n${written(['R,2025-02-19,-0.75,-0.50,90', 'R,2025-04-20,0.25,-0.50,90'])}`;
const theatre = (more: readonly string[]): string => `ID,Eye,Date,What\n${written(['R,2025-01-10,lens', ...more])}`;

async function outcome(rule: string, ...more: string[]) {
  const { results, findings } = await auditOf(audit(rule), { 'theatre.csv': theatre(more), 'lane.csv': lane });
  const told = findings.filter(({ rule: id }) => id === 'second-operation');
  return {
    error: results.get('prediction_error', 'all', 'mean').value,
    told: [...new Set(told.map(({ written: what, day, effect }) => `${what} on day ${day}, ${effect}`))],
  };
}

describe('the outcome of an eye with a second operation', () => {
  it('is the examination nearest the aim where there was none', async () => {
    expect(await outcome('leave-out')).toEqual({ error: 0, told: [] });
  });

  it.each(['reposition', 'exchange', 'enhancement', 'lens'])(
    'by a %s: taken before it, or after it where audit.yaml keeps later examinations',
    async (what) => {
      const second = `R,2025-03-11,${what}`;
      expect(await outcome('leave-out', second)).toEqual({
        error: -1,
        told: [`${what} on day 60, later examinations left out`],
      });
      expect(await outcome('keep', second)).toEqual({ error: 0, told: [`${what} on day 60, kept`] });
    },
  );

  it('stays where an operation of another kind followed, or one on the fellow eye', async () => {
    expect(await outcome('leave-out', 'R,2025-03-11,other')).toEqual({
      error: 0,
      told: ['other on day 60, kept'],
    });
    expect(await outcome('leave-out', 'L,2025-03-11,enhancement')).toMatchObject({ error: 0, told: [] });
  });
});
