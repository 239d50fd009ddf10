import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/records/plan.js';
import { indexResults } from '../../src/results/index.js';
import { estimateMethods } from '../../src/statistics/estimate.js';
import { finish } from '../../src/tables/finish.js';
import type { ShownCell } from '../../src/tables/shapes.js';
import { en } from '../../src/words/index.js';
import { planOf } from './plan.js';
import { rowsOf, type Shown } from './rows.js';

/** A table of all eyes alone, without results of its own. */
const settingOf = (plan: Plan) => ({ results: indexResults([]), plan, words: en, columns: [] });

/** A table of one cell. */
function footnotesOf(label: string, cell: ShownCell, confidence = 0.95): readonly string[] {
  const plan = planOf();
  const draft = { id: 'made-up', title: '', head: [{ text: '' }, { text: '' }], footnotes: [] };
  const rows = [{ label, indent: 0, cells: [cell] }] as const;
  return finish({ ...draft, rows }, settingOf({ ...plan, statistics: { ...plan.statistics, confidence } })).footnotes;
}

function cell(statistic: string, value: Shown, unit: string, method = ''): ShownCell {
  return { text: '', rows: rowsOf({ measure: 'made_up', n: 40, unit, method }, { [statistic]: value }) };
}

describe('footnotes', () => {
  it('spell out the abbreviations that are shown, and no others', () => {
    const of = (label: string) => footnotesOf(label, cell('n', 40, 'eyes'));
    expect(of('Acuity, logMAR')).toEqual(['logMAR, logarithm of the minimum angle of resolution.']);
    expect(of('SD of x, D')).toEqual(['D, dioptre; SD, standard deviation (divisor n − 1).']);
    expect(of('Female, n/N, % (95 % CI)')).toEqual(['CI, confidence interval; n/N, eyes with it of eyes counted.']);
    expect(of('Eyes of surgeon SD2')).toEqual([]);
  });

  it('tell how an interval was made, at the level of the audit', () => {
    expect(footnotesOf('', cell('mean', [0.1, 0, 0.2], 'D', 'mean-patient-t'), 0.975)[0]).toBe(
      '97.5 % intervals allow for both eyes of a patient: means by t with the variance from patient sums.',
    );
  });

  it('say nothing of a method whose interval is not shown', () => {
    expect(footnotesOf('', cell('mean', 0.1, 'D', 'mean-patient-t'))).toEqual([]);
  });

  it('have words for every method of an interval', () => {
    const others = ['linear-model-patient-t', 'former-report', 'square-and-add-years'];
    expect(Object.keys(en.tables.notes.intervals)).toEqual([...Object.keys(estimateMethods), ...others]);
    expect(() => footnotesOf('', cell('mean', [0, 0, 0], 'D', 'made-up'))).toThrow('method "made-up" has no words');
  });

  it('tell the tests behind p values, each once', () => {
    const [first] = footnotesOf('', cell('p:difference_mean', 0.02, '', 'difference-patient-t'));
    expect(first).toBe(
      'Tests (two-sided): t: the estimate over its standard error from patient sums, degrees of freedom by Satterthwaite.',
    );
    expect(() => footnotesOf('', cell('p:difference_mean', 0.02, '', 'made-up'))).toThrow('"made-up" has no words');
  });

  it('are not made for a table whose rows do not fit its head', () => {
    const draft = { id: 'made-up', title: '', head: [{ text: '' }], footnotes: [] };
    const rows = [{ label: 'made up', indent: 0, cells: [cell('n', 1, '')] }] as const;
    expect(() => finish({ ...draft, rows }, settingOf(planOf()))).toThrow(
      'finish: made-up, "made up" has 1 cells; expected 0',
    );
  });
});
