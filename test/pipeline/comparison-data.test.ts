import { describe, expect, it } from 'vitest';
import { binomialProbability } from '../../src/statistics/distributions.js';
import { auditOfEyes, found, type MadeEye } from '../comparison/made-up-audit.js';
import { committed } from '../sample-exports/committed.js';
import { referencePresent, referenceText } from '../shared-reference.js';
import { agrees } from '../statistics/reference-examples.js';
import { auditOf } from '../whole/audit.js';
import { auditText, committedFiles } from '../whole/sample.js';

type Row = Readonly<Record<string, string>>;

function rowsOf(file: string): readonly Row[] {
  const [head = '', ...lines] = referenceText(`datasets/${file}`).trim().split(/\r?\n/);
  const names = head.split(',');
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, i) => [names[i] as string, cell])));
}

// Results of R 4.2.2; closed forms at 1e-8. What in the file is of other methods (Cox, mixed models, rank tests
// without ties) is not of this project.
const expectedOf = (set: string) => JSON.parse(referenceText('dataset-expected.json'))[set];
const tolerance = 1e-8;

describe.skipIf(!referencePresent)('one eye of each of 197 diabetic patients treated, the other not', () => {
  const eyes = (): readonly MadeEye[] =>
    rowsOf('diabetic_retinopathy_two_eye.csv').map(({ id = '', trt, eye, status }) => ({
      patient: id,
      side: (eye === 'right') === (trt === '1') ? 'R' : 'L',
      technique: trt === '1' ? 'B' : 'A',
      complication: status === '1' ? 'PCR' : 'none',
    }));

  it('is a fellow-eye design; events, difference and McNemar’s test as counted', async () => {
    const {
      events,
      patients,
      mcnemar_exact_p: exact,
      paired_table_treated_rows_untreated_columns: table,
    } = expectedOf('retinopathy');
    const audit = await auditOfEyes(eyes());
    expect(audit.results.get('any_complication', 'technique=B', 'count').value).toBe(events.treated);
    expect(audit.results.get('any_complication', 'technique=A', 'count').value).toBe(events.untreated);
    expect(audit.results.get('design', 'technique=B vs A', 'patients_both').value).toBe(patients);
    const difference = found(audit, 'difference_share', 'any_complication');
    expect(difference.notes).toEqual(['design:fellow-eye']);
    expect(difference.value).toBeCloseTo((events.treated - events.untreated) / patients, 12);
    // The exact p counts the split that was seen in full, on both sides; mid-p counts it half.
    const [[, one], [other]] = table;
    const seen = binomialProbability(other, one + other, 0.5);
    expect(agrees(difference.p, exact - seen, tolerance)).toBe(true);
    expect(difference.test).toBe('mcnemar-mid-p');
  });

  // Logits of a marginal model: of the untreated, and the difference; closed form, but fitted by iteration (1e-4).
  it('has the shares of the marginal model', async () => {
    const [untreated, difference] = expectedOf('retinopathy').gee_logit_exchangeable.coef;
    const share = (logit: number) => 1 / (1 + Math.exp(-logit));
    const { value } = found(await auditOfEyes(eyes()), 'ratio_share', 'any_complication');
    expect(agrees(value, share(untreated + difference) / share(untreated), 1e-4)).toBe(true);
  });
});

describe.skipIf(!referencePresent)('both eyes of seven subjects, measured at four powers', () => {
  const rows = () => rowsOf('flash_latency_two_eye.csv');
  const at = (power: string) => rows().filter((row) => row.power === power);
  // A hundred milliseconds are a dioptre: an error above 0 is its own size.
  const eyes = (power: string): readonly MadeEye[] =>
    at('6/6').map(({ acuity, eye, subject = '' }, i) => ({
      patient: subject,
      side: eye === 'right' ? 'R' : 'L',
      technique: 'A',
      error: Number(acuity) / 100,
      second: Number(at(power)[i]?.acuity) / 100,
    }));

  it.each(['6/18', '6/36', '6/60'])('the mean difference of %s from 6/6 is the model’s effect', async (power) => {
    const { results } = await auditOfEyes(eyes(power), '');
    const row = results.get('prediction_error:second', 'all', 'formula_difference_absolute');
    const effect = expectedOf('flash_latency').lmm_nested.fixed[`power${power}`];
    expect(agrees((row.value as number) * 100, effect, 1e-6)).toBe(true);
    expect(row).toMatchObject({ n: 14, patients: 7 });
  });

  // Every subject has both eyes: the patient-sum t is the one-sample t of seven subject means.
  it('is tested by subjects, not by eyes', async () => {
    const { results } = await auditOfEyes(eyes('6/60'), '');
    const differences = at('6/60').map(({ acuity, subject }, i) => ({
      subject,
      difference: (Number(acuity) - Number(at('6/6')[i]?.acuity)) / 100,
    }));
    const means = [...new Set(differences.map(({ subject }) => subject))].map((subject) => {
      const own = differences.filter((one) => one.subject === subject);
      return own.reduce((sum, { difference }) => sum + difference, 0) / own.length;
    });
    const mean = means.reduce((sum, one) => sum + one, 0) / 7;
    const standardError = Math.sqrt(means.reduce((sum, one) => sum + (one - mean) ** 2, 0) / 6 / 7);
    const row = results.get('prediction_error:second', 'all', 'formula_difference_absolute');
    // t at 0.975 on 6 degrees: 2.446911851 (SciPy 1.17.1, t.ppf).
    expect((row.ci_high as number) - (row.value as number)).toBeCloseTo(2.446911851 * standardError, 9);
    expect(results.get('prediction_error:second', 'all', 'df:formula_difference_absolute').value).toBe(6);
  });
});

