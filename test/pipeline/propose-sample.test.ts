import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import type { ColumnPlan, Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { answering, formOf, proposedFor } from '../propose/proposed.js';
import { committed } from '../sample-exports/committed.js';
import { auditOf } from '../whole/audit.js';

/** The exports of the main series, as the shipped audit names them. */
const { sources: named } = parse(committed('audit.yaml').toString('utf8')) as { sources: readonly { file: string }[] };
const names = named.map(({ file }) => file);
const files = Object.fromEntries(names.map((name) => [name, committed(name)]));
const wide = { 'wide.csv': committed('wide.csv') };

type Tree = Record<string, unknown>;

/**
 * The shipped audit without what no export says: the lane's length, the vertex distance that is assumed anyway, a code
 * of ours for a device; and with its formula under the name that the header gives it.
 */
function withoutConstants(text: string): string {
  const audit = parse(text.replace('formula: second', 'formula: Pred 2')) as { sources: { blocks?: Tree[] }[] };
  const sources = audit.sources.map(({ blocks, ...source }) => {
    const { constants: _, ...rest } = source as Tree;
    return blocks ? { ...rest, blocks: blocks.map(({ constants: __, ...block }) => block) } : rest;
  });
  return stringify({ ...audit, sources });
}

/** The proposed sources and words with all that the shipped audit says beside them and nobody can guess. */
function withSettingsOf(shipped: string, proposed: string): string {
  const { sources, values } = parse(proposed) as Tree;
  const rest = parse(shipped) as Tree;
  return stringify({ ...rest, sources, ...(values ? { values } : {}) });
}

const shipped = withoutConstants(committed('audit.yaml').toString('utf8'));
const shippedWide = withoutConstants(committed('wide-audit.yaml').toString('utf8'));

const key = ({ measure, group, statistic }: ResultRow): string => `${measure}|${group}|${statistic}`;

function columnsOf(plan: Plan, file: string): readonly ColumnPlan[] {
  return plan.sources
    .filter((source) => source.file.includes(file))
    .flatMap(({ blocks }) => blocks.flatMap(({ columns }) => columns));
}

// Outside the project's own reading: the audit that a person wrote for the sample, and the truth planted in it.
describe('the sample exports alone', async () => {
  const asked = answering({
    'acuity-scale': undefined,
    'blank-complication': undefined,
    'residual-form': 'corneal plus',
  });
  const proposal = await proposedFor(files, { ask: asked });
  const unasked = await proposedFor(files);
  const theirs = await auditOf(shipped, files);

  it('give a config that runs unedited', async () => {
    expect(unasked.faults).toEqual([]);
    const audit = await auditOf(unasked.text, files);
    expect(audit.results.get('eyes_operated', 'all', 'count').value).toBe(420);
    expect(audit.findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
  });

  it('leave open what nothing tells: the plane of the predicted cylinder', () => {
    expect(unasked.open).toEqual(['residual-form']);
    expect(proposal.open).toEqual([]);
  });

  it.each(names)('%s: every column is mapped as a person mapped it', (name) => {
    const ours = proposal.plan as Plan;
    const plain = (column: ColumnPlan) => {
      // Words of our own vocabulary, and the surface from which a depth was measured, need not or cannot be said.
      const { words: _, from: __, ...form } = formOf(column);
      return form;
    };
    const sorted = (plan: Plan) =>
      columnsOf(plan, name)
        .map((one) => JSON.stringify(plain(one)))
        .sort();
    expect([...new Set(sorted(ours))]).toEqual([...new Set(sorted(theirs.plan))]);
  });

  it('give the results of the shipped audit.yaml, row by row', async () => {
    const ours = await auditOf(withSettingsOf(shipped, proposal.text), files);
    expect(ours.rows.length).toBeGreaterThan(1000);
    expect(ours.rows.map(key)).toEqual(theirs.rows.map(key));
    expect(ours.rows).toEqual(theirs.rows);
  });

  it('propose the visits that the shipped audit.yaml has', () => {
    const { visits, outcome } = (proposal.plan as Plan).follow_up;
    const plain = (all: Plan['follow_up']['visits']) => all.map(({ name, days }) => ({ name, days }));
    expect(plain(visits)).toEqual(plain(theirs.plan.follow_up.visits));
    expect(outcome).toEqual(theirs.plan.follow_up.outcome);
  });

  it('write no date, no patient and no cell of a left column into the file', () => {
    expect(unasked.text).not.toMatch(/P\d{4}/);
    expect(unasked.text).not.toMatch(/\d{1,2}[./]\d{1,2}[./]\d{4}/);
    const dates = [...unasked.text.matchAll(/\d{4}-\d{2}-\d{2}/g)].map(([date]) => date);
    // An example of how the export's date is written, on a line that says nothing.
    expect(dates).toEqual(['2026-03-31']);
  });
});

describe('the wide export alone', async () => {
  const proposal = await proposedFor(wide);

  it('runs unedited and gives the results of the shipped wide-audit.yaml', async () => {
    const theirs = await auditOf(shippedWide, wide);
    const ours = await auditOf(withSettingsOf(shippedWide, proposal.text), wide);
    await auditOf(proposal.text, wide);
    expect(ours.rows).toEqual(theirs.rows);
  });
});

it('all six exports together run unedited', async () => {
  const all = { ...files, ...wide };
  const { text, faults } = await proposedFor(all);
  expect(faults).toEqual([]);
  const audit = await auditOf(text, all);
  expect(audit.results.get('eyes_operated', 'all', 'count').value).toBe(460);
});
