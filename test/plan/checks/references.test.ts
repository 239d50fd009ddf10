import { describe, expect, it } from 'vitest';
import { adviceOf, examinations, operations, toldOf } from '../audit-text.js';

const after = (text: string) => toldOf(`${operations}${text}\n`);

describe('the study', () => {
  it('ends after it begins', () => {
    expect(after('period: { from: 2025-06-01, to: 2025-05-31 }')).toEqual(['10:33 the period ends before it begins']);
    expect(after('period: { from: 2025-06-01, to: 2025 }')).toEqual([]);
    expect(after('period: { from: 2025, to: 2024 }')).toEqual(['10:27 the period ends before it begins']);
  });

  it('has a name, from its title where none is given', () => {
    const greek = operations.replace('My audit 2025', 'Καταρράκτης');
    expect(toldOf(greek)).toEqual(['2:8 the title gives no name for the folder of the report']);
    expect(toldOf(`${greek}name: katarraktis\n`)).toEqual([]);
  });
});

describe('visits', () => {
  const visits = (...lines: string[]) => after(['follow_up:', '  visits:', ...lines].join('\n'));

  it('do not overlap, not even by a day', () => {
    const early = '    - { name: a, days: [7, 30] }';
    expect(visits(early, '    - { name: b, days: [30, 90] }', '  outcome: b')).toEqual([
      '13:18 the windows of ‘b’ and ‘a’ overlap on days 30 to 30',
    ]);
    expect(visits(early, '    - { name: b, days: [31, 90] }', '  outcome: b')).toEqual([]);
    expect(visits(early, '    - { name: b, labels: [1J] }', '  outcome: b')).toEqual([]);
  });

  it('have names of their own', () => {
    expect(visits('    - { name: before, days: [1, 2] }')).toEqual(['12:15 ‘before’ cannot name a visit here']);
    expect(visits('    - { name: a, days: [1, 2] }', '    - { name: a, days: [3, 4] }', '  outcome: a')).toEqual([
      '13:15 the visit ‘a’ is declared twice',
    ]);
    expect(visits('    - { name: outcome, days: [1, 2] }')).toEqual([]);
    expect(visits('    - { name: outcome, days: [1, 2] }', '    - { name: b, days: [3, 4] }', '  outcome: b')).toEqual([
      '12:15 ‘outcome’ cannot name a visit here',
    ]);
  });

  it('aim into their window', () => {
    expect(visits('    - { name: a, days: [7, 30], aim: 31 }')).toEqual([
      '12:38 the day aimed at lies outside the window',
    ]);
    expect(visits('    - { name: a, aim: 31 }')).toEqual(['12:23 an aim needs days']);
    expect(visits('    - { name: a, days: [7, 30], aim: 30 }')).toEqual([]);
  });

  it('need an outcome where there are several', () => {
    const two = ['    - { name: 1 month, days: [7, 30] }', '    - { name: 3 months, days: [31, 90] }'];
    expect(visits(...two)).toEqual(['10:1 several visits are declared and none is the outcome']);
    expect(visits(...two, '  outcome: [3 months, 2 months]')).toEqual(['14:23 ‘2 months’ is not a declared visit']);
    expect(visits(...two, '  outcome: [3 months, 1 month]')).toEqual([]);
    expect(after('follow_up: { outcome: outcome }')).toEqual([]);
  });

  it('do not share a label', () => {
    const told = visits(
      '    - { name: a, days: [7, 30], labels: [1M, W4] }',
      '    - { name: b, days: [31, 90], labels: [1m, a] }',
      '  outcome: a',
      '  before: { labels: [w4] }',
    );
    expect(told).toEqual([
      '13:43 the label ‘1m’ means ‘a’ already',
      '13:47 the label ‘a’ means ‘a’ already',
      '15:22 the label ‘w4’ means ‘a’ already',
    ]);
  });

  it('are those that blocks and conditions name', () => {
    const source = `${operations}${examinations}      lane_m: L\n    visit: 1 moth\nfollow_up: { visits: [{ name: 1 month, days: [21, 60] }] }\n`;
    expect(toldOf(source)).toEqual(['17:12 ‘1 moth’ is not a declared visit']);
    expect(adviceOf(source)).toEqual(['Nearest   1 month', 'Known     before, 1 month']);
    expect(toldOf(source.replace('1 moth\n', 'before\n'))).toEqual([]);
  });
});

