// Twelve eyes of eight patients, every number of whose tables was worked with exact fractions and no line of the
// project: test/hand-audit/sheet.md shows each step, sheet.py makes it.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { auditOf } from './audit.js';

interface Worked {
  measure: string;
  group: string;
  statistic: string;
  value?: number;
  low?: number;
  high?: number;
  n?: number;
  patients?: number;
}

const folder = new URL('../hand-audit/', import.meta.url);
const text = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const exports_ = readdirSync(folder).filter((name) => name.endsWith('.csv'));

const { results, findings } = await auditOf(
  text('audit.yaml'),
  Object.fromEntries(exports_.map((name) => [name, text(name)])),
);
const worked: readonly Worked[] = JSON.parse(text('expected.json'));

/** To nine digits: the sheet rounds nothing, doubles and t quantiles leave the last ones open. */
function expectAgrees(value: number | undefined, expected: number, what: string): void {
  expect(value, what).toBeTypeOf('number');
  expect(Math.abs((value as number) - expected), `${what}: ${value}, worked ${expected}`).toBeLessThanOrEqual(
    Math.max(1e-9 * Math.abs(expected), 1e-12),
  );
}

describe.each([...new Set(worked.map(({ measure }) => measure))])('%s', (measure) => {
  const ofMeasure = worked.filter((one) => one.measure === measure);

  it.each([...new Set(ofMeasure.map(({ group }) => group))])(
    '%s: value, limits, eyes and patients as on paper',
    (group) => {
      for (const expected of ofMeasure.filter((one) => one.group === group)) {
        const row = results.get(measure, group, expected.statistic);
        if (expected.value === undefined) expect(row.value, row.statistic).toBeUndefined();
        else expectAgrees(row.value, expected.value, row.statistic);
        if (expected.low !== undefined) expectAgrees(row.ci_low, expected.low, `${row.statistic}, lower limit`);
        if (expected.high !== undefined) expectAgrees(row.ci_high, expected.high, `${row.statistic}, upper limit`);
        if (expected.n !== undefined) expect(row.n, `${row.statistic}, eyes`).toBe(expected.n);
        if (expected.patients !== undefined) expect(row.patients, `${row.statistic}, patients`).toBe(expected.patients);
      }
    },
  );
});

it('works out every outcome, by cohort and over all eyes', () => {
  const outcomes = [
    'prediction_error',
    'target_error',
    'prediction_error_centred',
    'refractive_cylinder_after_recorded',
  ];
  const vectors = ['corneal_cylinder_before', 'refractive_cylinder_after'];
  const acuities = ['cdva', 'udva', 'cdva_before', 'udva_before'];
  const flows = [
    'eyes_operated',
    'completeness',
    'flow:refraction',
    'flow:astigmatism',
    'flow:corrected',
    'flow:uncorrected',
  ];
  const groups = ['all', 'technique=manual', 'technique=laser-assisted'];
  const paper = new Set(worked.map(({ measure, group }) => `${measure} ${group}`));
  const expected = [...outcomes, ...vectors, ...acuities, ...flows].flatMap((measure) =>
    groups.map((group) => `${measure} ${group}`),
  );
  expect(expected.filter((one) => !paper.has(one))).toEqual([]);
});

it('asks about the blank axis, and leaves nothing out', () => {
  const doubts = findings.map(({ rule, severity, row }) => `${severity} ${rule}, row ${row}`);
  expect(doubts).toContain('query axis-missing, row 20');
  expect(doubts.filter((doubt) => doubt.startsWith('set aside'))).toEqual([]);
});
