import { describe, expect, it } from 'vitest';
import { checkSummary } from '../../pipeline/commands/check-summary.js';
import type { RunOutcome } from '../../pipeline/commands/outcome.js';
import { memoryIo } from '../../pipeline/memory-io.js';
import { findingGroups } from '../../pipeline/publish/finding-groups.js';
import { check, run } from '../../pipeline/run.js';
import { checkScreen } from '../../src/screens/check.js';
import { en } from '../../src/words/index.js';
import { textOf } from '../pipeline/publish-audit.js';

const audit = `format: 1
title: Many bad cells
name: many
sources:
  - file: theatre.csv
    holds: surgery
    columns: { patient: ID, eye: Eye, surgery_date: Date }
  - file: lane.csv
    holds: exam
    columns: { patient: ID, eye: Eye, exam_date: Date, sphere: S, cylinder: C, axis: A }
outputs: { leave_out: [eye-flow, prediction-error, accuracy-shares, acuity-cumulative, double-angle], eye_rows: never }
`;

const eyes = 5500;
const bad = 10_000;

/** Examinations of every eye on four days; the axis of the first ten thousand of 22,000 is none. */
function* laneRows(): Generator<string> {
  for (let row = 0; row < 4 * eyes; row++) {
    const day = ['02-10', '02-20', '03-01', '03-10'][row % 4];
    yield `P${row >> 2},R,2025-${day},-0.${row % 2 ? '25' : '50'},-0.75,${row < bad ? 195 : 1 + (row % 180)}`;
  }
}

const files = {
  'theatre.csv': `ID,Eye,Date\n${Array.from({ length: eyes }, (_, i) => `P${i},R,2025-01-10`).join('\n')}\n`,
  'lane.csv': `ID,Eye,Date,S,C,A\n${[...laneRows()].join('\n')}\n`,
};

type Ended = Extract<RunOutcome, { kind: 'published' }>;

describe('a file of ten thousand bad cells', () => {
  it('takes one line of the screen: the rule, how many, and the first three rows', async () => {
    const outcome = await check(audit, memoryIo(files), () => {});
    if (outcome.kind !== 'checked') throw new RangeError(`many-findings: ${outcome.kind}; expected checked`);
    const file = { typed: 'audit.yaml', text: audit, io: memoryIo(files), shown: (path: string) => path };
    const lines = checkScreen(checkSummary(outcome, file, en), en.screens).split('\n');
    expect(lines.filter((line) => line.includes('axis'))).toEqual([
      expect.stringMatching(/^ {4}axis outside 0 to 180° +10,000 {2}lane\.csv rows 2, 3, 4$/),
    ]);
    expect(lines.length).toBeLessThan(30);
  });

  it('takes one line of the report, with three places in the clinic and none outside', async () => {
    const io = memoryIo(files);
    const ended = await run(audit, io, { replace: false }, () => {});
    expect(ended.kind).toBe('published');
    const { all, plan } = ended as Ended;
    const axis = findingGroups(all, plan, en, { places: true }).filter(({ rule }) => rule === 'axis-range');
    expect(axis).toMatchObject([{ severity: 'set aside', count: bad, places: { length: 3 } }]);
    const [inside, outside] = ['internal', 'publication'].map((page) => textOf(io, `reports/many/${page}/index.html`));
    expect(inside?.split('‘195’').length).toBe(4);
    expect(inside).toContain('10,000');
    expect(outside).not.toContain('‘195’');
  });
});
