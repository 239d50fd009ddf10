import { describe, expect, it } from 'vitest';
import { comparisonMethods, comparisonNotes } from '../../src/comparison/codes.js';
import { estimateMethods, estimateNotes } from '../../src/statistics/estimate.js';
import { auditOfEyes, found } from '../comparison/made-up-audit.js';
import { madeUpEyes } from '../comparison/made-up-eyes.js';
import type { Audit } from '../whole/audit.js';

const eyes = madeUpEyes();
const cohorts = (reference: string) => `cohorts: { by: technique, reference: ${reference} }`;
const audit = await auditOfEyes(eyes, cohorts('A'));
const comparisons = (of: Audit) => of.rows.filter(({ group }) => / vs /.test(group) && !group.includes('sensitivity'));

describe('order', () => {
  it('of rows in the file does not matter, to the last bit', async () => {
    const turned = await auditOfEyes([...eyes].reverse(), cohorts('A'));
    expect(comparisons(turned)).toEqual(comparisons(audit));
  });

  it('of cohorts turns the sign and nothing else', async () => {
    const turned = await auditOfEyes(eyes, cohorts('B'));
    const back = 'technique=A vs B';
    for (const statistic of ['difference_mean', 'shift_absolute', 'difference_share_within_0.50']) {
      const [one, other] = [found(audit, statistic), found(turned, statistic, 'prediction_error', back)];
      expect(other.value).toBeCloseTo(-(one.value as number), 12);
      expect(other.low).toBeCloseTo(-(one.high as number), 12);
      expect(other.p).toBeCloseTo(one.p as number, 12);
    }
    for (const statistic of ['ratio_sd', 'ratio_share_within_0.50']) {
      const [one, other] = [found(audit, statistic), found(turned, statistic, 'prediction_error', back)];
      expect(other.value).toBeCloseTo(1 / (one.value as number), 12);
      expect(other.p).toBeCloseTo(one.p as number, 12);
    }
    const effect = found(turned, 'relative_effect_absolute', 'prediction_error', back);
    expect(effect.value).toBeCloseTo(1 - (found(audit, 'relative_effect_absolute').value as number), 12);
    const p = (of: Audit, group: string) =>
      of.results.get('refractive_cylinder_after', group, 'p:difference_centroid').value;
    expect(p(turned, back)).toBeCloseTo(p(audit, 'technique=B vs A') as number, 12);
  });
});

describe('every row of a comparison', () => {
  const known = (codes: object, code: string) => code in codes;
  const methods = { ...estimateMethods, ...comparisonMethods, count: '' };
  const notes = { ...estimateNotes, ...comparisonNotes };

  it('has a method that is listed', () => {
    expect(comparisons(audit).filter(({ method }) => !known(methods, method))).toEqual([]);
  });

  it('has marks that are listed, up to their value', () => {
    const codes = comparisons(audit).flatMap(({ note }) => (note === '' ? [] : note.split(';')));
    const listed = (code: string) => known(notes, code) || known(notes, code.replace(/[:=][^:=]*(=\d+)?$/, ''));
    expect(new Set(codes.filter((code) => !listed(code)))).toEqual(new Set());
  });

  it('says why where it has no value', () => {
    const empty = comparisons(audit).filter(({ value }) => value === undefined);
    expect(empty.filter(({ note }) => !/not-estimable|degenerate/.test(note))).toEqual([]);
  });

  it('counts its eyes', () => {
    for (const row of comparisons(audit)) expect(row.n).toBeLessThanOrEqual(row.eyes);
  });
});

describe('the design', () => {
  it('counts patients of one cohort only and of both', () => {
    const of = (...techniques: readonly string[]) => {
      const inAll = (patient: unknown) =>
        techniques.every((technique) => eyes.some((eye) => eye.patient === patient && eye.technique === technique));
      return [...new Set(eyes.map(({ patient }) => patient))].filter(inAll).length;
    };
    const value = (statistic: string) => audit.results.get('design', 'technique=B vs A', statistic).value;
    expect(value('patients_both')).toBe(of('A', 'B'));
    expect(value('patients_only_a')).toBe(of('A') - of('A', 'B'));
    expect(value('patients_only_b')).toBe(of('B') - of('A', 'B'));
    expect(audit.results.get('design', 'technique=B vs A', 'patients_both').note).toBe('design:mixed');
  });
});

describe('fewer than 5 patients in a cohort', () => {
  const few = eyes.filter(({ technique, patient }) => technique === 'A' || String(patient) < 'P104');

  it('are counted and not compared', async () => {
    const { rows, results } = await auditOfEyes(few, 'cohorts: { by: technique, reference: A, compare: [B] }');
    const compared = rows.filter(
      ({ group, measure }) => group === 'technique=B vs A' && measure === 'prediction_error',
    );
    expect(compared.length).toBeGreaterThan(10);
    for (const { value, ci_low: low, note } of compared) {
      expect(value).toBeUndefined();
      expect(low).toBeUndefined();
      expect(note).toContain('not-estimable:few-patients');
    }
    expect(results.get('design', 'technique=B vs A', 'patients_only_a').value).toBeGreaterThan(5);
    expect(results.get('age', 'technique=B vs A', 'standardised_difference').note).toBe('not-estimable:few-patients');
  });
});

describe('an audit of one cohort', () => {
  it('compares formulas and looks at fewer eyes, and nothing else', async () => {
    const { rows } = await auditOfEyes(eyes, '');
    const versus = rows.filter(({ group }) => group.includes(' vs ')).map(({ group }) => group);
    // Eyes without an outcome beside those with one are no cohorts.
    expect(new Set(versus)).toEqual(new Set(['follow_up=missing vs known']));
    expect(rows.some(({ measure }) => ['design', 'confounding', 'overlap', 'primaries'].includes(measure))).toBe(false);
    expect(rows.some(({ statistic }) => statistic === 'p_adjusted:formula_difference_spread')).toBe(true);
    expect(rows.some(({ group }) => group === 'sensitivity=one-eye')).toBe(true);
  });
});