describe.skipIf(!referencePresent)('spherical equivalents of both eyes of 244 patients', () => {
  /** Cleaned as the file’s entry says. */
  const cleaned = () =>
    rowsOf('papila_refraction_raw.csv').filter(({ sphere, cylinder, axis }) => {
      if (!sphere && !cylinder) return false;
      if (axis && (Number(axis) < 0 || Number(axis) > 180)) return false;
      return Math.abs(Number(cylinder)) <= 7 && !(Number(cylinder) !== 0 && !axis);
    });
  const eyeOf = ({ patient = '', eye, sphere, cylinder }: Row, technique: string): MadeEye => ({
    patient,
    side: eye === 'OD' ? 'R' : 'L',
    technique,
    error: Number(sphere) + Number(cylinder) / 2,
  });

  /** The same with its cylinder, whose blank is none. */
  const withCylinder = (row: Row): MadeEye => ({
    ...eyeOf(row, 'A'),
    cylinder: Number(row.cylinder),
    ...(row.axis ? { axis: Number(row.axis) } : {}),
  });

  // Refractions as they stand (vertex 0); x and y of R are those of the plus cylinder's axis, doubled.
  it('right eyes, one a patient: centroid, spread, region, T² and shares of the cylinder', async () => {
    const { results } = await auditOfEyes(
      cleaned()
        .filter(({ eye }) => eye === 'OD')
        .map(withCylinder),
      '',
    );
    const expected = expectedOf('papila').OD;
    const row = (statistic: string) => results.get('refractive_cylinder_after', 'all', statistic);
    expect(row('n').value).toBe(expected.n);
    for (const [statistic, value] of [
      ['centroid_x', expected.mean_x],
      ['centroid_y', expected.mean_y],
      ['centroid_magnitude', expected.centroid_power],
      ['centroid_axis', expected.centroid_plus_axis],
      ['sd_x', expected.sd_x],
      ['sd_y', expected.sd_y],
      ['covariance_xy', expected.cov_xy],
      ['mean_magnitude', expected.mean_magnitude],
      ['median_magnitude', expected.median_magnitude],
      ['centroid_ellipse_major', expected.ellipse_mean_95_F_semi_axes[0]],
      ['centroid_ellipse_minor', expected.ellipse_mean_95_F_semi_axes[1]],
      ['centroid_ellipse_angle', expected.ellipse_angle_plot_deg],
      ['hotelling_t2', expected.hotelling_T2_vs_0],
    ] as const)
      expect(agrees(row(statistic).value, value, tolerance), statistic).toBe(true);
    for (const [limit, percent] of Object.entries(expected.percent_magnitude_within)) {
      const share = results.get('refractive_cylinder_after_recorded', 'all', `share_within_${limit}`);
      expect((share.value as number) * 100, limit).toBeCloseTo(percent as number, 9);
    }
  });

  // R's standard error leaves out the factor G/(G − 1) of 242 patients; t(241) at 0.975 is 1.9698562 (SciPy 1.17.1).
  it('both eyes: centroid and mean over eyes, the standard error by patients, fellow eyes as form (1, 1)', async () => {
    const { results } = await auditOfEyes(cleaned().map(withCylinder), '');
    const { all_eyes: expected, two_eye_models_SE: models, right_v_left_SE: paired } = expectedOf('papila');
    const row = (statistic: string) => results.get('refractive_cylinder_after', 'all', statistic);
    expect(agrees(row('centroid_x').value, expected.mean_x, tolerance)).toBe(true);
    expect(agrees(row('centroid_y').value, expected.mean_y, tolerance)).toBe(true);
    expect(agrees(row('covariance_xy').value, expected.cov_xy, tolerance)).toBe(true);
    const mean = results.get('prediction_error', 'all', 'mean');
    expect(agrees(mean.value, expected.mean_SE, tolerance)).toBe(true);
    expect(agrees(results.get('prediction_error', 'all', 'sd').value, expected.sd_SE, tolerance)).toBe(true);
    const standardError = ((mean.ci_high as number) - (mean.value as number)) / 1.9698562184;
    const { cluster_robust_se_of_mean: clustered } = models;
    expect(agrees(standardError * Math.sqrt(241 / 242), clustered, 1e-7)).toBe(true);
    const patients = cleaned().map(({ patient }) => patient);
    const both = cleaned().filter(({ patient }) => patients.indexOf(patient) !== patients.lastIndexOf(patient));
    const pairs = await auditOfEyes(both.map(withCylinder), '');
    expect(agrees(pairs.results.get('prediction_error', 'all', 'icc').value, paired.icc.ICC1, tolerance)).toBe(true);
  });

  it('right eyes with and without a lens differ by Welch’s t', async () => {
    const right = cleaned().filter(({ eye, lens_status: status }) => eye === 'OD' && status !== '');
    const audit = await auditOfEyes(right.map((row) => eyeOf(row, row.lens_status === '1' ? 'B' : 'A')));
    const { counts, SE_welch: welch } = expectedOf('papila').phakic0_v_pseudophakic1_OD;
    const difference = found(audit, 'difference_mean');
    expect(difference.n).toBe(counts['0'] + counts['1']);
    expect(agrees(difference.df, welch.df, tolerance)).toBe(true);
    expect(agrees(difference.p, welch.p, tolerance)).toBe(true);
    expect(difference.notes).toContain('textbook:welch');
  });

  it('right and left eyes of one patient differ by the paired t', async () => {
    const patients = cleaned().map(({ patient }) => patient);
    const both = cleaned().filter(({ patient }) => patients.indexOf(patient) !== patients.lastIndexOf(patient));
    const audit = await auditOfEyes(both.map((row) => eyeOf(row, row.eye === 'OD' ? 'B' : 'A')));
    const expected = expectedOf('papila').right_v_left_SE;
    const difference = found(audit, 'difference_mean');
    expect(difference.n).toBe(2 * expected.n_pairs);
    expect(agrees(difference.value, expected.mean_difference, tolerance)).toBe(true);
    expect(agrees(difference.p, expected.p, tolerance)).toBe(true);
    expect(difference.df).toBeCloseTo(expected.df, 9);
  });
});

