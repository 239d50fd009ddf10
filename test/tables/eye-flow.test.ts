import { describe, expect, it } from 'vitest';
import { indexResults } from '../../src/results/index.js';
import { eyeFlow } from '../../src/tables/eye-flow.js';
import { en } from '../../src/words/index.js';
import { auditRows, groups, replaced, without } from './audit.js';
import { planOf } from './plan.js';
import { cellsOf, rowsOf } from './rows.js';

const plan = planOf();
const table = eyeFlow(indexResults(auditRows), plan, en);

/** Blocks of the table by their label, each the numbers of its rows in one column. */
function block(label: string, column: number): readonly number[] {
  const from = table.rows.findIndex((row) => row.label === label);
  const next = table.rows.findIndex((row, i) => i > from && row.indent === 0);
  const rows = table.rows.slice(from + 1, next < 0 ? undefined : next);
  return rows.map(({ cells }) => Number(cells[column]?.text));
}

describe('eyeFlow', () => {
  it('starts from the eyes operated and ends with those analysed', () => {
    expect(cellsOf(table, 'Eyes operated')).toEqual(['214', '207', '421']);
    expect(cellsOf(table, 'Patients operated')).toEqual(['139', '140', '268']);
    expect(cellsOf(table, 'Excluded: Axial length over 30 mm')).toEqual(['1', '1', '2']);
    expect(cellsOf(table, 'Eligible eyes')).toEqual(['213', '206', '419']);
    expect(cellsOf(table, 'Outcome known, n/N due, % (95 % CI)')[2]).toBe('386/407, 94.8 (92.2 to 96.8)');
  });

  // Books must close for the reader too: eligible eyes = analysed + the reasons shown. Denominators from audit.ts.
  it.each([
    ['Spherical equivalent (eligible eyes)', [213, 206, 419]],
    ['Astigmatism as a vector (eligible eyes)', [213, 206, 419]],
    ['Corrected acuity (eligible eyes)', [213, 206, 419]],
    ['Uncorrected acuity (eligible, distance-target eyes)', [213, 206, 419]],
    ['Complications (operated eyes)', [214, 207, 421]],
  ])('adds up: %s', (label, sums) => {
    const added = [0, 1, 2].map((column) => block(label, column).reduce((a, b) => a + b, 0));
    expect(added).toEqual(sums);
  });

  it('has complications over eyes whose field is filled, and not at all where there is no such field', () => {
    const blank = groups.flatMap((group) =>
      rowsOf({ measure: 'any_complication', group, n: 200, unit: 'eyes' }, { n: 200, missing: 7 }),
    );
    const some = eyeFlow(indexResults(replaced(auditRows, blank)), plan, en);
    expect(some.rows.slice(-2).map(({ label, cells }) => [label, cells[0]?.text])).toEqual([
      ['Not analysed: not recorded', '7'],
      ['Analysed', '200'],
    ]);
    const bare = without(auditRows, ({ measure }) => measure === 'any_complication');
    const none = eyeFlow(indexResults(bare), plan, en);
    expect(none.rows.map(({ label }) => label)).not.toContain('Complications (operated eyes)');
  });

  it('leaves out reasons that no eye had, and keeps one that a single cohort had', () => {
    expect(() => cellsOf(table, 'Excluded: fellow eye chosen')).toThrow('no row');
    expect(cellsOf(table, 'Not analysed: recorded, but set aside')).toEqual(['2', '0', '2']);
  });

  it('says so where some eyes belong to no cohort', () => {
    const note = en.tables.notes.flow.noCohort;
    expect(table.footnotes).not.toContain(note);
    const fewer = rowsOf({ measure: 'eyes_operated', group: 'technique=manual', n: 213, unit: 'eyes' }, { count: 213 });
    expect(eyeFlow(indexResults(replaced(auditRows, fewer)), plan, en).footnotes).toContain(note);
  });

  it('fails on a reason without words', () => {
    const strange = rowsOf({ measure: 'flow:corrected', n: 1 }, { lost: 1 });
    const rows = [...without(auditRows, ({ group }) => group !== 'all'), ...strange];
    expect(() => eyeFlow(indexResults(rows), plan, en)).toThrow('reasonText: "lost" is no reason');
  });
});
