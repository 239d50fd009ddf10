import { describe, expect, it } from 'vitest';
import { verdicts } from '../../src/comparison/verdict.js';
import { measureRegistry } from '../../src/measures/index.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { indexResults } from '../../src/results/index.js';
import { comparedOutcomes } from '../../src/tables/compared-outcomes.js';
import { comparison } from '../../src/tables/comparison.js';
import { outcomeWords } from '../../src/tables/outcome-words.js';
import { en } from '../../src/words/index.js';
import { auditRows, replaced } from './audit.js';
import { comparedRows, estimate, pair } from './compared.js';
import { planOf } from './plan.js';
import { cellsOf } from './rows.js';

const statistics = { ...planOf().statistics, margins: { 'cdva/mean': 0.05 }, adjust_for: ['axial_length', 'dense'] };
const made = (rows = comparedRows, sections: Partial<Plan> = { statistics }) =>
  comparison(indexResults(rows), planOf(sections), en);
const table = made();
const labels = (of = table) => of?.rows.map(({ label }) => label) ?? [];
/** Footnotes that begin in some way. */
const notes = (start: string, of = table) => of?.footnotes.filter((note) => note.startsWith(start)) ?? [];

/** One row of the audit in place of that with the same key. */
function withRow(change: Partial<ResultRow> & Pick<ResultRow, 'measure' | 'statistic'>): readonly ResultRow[] {
  return comparedRows.map((row) =>
    row.group === pair && row.measure === change.measure && row.statistic === change.statistic
      ? { ...row, ...change }
      : row,
  );
}

