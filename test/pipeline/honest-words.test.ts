// What 4-statistics.md asks of every number that is shown, over runs with cohorts, margins, covariates and few patients.
import { describe, expect, it } from 'vitest';
import { tabulate } from '../../pipeline/6-tabulate.js';
import type { TypesetTable } from '../../src/records/report.js';
import type { ResultRow } from '../../src/records/result.js';
import { resultKey } from '../../src/results/index.js';
import { estimateMethods } from '../../src/statistics/estimate.js';
import { intervalText } from '../../src/tables/value-text.js';
import { methods } from '../../src/text/methods.js';
import { en } from '../../src/words/index.js';
import { auditOfEyes, type MadeEye } from '../comparison/made-up-audit.js';
import { madeUpEyes } from '../comparison/made-up-eyes.js';
import { auditOf } from '../whole/audit.js';
import { auditText, committedFiles } from '../whole/sample.js';

const cohorts = 'cohorts: { by: technique, reference: A }';
const declared = `statistics:
  primary: [prediction_error/share_within_0.50, prediction_error/mean]
  margins: { prediction_error/share_within_0.50: 0.1, prediction_error/mean: 0.1 }
  differences: { prediction_error/share_within_0.50: 0.15 }`;
/** Twelve eyes of twelve patients in each cohort, all within half a dioptre; three more in a cohort of its own. */
const allWithin: readonly MadeEye[] = Array.from({ length: 27 }, (_, i) => ({
  patient: `P${100 + i}`,
  side: 'R',
  technique: i < 12 ? 'A' : i < 24 ? 'B' : 'C',
  error: ((i % 5) - 2) / 10,
  complication: 'none',
}));

const audits = {
  'three cohorts, two primaries with margins, covariates': await auditOfEyes(
    madeUpEyes(),
    `${cohorts}\n${declared}\n  adjust_for: [axial_length, sex]`,
  ),
  'twelve of twelve, and a cohort of three': await auditOfEyes(allWithin, `${cohorts}\n${declared}`),
  'the sample, adjusted, with a margin': await auditOf(
    `${auditText()}\n${declared}\n  adjust_for: [axial_length, surgeon]\n`,
    committedFiles(),
  ),
};
const runs = Object.entries(audits).map(([name, audit]) => ({
  name,
  ...audit,
  tables: tabulate(audit.results, audit.plan, en),
}));

/** Cells that describe a series, or tell in words what an interval allows: no interval stands in them. */
const described: readonly RegExp[] = [
  /^(baseline|missing-outcomes) (Mean \(SD\)|Median \(range\))$/,
  /^visual-acuity Snellen equivalent of the mean$/,
  /^toric-alignment (Cylinder of the lens at the cornea|Label over cylinder at the cornea)/,
  /^confounding (Spherical equivalent|Astigmatism|Corrected|Uncorrected|Complications)/,
  /^comparison (Eyes \(missing\)|Verdict on )/,
  /^formulas Eyes with both predictions$/,
  // A published figure, and the verdict on it, stand beside the share that has the interval.
  /^benchmarks /,
  // What changes between visits is described; the share of eyes that changed has the interval.
  /^stability Mean \(SD\)$/,
  // Median, shift and typical loss stand there with their intervals, in rows of their own.
  /^(safety (Cells before|Cells after|Endothelial cells lost|Median \(quartiles\))|resources Median \(quartiles\))/,
];

interface Told {
  place: string;
  text: string;
  behind: readonly ResultRow[];
}

/** Every filled cell with the rows behind it. */
function cellsOf({ results, tables }: (typeof runs)[number]): readonly Told[] {
  const byKey = new Map(results.rows.map((row) => [resultKey(row), row]));
  return tables.flatMap(({ id, rows }) =>
    rows.flatMap(({ label, cells }) =>
      cells.flatMap(({ text, from }) => {
        const behind = from.map((key) => byKey.get(key) as ResultRow);
        return behind.length === 0 ? [] : [{ place: `${id} ${label}`, text, behind }];
      }),
    ),
  );
}