// Expected values and standard errors of each cohort: 150 samples of the same making (sample-exports/README.md).
// Fellow eyes in both cohorts correlate, so the difference varies less than independent cohorts would.
describe('the planted difference of the sample', () => {
  const { effects } = JSON.parse(committed('planted.json').toString('utf8')) as {
    effects: readonly { measure: string; group: string; statistic: string; expected: number; standardError: number }[];
  };
  const planted = (technique: string, statistic: string) => {
    const is = (effect: (typeof effects)[number]) =>
      effect.measure === 'prediction_error' &&
      effect.group === `technique=${technique}` &&
      effect.statistic === statistic;
    const effect = effects.find(is);
    if (!effect) throw new RangeError(`no planted ${statistic} of ${technique}`);
    return effect;
  };
  const group = 'technique=laser-assisted vs manual';

  it('is found within three standard errors, and called better', async () => {
    const { results } = await auditOf(auditText(), committedFiles());
    const [laser, manual] = ['laser-assisted', 'manual'].map((technique) => (name: string) => planted(technique, name));
    if (!laser || !manual) throw new RangeError('expected two cohorts');
    for (const name of ['mean', 'share_within_0.50']) {
      const { value } = results.get('prediction_error', group, `difference_${name}`);
      const [one, other] = [laser(name), manual(name)];
      const standardError = Math.hypot(one.standardError, other.standardError);
      expect(Math.abs((value as number) - (one.expected - other.expected)), name).toBeLessThan(3 * standardError);
    }
    const primary = results.get('prediction_error', group, 'difference_share_within_0.50');
    expect(primary.note).toBe('design:mixed;primary:k=1;verdict:better');
    expect(primary.ci_low).toBeGreaterThan(0);
    const spread = results.get('prediction_error', group, 'ratio_sd');
    const ratio = laser('sd').expected / manual('sd').expected;
    expect(spread.ci_low).toBeLessThan(ratio);
    expect(spread.ci_high).toBeGreaterThan(ratio);
  });
});
