import { describe, expect, it } from 'vitest';
import { auditOfEyes, type MadeEye } from '../comparison/made-up-audit.js';
import { madeUpEyes } from '../comparison/made-up-eyes.js';

const eyes = madeUpEyes();
const cohorts = (reference: string) => `cohorts: { by: technique, reference: ${reference} }`;
const audit = await auditOfEyes(eyes, cohorts('A'));

describe('adjustment', () => {
  const adjustFor = (...names: readonly string[]) =>
    `${cohorts('A')}\nstatistics: { adjust_for: [${names.join(', ')}] }`;
  const group = 'technique=B vs A';

  it('stands beside the unadjusted difference of means and shares', async () => {
    const { results, rows } = await auditOfEyes(eyes, adjustFor('axial_length', 'surgeon', 'sex'));
    const of = (name: string) => results.get('prediction_error', group, name);
    expect(of('difference_mean').value).toBe(audit.results.get('prediction_error', group, 'difference_mean').value);
    expect(of('adjusted_difference_mean').value).not.toBe(of('difference_mean').value);
    expect(of('adjusted_difference_mean').method).toBe('linear-model-patient-t');
    expect(of('adjusted_difference_share_within_0.50').ci_high).toBeLessThanOrEqual(1);
    expect(of('p:adjusted_difference_mean').value).toBeLessThan(1);
    expect(results.find('prediction_error', group, 'same_eyes_difference_mean')).toBeUndefined();
    expect(rows.some(({ statistic }) => /^adjusted_(ratio|relative|shift)/.test(statistic))).toBe(false);
  });

  it('leaves eyes without a covariate out, and shows the unadjusted difference of those that are left', async () => {
    const some = eyes.map((eye, i) => {
      const { length, ...others } = eye;
      return i % 5 ? { ...others, length: length as number } : others;
    });
    const { results } = await auditOfEyes(some, adjustFor('axial_length'));
    const [adjusted, same] = ['adjusted_difference_mean', 'same_eyes_difference_mean'].map((name) =>
      results.get('prediction_error', group, name),
    );
    const left = some.filter((eye) => eye.technique !== 'C' && 'length' in eye);
    expect([adjusted?.n, same?.n]).toEqual([left.length, left.length]);
    const mean = (technique: string) => {
      const errors = left.filter((eye) => eye.technique === technique).map(({ error }) => error as number);
      return errors.reduce((sum, error) => sum + error, 0) / errors.length;
    };
    expect(same?.value).toBeCloseTo(mean('B') - mean('A'), 12);
  });

  it('is refused where each technique has its own surgeon', async () => {
    const apart = eyes.map((eye) => ({ ...eye, surgeon: `S ${eye.technique}` }));
    const { results } = await auditOfEyes(apart, adjustFor('surgeon'));
    const row = results.get('prediction_error', group, 'adjusted_difference_mean');
    expect(row.value).toBeUndefined();
    expect(row.note).toContain('not-estimable:collinear:surgeon');
    expect(results.get('confounding', group, 'overlap:surgeon')).toMatchObject({ value: 0, note: 'no-overlap' });
  });
});

describe('what eyes were before', () => {
  // Austin 2009, by hand from the eyes of the file: age once a patient, length once an eye.
  it('is compared in standard deviations, age by patient', () => {
    const of = (technique: string, value: (eye: MadeEye) => number, once: boolean) => {
      const own = eyes.filter((eye) => eye.technique === technique);
      const first = own.filter((eye, i) => !once || own.findIndex(({ patient }) => patient === eye.patient) === i);
      const values = first.map(value);
      const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
      const square = values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (values.length - 1);
      return { mean, square, n: values.length };
    };
    for (const [measure, value, once] of [
      ['age', (eye: MadeEye) => eye.age as number, true],
      ['axial_length', (eye: MadeEye) => eye.length as number, false],
    ] as const) {
      const [a, b] = [of('A', value, once), of('B', value, once)];
      const row = audit.results.get(measure, 'technique=B vs A', 'standardised_difference');
      expect(row.value).toBeCloseTo((b.mean - a.mean) / Math.sqrt((a.square + b.square) / 2), 10);
      expect(row.n).toBe(a.n + b.n);
      expect(row.note).toBe(Math.abs(row.value as number) > 0.1 ? 'imbalance' : '');
    }
    expect(audit.results.find('age', 'technique=B vs A', 'difference_mean')).toBeUndefined();
  });

  it('and how much later they were seen', async () => {
    const later = eyes.map((eye) => ({ ...eye, examined: eye.technique === 'B' ? '2025-02-24' : '2025-02-14' }));
    const moved = later.map((eye, i) => (i % 4 ? eye : { ...eye, examined: '2025-02-19' }));
    const row = (await auditOfEyes(moved)).results.get('follow_up_days', 'technique=B vs A', 'difference_mean');
    const mean = (technique: string) => {
      const days = moved.filter((eye) => eye.technique === technique).map(({ examined }) => Number(examined.slice(-2)));
      return days.reduce((sum, day) => sum + day, 0) / days.length;
    };
    expect(row.value).toBeCloseTo(mean('B') - mean('A'), 12);
    expect(row.unit).toBe('days');
  });
});

describe('sensitivity', () => {
  it('with one eye a patient is the audit of first eyes', async () => {
    const first = await auditOfEyes(eyes, `${cohorts('A')}\neligibility: { eyes_per_patient: first }`);
    for (const [measure, statistic] of [
      ['prediction_error', 'mean'],
      ['prediction_error', 'share_within_0.50'],
      ['refractive_cylinder_after_recorded', 'share_within_0.50'],
    ] as const) {
      for (const group of ['all', 'technique=A', 'technique=B']) {
        const { value, ci_low: low, n } = first.results.get(measure, group, statistic);
        const key = group === 'all' ? 'sensitivity=one-eye' : `sensitivity=one-eye;${group}`;
        expect(audit.results.get(measure, key, statistic)).toMatchObject({ value, n });
        expect(audit.results.get(measure, key, statistic).ci_low).toBeCloseTo(low as number, 12);
      }
    }
    const name = 'difference_share_within_0.50';
    const compared = first.results.get('prediction_error', 'technique=B vs A', name);
    const beside = audit.results.get('prediction_error', 'sensitivity=one-eye;technique=B vs A', name);
    expect(beside).toMatchObject({ value: compared.value, ci_low: compared.ci_low, n: compared.n });
    expect(beside.note).not.toContain('verdict');
  });

  it('leaves out the eyes that are asked about, and only those', async () => {
    // Sphere −14 D is beyond the usual and within the possible: asked about and kept.
    const asked = eyes.map((eye, i) => (i < 3 ? { ...eye, error: -14, second: -14 } : eye));
    const { results, findings } = await auditOfEyes(asked);
    expect(findings.filter(({ rule, severity }) => rule === 'sphere-range' && severity === 'query')).toHaveLength(3);
    const { value: n } = results.get('prediction_error', 'all', 'n');
    const without = results.get('prediction_error', 'sensitivity=without-queries', 'mean');
    expect(without.n).toBe((n as number) - 3);
    const rest = eyes.slice(3).map(({ error }) => error as number);
    expect(without.value).toBeCloseTo(rest.reduce((sum, error) => sum + error, 0) / rest.length, 12);
    // A complication is no refraction: nothing of it is asked about.
    expect(results.get('any_complication', 'sensitivity=without-queries', 'share').n).toBe(eyes.length);
  });
});
