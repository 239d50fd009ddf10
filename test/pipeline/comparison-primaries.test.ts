import { describe, expect, it } from 'vitest';
import { verdicts } from '../../src/comparison/verdict.js';
import { holm } from '../../src/statistics/cohorts/holm.js';
import { tQuantile } from '../../src/statistics/distributions.js';
import { auditOfEyes } from '../comparison/made-up-audit.js';
import { madeUpEyes } from '../comparison/made-up-eyes.js';
import type { Audit } from '../whole/audit.js';

const eyes = madeUpEyes();
const cohorts = (reference: string) => `cohorts: { by: technique, reference: ${reference} }`;
const audit = await auditOfEyes(eyes, cohorts('A'));
const comparisons = (of: Audit) => of.rows.filter(({ group }) => / vs /.test(group) && !group.includes('sensitivity'));

describe('primaries', () => {
  const declared = `${cohorts('A')}
statistics:
  primary: [prediction_error/share_within_0.50, prediction_error/sd, prediction_error/mean]
  margins: { prediction_error/share_within_0.50: 0.4, prediction_error/mean: 3 }
  differences: { prediction_error/mean: 0.1 }`;
  const groups = ['technique=B vs A', 'technique=C vs A'] as const;
  const names = ['difference_share_within_0.50', 'ratio_sd', 'difference_mean'] as const;
  const cells = groups.flatMap((group) => names.map((name) => [group, name] as const));

  it('share the error: level and p by outcomes × comparisons', async () => {
    const { results } = await auditOfEyes(eyes, declared);
    expect(results.get('primaries', 'all', 'count').value).toBe(6);
    expect(results.get('primaries', 'all', 'confidence').value).toBeCloseTo(1 - 0.05 / 6, 15);
    const p = cells.map(([group, name]) => results.get('prediction_error', group, `p:${name}`).value as number);
    const adjusted = cells.map(([group, name]) => results.get('prediction_error', group, `p_adjusted:${name}`).value);
    expect(adjusted).toEqual(holm(p));
    for (const [group, name] of cells) {
      const { note } = results.get('prediction_error', group, name);
      expect(note).toContain('primary:k=6;verdict:');
      expect(verdicts).toContain(note.split('verdict:')[1]);
    }
  });

  it('have the wider interval, and no other outcome has', async () => {
    const { results } = await auditOfEyes(eyes, declared);
    const width = (of: Audit['results'], name: string) => {
      const { ci_low: low, ci_high: high } = of.get('prediction_error', 'technique=B vs A', name);
      return (high as number) - (low as number);
    };
    for (const name of names) expect(width(results, name)).toBeGreaterThan(width(audit.results, name));
    expect(width(results, 'shift_absolute')).toBe(width(audit.results, 'shift_absolute'));
  });

  it('no outcome but a primary has a verdict or an adjusted p', () => {
    const primary = 'difference_share_within_0.50';
    const marked = comparisons(audit).filter(({ note }) => /verdict|primary/.test(note));
    expect(new Set(marked.map(({ statistic }) => statistic))).toEqual(new Set([primary, `p_adjusted:${primary}`]));
    expect(marked.every(({ measure }) => measure === 'prediction_error')).toBe(true);
  });

  it('whose direction nobody can tell are different or equivalent, not better', async () => {
    const { results } = await auditOfEyes(eyes, declared);
    expect(results.get('prediction_error', 'technique=B vs A', 'difference_mean').note).toContain('verdict:equivalent');
  });

  // z of 95 % and of 80 %: 1.959964 + 0.841621, as the statistics page prints them.
  it('detect, with 80 % power, 2.80 standard errors', () => {
    const row = (name: string) => audit.results.get('prediction_error', 'technique=B vs A', name);
    const { ci_low: low, ci_high: high } = row('difference_mean');
    const t = tQuantile(0.975, row('df:difference_mean').value as number);
    const standardError = ((high as number) - (low as number)) / 2 / t;
    expect(row('detectable:difference_mean').value).toBeCloseTo(2.801585 * standardError, 6);
    const ratio = row('ratio_sd');
    const ofLog = Math.log((ratio.ci_high as number) / (ratio.ci_low as number)) / 2;
    const tOfRatio = tQuantile(0.975, row('df:ratio_sd').value as number);
    expect(row('detectable:ratio_sd').value).toBeCloseTo(Math.exp((2.801585 * ofLog) / tOfRatio), 6);
  });

  it('plan with the difference that is declared, never with the one seen', async () => {
    const { results } = await auditOfEyes(eyes, declared);
    const row = (name: string) => results.get('prediction_error', 'technique=B vs A', name);
    const detectable = row('detectable:difference_mean').value as number;
    const n = row('difference_mean').n;
    expect(row('eyes_needed:difference_mean').value).toBe(Math.ceil(n * (detectable / 0.1) ** 2));
    expect(row('eyes_needed_margin:difference_mean').value).toBe(Math.ceil(n * (detectable / 3) ** 2));
    expect(results.find('prediction_error', 'technique=B vs A', 'eyes_needed:ratio_sd')).toBeUndefined();
  });
});