describe('conditions', () => {
  const mapped = `${operations}      age: Age
      technique: Method
    covariates: { dense: { column: D, type: category }, weight: { column: W, type: number }, grade: G }
${examinations}      cdva: { column: V, numbers: decimal }
      k1: K1
      k2: K2
eligibility:
  exclude:
`;
  const excluded = (condition: string) => toldOf(`${mapped}    - { ${condition}, reason: r }\n`);

  it('have exactly one operator', () => {
    expect(excluded('where: age')).toEqual(['24:7 the condition does not say what to compare']);
    expect(excluded('where: age, above: 3, below: 9')).toEqual([
      '24:31 the condition has 2 operators: above and below',
    ]);
    expect(excluded('where: age, abov: 3')).toEqual(['24:21 "abov" is not known here']);
    expect(excluded('where: age, above: 3, and: [{ where: age, below: 9 }]')).toEqual([]);
    expect(excluded('where: age, above: 3, and: [{ where: age }]')).toEqual([
      '24:37 the condition does not say what to compare',
    ]);
  });

  it('ask about fields and covariates of eyes', () => {
    expect(excluded('where: aeg, above: 3')).toEqual(['24:16 ‘aeg’ is neither a field nor a covariate']);
    expect(excluded('where: k1, above: 3')).toEqual(['24:16 ‘k1’ cannot be asked about']);
    expect(excluded('where: exam_date, above: 2025')).toEqual(['24:16 ‘exam_date’ cannot be asked about']);
    expect(excluded('where: k_mean, above: 47, at: before')).toEqual([]);
    expect(excluded('where: eye, is: right')).toEqual([]);
  });

  it('ask about what some source gives', () => {
    expect(excluded('where: axial_length, above: 30')).toEqual(['24:16 no source maps ‘axial_length’']);
    expect(excluded('where: surgery_year, above: 2024')).toEqual([]);
    const outcomes = 'complications: { vitreous_loss: [VL] }\n';
    const condition = '    - { where: vitreous_loss, is: yes, reason: r }\n';
    expect(toldOf(`${mapped}${condition}${outcomes}`)).toEqual(['24:16 no source maps ‘vitreous_loss’']);
    expect(toldOf(mapped.replace('age: Age', 'age: Age\n      complication: C') + condition + outcomes)).toEqual([]);
  });

  it('compare a value with its own kind', () => {
    expect(excluded('where: age, above: old')).toEqual(['24:28 ‘old’ cannot be compared with ‘age’']);
    expect(excluded('where: age, is: [70, old]')).toEqual(['24:30 ‘old’ cannot be compared with ‘age’']);
    expect(excluded('where: age, is: missing')).toEqual([]);
    expect(excluded('where: age, between: [9, 3]')).toEqual(['24:34 ‘3’ is not what is expected here']);
    expect(excluded('where: surgery_date, at_least: 2025-06-31')).toEqual([
      '24:40 ‘2025-06-31’ cannot be compared with ‘surgery_date’',
    ]);
    expect(excluded('where: surgery_date, at_least: 2025-06-01')).toEqual([]);
    expect(excluded('where: eye, is: OD')).toEqual(['24:25 ‘OD’ cannot be compared with ‘eye’']);
    expect(excluded('where: technique, above: 3')).toEqual(['24:27 "above" does not fit ‘technique’']);
    expect(excluded('where: dense, above: 3')).toEqual(['24:23 "above" does not fit ‘dense’']);
    expect(excluded('where: weight, is: heavy')).toEqual(['24:28 ‘heavy’ cannot be compared with ‘weight’']);
    expect(excluded('where: grade, above: 3')).toEqual([]);
    expect(excluded('where: grade, above: high')).toEqual(['24:30 ‘high’ cannot be compared with ‘grade’']);
  });

  it('compare acuities by line only', () => {
    expect(excluded('where: cdva, worse_than: 20/40')).toEqual([]);
    expect(excluded('where: cdva, above: 0.3')).toEqual(['24:22 "above" does not fit ‘cdva’']);
    expect(excluded('where: cdva, is: 0.5')).toEqual(['24:26 "is" asks of ‘cdva’ only whether there is a value']);
    expect(excluded('where: cdva, is: present')).toEqual([]);
    expect(excluded('where: cdva, worse_than: bad')).toEqual(['24:34 ‘bad’ is not what is expected here']);
    expect(excluded('where: age, worse_than: 20/40')).toEqual(['24:21 "worse_than" does not fit ‘age’']);
  });

  it('take their examination from a visit', () => {
    expect(excluded('where: cdva, at: before, worse_than: 0.5')).toEqual([]);
    expect(excluded('where: cdva, at: befor, worse_than: 0.5')).toEqual(['24:26 ‘befor’ is not a declared visit']);
    expect(excluded('where: age, at: before, above: 5')).toEqual(['24:21 ‘age’ does not belong to an examination']);
  });

  it('under only look at headers of the row itself', () => {
    const only = (condition: string) => toldOf(`${operations}    only:\n      - { ${condition} }\n`);
    expect(only('where: Type, is: [REF, REFRACTION]')).toEqual([]);
    expect(only('where: Some header, above: 2025-01-01')).toEqual([]);
    expect(only('where: Type, at: before, is: REF')).toEqual([
      '11:24 "at" has no meaning here: conditions of only look at the row itself',
    ]);
    expect(only('where: VA, worse_than: 0.5')).toEqual(['11:22 "worse_than" does not fit ‘VA’']);
    expect(only('where: Type')).toEqual(['11:9 the condition does not say what to compare']);
  });
});

