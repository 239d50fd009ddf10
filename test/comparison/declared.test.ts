import { describe, expect, it } from 'vitest';
import { plan } from '../../pipeline/plan.js';

const operations = `format: 1
title: Made up
sources:
  - file: list.csv
    holds: surgery
    columns: { patient: Code, eye: Eye, surgery_date: Day, technique: How }
cohorts: { by: technique }
`;

function told(statistics: string): readonly { message: string; advice: readonly string[] }[] {
  const planned = plan(`${operations}statistics: { ${statistics} }\n`);
  return 'faults' in planned ? planned.faults.map(({ message, advice }) => ({ message, advice })) : [];
}

describe('a primary outcome, a margin, a difference of interest', () => {
  it.each([
    'primary: [prediction_error/mean, prediction_error/sd, prediction_error/median_absolute]',
    'primary: [prediction_error/difference_mean, prediction_error/ratio_sd, prediction_error/relative_effect_absolute]',
    'primary: [refractive_cylinder_after/centroid, any_complication/share, cdva/share_at_or_better_20/40]',
    'margins: { prediction_error/sd: 1.2, any_complication/share: 0.02 }, differences: { cdva/mean: 0.05 }',
  ])('may name %s', (statistics) => {
    expect(told(statistics)).toEqual([]);
  });

  it('names a statistic by which cohorts are compared; the fault lists those that there are', () => {
    const [one, ...others] = told('primary: [prediction_error/skewness]');
    expect(others).toEqual([]);
    expect(one?.message).toBe('this measure has no statistic ‘skewness’');
    for (const known of ['mean', 'sd', 'median_absolute', 'share_within_0.50']) {
      expect(one?.advice.join(' ')).toContain(known);
    }
  });

  it('is an outcome, not what eyes were before surgery', () => {
    const [one] = told('differences: { axial_length/mean: 0.5 }');
    expect(one?.message).toBe('cohorts are not compared by ‘axial_length’');
    expect(one?.advice.join(' ')).toContain('prediction_error');
  });

  it('gives a ratio a margin above 1', () => {
    expect(told('margins: { prediction_error/sd: 0.1 }')[0]).toEqual({
      message: '‘sd’ is compared as a ratio',
      advice: [expect.stringContaining('a ratio above 1'), expect.stringContaining('1.2')],
    });
    expect(told('margins: { any_complication/ratio_share: 1 }')[0]?.message).toBe(
      '‘ratio_share’ is compared as a ratio',
    );
  });
});