const symbols = /[*†‡§‖¶#]+$/;
/** Rows that stand beside an estimate and have no interval of their own, or have a region instead. */
const beside = /^(p|df|t2|half_width|detectable|eyes_needed|eyes_needed_margin|design_effect)(:|$)/;
const regions = new Set(['hotelling-patient', 'centroid-difference']);

describe.each(runs)('$name', (run) => {
  const cells = cellsOf(run);

  it('every estimate among the results has its interval, or the reason why not', () => {
    const bare = run.rows.filter(
      ({ method, statistic, value, ci_low: low, ci_high: high, note }) =>
        method in estimateMethods &&
        !regions.has(method) &&
        !beside.test(statistic) &&
        (value === undefined || low === undefined || high === undefined) &&
        !note.includes('not-estimable'),
    );
    expect(bare.map(resultKey)).toEqual([]);
    expect(run.rows.filter(({ ci_low: low }) => low !== undefined).length).toBeGreaterThan(300);
  });

  it('every vector has its region, or the reason why not', () => {
    const without = run.rows.filter(
      ({ statistic, value, note }) => /ellipse_major$/.test(statistic) && value === undefined && note === '',
    );
    expect(without.map(resultKey)).toEqual([]);
  });

  it('every cell that shows an estimate shows its interval', () => {
    const silent = cells.filter(({ place, text, behind: [first] }) => {
      const limits = first && intervalText(first, en);
      return limits !== undefined && !text.includes(limits) && !described.some((one) => one.test(place));
    });
    expect(silent.map(({ place, text }) => `${place}: ${text}`)).toEqual([]);
  });

  it('nothing is a number that is none, a zero with a sign, or a percentage by itself', () => {
    const odd = cells.filter(({ text }) => /NaN|undefined|Infinity|−0(\.0+)?(?![.\d])|^\d+(\.\d+)? ?%?$/.test(text));
    const percentages = odd.filter(
      ({ place, text, behind: [first] }) =>
        /NaN|undefined|Infinity|^−0/.test(text) || (isShare(first) && !place.startsWith('benchmarks ')),
    );
    expect(percentages.map(({ place, text }) => `${place}: ${text}`)).toEqual([]);
  });

  it('"not estimable" has a mark, and the mark its reason', () => {
    for (const { id, rows, footnotes } of run.tables as readonly TypesetTable[]) {
      for (const { label, cells: shown } of rows) {
        for (const { text } of shown.filter((cell) => cell.text.includes(en.tables.notEstimable))) {
          const marks = symbols.exec(text)?.[0] ?? '';
          const told = footnotes.some((note) => marks !== '' && note.startsWith(marks.charAt(0)));
          expect([id, label, text, told]).toEqual([id, label, text, true]);
        }
      }
    }
  });

  it('all of n, and none of n, stand with the limit that is not theirs', () => {
    const whole = cells.filter(({ text }) => /^(\d+)\/\1, 100/.test(text) || /^0\/\d+, 0/.test(text));
    expect(whole.filter(({ text }) => !/\((\d+(\.\d+)?) to (\d+(\.\d+)?)\)/.test(text))).toEqual([]);
    for (const { text } of whole) {
      const [, low, high] = /\(([\d.]+) to ([\d.]+)\)/.exec(text) ?? [];
      expect(Number(high) - Number(low)).toBeGreaterThan(0);
    }
  });
});

function isShare(row: ResultRow | undefined): boolean {
  return row !== undefined && /^share(_|$)/.test(row.statistic);
}

// Wilson 1927 at 12 of 12, z = 1.959964: 12/(12 + 3.841459) = 0.7575.
it('twelve of twelve is told with its lower bound, and a cohort of three by its counts', () => {
  const run = runs.find(({ name }) => name.startsWith('twelve'));
  const table = run?.tables.find(({ id }) => id === 'refractive-accuracy');
  const cells = table?.rows.find(({ label }) => label.startsWith('Within ±0.50 D'))?.cells.map(({ text }) => text);
  expect(cells?.slice(0, 3)).toEqual(['12/12, 100 (76 to 100)', '12/12, 100 (76 to 100)', '3/3*']);
  expect(table?.footnotes).toContain('* Fewer than 5 patients: no interval is given.');
});

it('a run with covariates and margins says in its methods what it did with them', () => {
  const [adjusted] = runs;
  const text = adjusted ? methods(adjusted.results, adjusted.plan, en) : '';
  expect(text).toContain('Covariates of adjusted differences: ');
  expect(text).toContain('Margins, declared in audit.yaml: ');
  expect(text).toContain('4 intervals (outcomes × comparisons) share an error of 5 %');
  expect(text).not.toContain('No margin was declared');
});