describe('groups', () => {
  const withSurgeon = `${operations}      surgeon: Op\n      axial_length: AL\n`;
  const grouped = (text: string) => toldOf(`${withSurgeon}${text}\n`);

  it('stand on fields of eyes that some source gives', () => {
    expect(grouped('subgroups: [surgeon, year, eye, axial_length]')).toEqual([]);
    expect(grouped('subgroups: [surgeno]')).toEqual([
      '12:13 ‘surgeno’ is neither a field that fits here nor a covariate',
    ]);
    expect(grouped('subgroups: [k_mean]')).toEqual(['12:13 no source maps ‘k_mean’']);
    expect(grouped('cohorts: { by: technique }')).toEqual(['12:16 no source maps ‘technique’']);
    expect(grouped('statistics: { adjust_for: [cdva] }')).toEqual([
      '12:28 ‘cdva’ is neither a field that fits here nor a covariate',
    ]);
  });

  it('are declared in one way', () => {
    expect(grouped('cohorts: { by: surgeon, define: [{ name: n, where: surgeon, is: S1 }] }')).toEqual([
      '12:25 cohorts are declared twice, by a field and by conditions',
    ]);
    expect(grouped('cohorts: { reference: S1 }')).toEqual(['12:12 "reference" needs cohorts']);
  });

  it('are named as they are defined', () => {
    const define =
      'define: [{ name: old, where: surgery_year, below: 2025 }, { name: new, where: surgery_year, at_least: 2025 }]';
    expect(grouped(`cohorts: { ${define}, reference: old, compare: [new] }`)).toEqual([]);
    expect(grouped(`cohorts: { reference: odl, ${define} }`)).toEqual(['12:23 ‘odl’ is not a cohort']);
    expect(grouped(`cohorts: { reference: old, compare: [old], ${define} }`)).toEqual([
      '12:38 the cohort ‘old’ stands here twice',
    ]);
    expect(grouped(`cohorts: { ${define.replace('name: new', 'name: old')} }`)).toEqual([
      '12:78 the cohort ‘old’ stands here twice',
    ]);
    const listed = 'values: { surgeon: { A: [a], B: [b] } }\n';
    expect(grouped(`${listed}cohorts: { by: surgeon, reference: C }`)).toEqual(['13:36 ‘C’ is not a cohort']);
    expect(grouped('cohorts: { by: surgeon, reference: C }')).toEqual([]);
  });

  it('of bands and limits are numbers', () => {
    expect(grouped('bands: { surgeon: [1, 2] }')).toEqual(['12:10 ‘surgeon’ is not a number']);
    expect(grouped('bands: { age: [60, 80] }')).toEqual([]);
    expect(grouped('bands: { aeg: [60, 80] }')).toEqual([
      '12:10 ‘aeg’ is neither a field that fits here nor a covariate',
    ]);
    expect(grouped('quality: { limits: { cdva: { usual: [-0.3, 2] } } }')).toEqual([]);
    expect(grouped('quality: { limits: { surgeon: { usual: [-0.3, 2] } } }')).toEqual([
      '12:22 ‘surgeon’ is not a number',
    ]);
    expect(grouped('quality: { limits: { surprise: { usual: [0, 2.5] } } }')).toEqual([]);
    expect(grouped('quality: { limits: { surprize: { usual: [0, 2.5] } } }')).toEqual([
      '12:22 ‘surprize’ is neither a field that fits here nor a covariate',
    ]);
  });

  it('of rules that are switched off are rules of plausibility', () => {
    const off = (rule: string) => grouped(`quality: { off: [{ rule: ${rule}, reason: x }] }`);
    expect(off('lens-power-step')).toEqual([]);
    expect(off('cylinder-notation-file')).toEqual([]);
    expect(off('lens-power-steps')).toEqual(['12:26 ‘lens-power-steps’ is no rule that can be switched off']);
    // No audit can pass over what identifies persons.
    expect(off('identifier-present')).toHaveLength(1);
  });
});