describe('comparison', () => {
  it('names the cohorts, the visit, and above all else what they do not have in common', () => {
    expect(table?.title).toBe(
      'Technique: laser & co against manual at 3 months, else 1 month (eligible eyes); cohorts not alike in surgeon, months of surgery, time of follow-up',
    );
    expect(table?.head).toEqual([
      { text: 'Outcome' },
      { text: 'manual', n: 213 },
      { text: 'laser & co', n: 206 },
      { text: 'laser & co − manual, or ratio' },
      { text: 'Test' },
      { text: 'p' },
    ]);
  });

  it('puts the primaries first, at the level that they share', () => {
    // 1 − 0.05/2 = 97.5 %
    expect(labels().slice(0, 2)).toEqual([
      'Primary outcomes (97.5 % CI of the difference)',
      'Prediction error within ±0.50 D, n/N, %',
    ]);
    expect(labels()).toContain('Corrected acuity, mean, logMAR');
    expect(labels().filter((label) => label.startsWith('Verdict'))).toHaveLength(2);
    expect(labels().indexOf('Exploratory outcomes, without verdict (95 % CI)')).toBeGreaterThan(
      labels().lastIndexOf('Verdict on laser & co, margin 0.05 logMAR'),
    );
  });

  // 138 of 184 laser eyes and 140 of 187 manual ones; 0.105 is 10.5 points, 0.0214 is 2.1, 0.1886 is 18.9.
  it('sets cohorts, difference, test, p and adjusted p of a primary', () => {
    expect(cellsOf(table, 'Prediction error within')).toEqual([
      '140/187, 74.9 (70.3 to 79.1)',
      '138/184, 75.0 (70.3 to 79.1)',
      '10.5 (2.1 to 18.9)',
      't(220.0)',
      '0.005',
    ]);
    expect(cellsOf(table, 'Eyes (missing)')).toEqual(['187 (3)', '184 (3)', '371 eyes of 255 patients', '', '']);
    expect(cellsOf(table, 'p, adjusted (Holm)')).toEqual(['', '', '', '', '0.010']);
    expect(cellsOf(table, 'Verdict on laser & co')).toEqual(['', '', 'better', '', '']);
  });

  it('tells what an open comparison could have shown, in the unit of the outcome', () => {
    expect(cellsOf(table, 'Verdict on laser & co, margin 0.05 logMAR')[2]).toBe('inconclusive');
    expect(cellsOf(table, 'Half-width of the interval')[2]).toBe('0.07');
    expect(cellsOf(table, 'Smallest difference detectable with 80 % power')[2]).toBe('0.10');
    expect(cellsOf(table, 'Eyes needed, both cohorts, for the margin of 0.05 logMAR')[2]).toBe('1,544');
    // "better" is no open question: no half-width of its own.
    expect(labels().filter((label) => label === 'Half-width of the interval')).toHaveLength(1);
  });

  it.each(verdicts.map((verdict) => [verdict] as const))(
    'has words for the verdict %s, and asks for power only where it is open',
    (verdict) => {
      const row = { measure: 'cdva', statistic: 'difference_mean', note: `primary:k=2;verdict:${verdict}` };
      const other = made(withRow(row));
      expect(cellsOf(other, 'Verdict on laser & co, margin')[2]).toBe(en.tables.comparison.verdicts[verdict]);
      const isOpen = ['no-difference-shown', 'inconclusive', 'worse-margin-not-excluded'].includes(verdict);
      expect(labels(other).includes('Half-width of the interval')).toBe(isOpen);
    },
  );

  it('never says "not significant", and that no difference shown is no evidence of equality', () => {
    const words = Object.values(en.tables.comparison.verdicts).join(' ');
    expect(words).not.toContain('significant');
    expect(en.tables.comparison.verdicts['no-difference-shown']).toBe(
      'no difference shown (this is not evidence of equality)',
    );
  });

  it('gives every exploratory outcome an interval and no verdict', () => {
    const block = labels().indexOf('Prediction error, D (achieved − predicted)');
    expect(labels().slice(block, block + 9)).toEqual([
      'Prediction error, D (achieved − predicted)',
      'Eyes (missing)',
      'Mean',
      'The same, unadjusted, the 360 eyes with all covariates',
      'The same, adjusted',
      'SD (ratio)',
      'Absolute error: relative effect',
      'Median absolute error (shift)',
      'Within ±1.00 D, n/N, %',
    ]);
    expect(cellsOf(table, 'Mean')).toEqual([
      '\u22120.06 (\u22120.10 to \u22120.01)',
      '\u22120.06 (\u22120.10 to \u22120.01)',
      '\u22120.13 (\u22120.20 to \u22120.05)', // −0.125: the half away from zero
      't(212.3)',
      '0.002',
    ]);
    expect(cellsOf(table, 'SD (ratio)').slice(2)).toEqual(['0.88 (0.80 to 0.95)', 't(230.1)', '< 0.001']);
    expect(cellsOf(table, 'Absolute error: relative effect')).toEqual([
      '',
      '',
      '0.45 (0.39 to 0.50)',
      't(221.5)',
      '0.050',
    ]);
    expect(cellsOf(table, 'Within ±1.00 D').slice(2)).toEqual(['\u22121.2 (\u22126.0 to 3.6)', '', '']);
  });

  it('sets the adjusted difference beside the unadjusted one, and says for what', () => {
    expect(cellsOf(table, 'The same, unadjusted')[2]).toBe('\u22120.12 (\u22120.20 to \u22120.04)');
    expect(cellsOf(table, 'The same, adjusted').slice(2)).toEqual([
      '\u22120.10 (\u22120.18 to \u22120.02)',
      't(210.0)',
      '0.013',
    ]);
    expect(notes('Adjusted for axial length, dense: ')).toHaveLength(1);
    expect(made(comparedRows, {})?.footnotes.join(' ')).not.toContain('Adjusted for');
  });

  it('sets a difference of centroids as a vector with its region', () => {
    // Set E of the check values in both cohorts: 0.43 D at 92°; an axis of 180 is written 180.
    expect(cellsOf(table, 'Centroid')).toEqual([
      '0.43 @ 092',
      '0.43 @ 092',
      '0.10 @ 180, region 0.13 × 0.10',
      'F(2, 238.2)',
      '0.033',
    ]);
  });

  it('keeps limits and ratios that nobody asked for to results.csv, and says so', () => {
    expect(labels().some((label) => label.includes('±0.25'))).toBe(false);
    expect(labels().some((label) => label.includes('0.50 D, n/N, % (ratio)'))).toBe(false);
    expect(table?.footnotes).toContain('Further limits, lines and ratios of shares stand in results.csv.');
    const asked = { ...planOf().statistics, differences: { 'prediction_error/share_within_0.25': 0.1 } };
    expect(labels(made(comparedRows, { statistics: asked }))).toContain('Within ±0.25 D, n/N, %');
  });

  it('says why something is not estimable, and where the design is another than that of all eyes', () => {
    expect(cellsOf(table, '20/40 (6/12) or better')[2]).toBe('not estimable*');
    expect(cellsOf(table, 'Eyes with it, n/N, %').slice(2)).toEqual([
      '0.0 (\u22122.1 to 2.2)†',
      'Fisher, mid-p',
      '0.985',
    ]);
    expect(cellsOf(table, 'Eyes with it (ratio)')[2]).toBe('not estimable†‡');
    expect(table?.footnotes).toContain('† Of the eyes with this value no patient has one in both cohorts.');
    expect(table?.footnotes).toContain('‡ Not estimable: a ratio of shares needs both above zero.');
    expect(notes('Mixed design: ')).toEqual([
      'Mixed design: 120 patients with eyes in manual only, 121 in laser & co only, 19 in both.',
    ]);
  });

  it('names a covariate that leaves nothing to compare', () => {
    const note = 'not-estimable:collinear:who%3Bever';
    const rows = withRow({
      measure: 'prediction_error',
      statistic: 'adjusted_difference_mean',
      value: undefined,
      ci_low: undefined,
      ci_high: undefined,
      note,
    });
    expect(made(rows)?.footnotes.join(' ')).toContain(
      'Not estimable: who;ever follows from the cohort and the other covariates',
    );
  });

  it('begins its footnotes with what may be the reason for a difference', () => {
    expect(table?.footnotes.slice(0, 4)).toEqual([
      'laser & co and manual are not alike in surgeon (25.5 % of their mix is common): a difference between them may be one of surgeon.',
      'laser & co and manual were operated at different times (3 of 12 months have operations in both): a difference between them may be one of time.',
      'Eyes were not seen equally long after surgery (spherical equivalent, mean of laser & co less that of manual: 6 (1 to 12) days): a difference between cohorts may be one of time since surgery.',
      'Cohorts of an audit are not drawn by lot: what goes together with them stands in the table “What goes together with the cohorts: Technique (eligible eyes)”.',
    ]);
  });

  it('tells the tests and intervals that it shows, and no others', () => {
    expect(notes('97.5 % and 95 % intervals allow for both eyes of a patient: ')).toHaveLength(1);
    const [tests] = notes('Tests (two-sided): ');
    expect(tests).toContain('Fisher’s exact test with mid-p');
    expect(tests).not.toContain('McNemar');
  });

  it('has no adjusted p where there is one primary, whose p needs none', () => {
    const one = replaced(comparedRows, [
      ...comparedRows
        .filter(({ measure }) => measure === 'primaries')
        .map((row) => {
          return { ...row, value: row.statistic === 'count' ? 1 : 0.95 };
        }),
    ]);
    const rows = one.map((row) => (row.measure === 'cdva' ? { ...row, note: '' } : row));
    expect(labels(made(rows))).not.toContain('p, adjusted (Holm)');
    expect(labels(made(rows))[0]).toBe('Primary outcome (95 % CI of the difference)');
    expect(notes('The verdict follows the interval of the primary outcome', made(rows))).toHaveLength(1);
  });

  it('is not made where no cohorts are compared', () => {
    expect(made(auditRows)).toBeUndefined();
  });

  it('passes over outcomes that no eye of the cohorts has', () => {
    const none = comparedRows.map((row) =>
      row.measure === 'refractive_cylinder_after' && row.group === pair ? { ...row, n: 0 } : row,
    );
    expect(labels(made(none)).some((label) => label.startsWith('Centroid'))).toBe(false);
  });

  it('gives several cohorts a block each, with its eyes', () => {
    const other = 'technique=trainee';
    const more = comparedRows.flatMap((row) => {
      if (row.group === 'technique=laser & co') return [row, { ...row, group: other }];
      return row.group === pair ? [row, { ...row, group: `${other} vs manual` }] : [row];
    });
    const both = made(more);
    expect(both?.head[2]).toEqual({ text: 'Compared cohort' });
    expect(both?.head[3]).toEqual({ text: 'Difference or ratio' });
    const blocks = labels(both).filter((label) => label.endsWith(' against manual'));
    expect(blocks).toEqual(['laser & co (n = 206) against manual', 'trainee (n = 206) against manual']);
    expect(labels(both).filter((label) => label.startsWith('Prediction error within'))).toHaveLength(2);
  });
});