describe('predictions', () => {
  const block = (formula: string) =>
    `  - file: p.csv\n    holds: prediction\n    formula: ${formula}\n    columns: { patient: ID, eye: Side, predicted_se: P }\n`;

  it('need a primary formula where several predict and none stands on surgery rows', () => {
    const two = `${operations}${block('SRK/T')}${block('Haigis')}`;
    expect(toldOf(two)).toEqual(['14:5 several formulas predict, and none is the primary one']);
    expect(adviceOf(two)).toEqual(['Expected  SRK/T or Haigis', 'Example   primary_formula: SRK/T']);
    expect(toldOf(`${two}predictions: { primary_formula: Haigis }\n`)).toEqual([]);
    expect(toldOf(`${two}predictions: { primary_formula: Hagis }\n`)).toEqual([
      '18:33 no source gives predictions of ‘Hagis’',
    ]);
    expect(toldOf(two.replace('surgery_date: Date', 'surgery_date: Date\n      predicted_se: P'))).toEqual([]);
  });

  it('may name their formula row by row, but not twice', () => {
    const long = block('x').replace('    formula: x\n', '').replace('predicted_se: P', 'predicted_se: P, formula: F');
    expect(toldOf(`${operations}${long}predictions: { primary_formula: Haigis }\n`)).toEqual([]);
    const twice = block('SRK/T').replace('predicted_se: P', 'predicted_se: P, formula: F');
    expect(toldOf(`${operations}${twice}`)).toEqual(['12:5 "formula" stands here twice']);
  });
});

describe('statistics', () => {
  it('are statistics of measures of ours', () => {
    expect(after('statistics: { primary: [prediction_eror/mean] }')).toEqual([
      '10:25 ‘prediction_eror’ is not one of our measures',
    ]);
    expect(after('statistics: { primary: [prediction_error/share_within_0.5] }')).toEqual([
      '10:25 this measure has no statistic ‘share_within_0.5’',
    ]);
    expect(
      after('statistics: { primary: [prediction_error:SRK/T/share_within_0.50, cdva/share_at_or_better_20/40] }'),
    ).toEqual([]);
    expect(after('statistics: { margins: { udva/share_at_or_better_20/41: 0.05 } }')).toEqual([
      '10:26 this measure has no statistic ‘share_at_or_better_20/41’',
    ]);
  });

  it('are watched between two shares that differ', () => {
    const watched = (unacceptable: number) =>
      after(
        `monitoring: { outcome: prediction_error/share_within_0.50, acceptable: 0.75, unacceptable: ${unacceptable} }`,
      );
    expect(watched(0.65)).toEqual([]);
    expect(watched(0.75)).toEqual(['10:78 the unacceptable share is the acceptable one']);
  });
});