describe('outcomes of the registry', () => {
  // A new measure joins table and chart by being registered: it needs a name that readers know.
  it('all have words', () => {
    for (const measure of measureRegistry(['Formula 7'])) {
      if (measure.step || measure.role || measure.unpooled || measure.kind === 'category') continue;
      expect(outcomeWords(measure, en).name.length, measure.name).toBeGreaterThan(3);
    }
  });

  it('refuse a measure without words', () => {
    const [measure] = measureRegistry([]);
    if (!measure) throw new RangeError('no measure');
    expect(() => outcomeWords({ ...measure, name: 'made_up' }, en)).toThrow('outcome "made_up" has no words');
  });

  it('are found by the margin that audit.yaml declares under either name', () => {
    const margins = { 'cdva/difference_mean': 0.1 };
    const plan = planOf({ statistics: { ...statistics, margins } });
    const found = comparedOutcomes(indexResults(comparedRows), plan, pair).find(({ measure, one }) => {
      return measure.name === 'cdva' && one.by === 'mean';
    });
    expect(found?.margin).toBe(0.1);
  });

  it('keep an estimate with its own rows', () => {
    const [row] = estimate({ measure: 'cdva' }, 'difference_mean', [1, 0, 2]);
    expect(row?.group).toBe(pair);
  });
});
