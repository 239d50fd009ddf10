import { describe, expect, it } from 'vitest';
import { adviceOf, examinations, faultsOf, operations, toldOf } from './audit-text.js';

describe('unknown keys', () => {
  it('are told with the nearest one and those known there', () => {
    const [only, ...others] = faultsOf(`${operations}    blank_mean: { complication: none }\n`);
    expect(others).toEqual([]);
    expect(only).toEqual({
      line: 10,
      column: 5,
      message: '"blank_mean" is not known here',
      advice: [
        'Nearest   blank_means',
        'Known     blank_means, blocks, columns, constants, covariates, file, formula, holds, lens_power_is, ' +
          'letters_per_line, only, reading, visit',
      ],
    });
  });

  it('are not told a second time as missing where they are misspelled', () => {
    expect(toldOf(operations.replace('title', 'titel'))).toEqual(['2:1 "titel" is not known here']);
    expect(toldOf(operations.replace('columns', 'colums'))).toEqual(['6:5 "colums" is not known here']);
    expect(toldOf(operations.replace('holds', 'hold'))).toEqual(['5:5 "hold" is not known here']);
    expect(toldOf(operations.replace('patient', 'pateint'))).toEqual(['7:7 "pateint" is not one of our fields']);
  });

  it('are shown their section where they belong to another', () => {
    expect(adviceOf(`${operations}delimiter: tab\n`)).toContain('Do        write it under reading');
  });

  it('inside a column are told apart from keys that fit another field', () => {
    const column = (form: string) => operations.replace('Date', form);
    expect(toldOf(column('{ column: Date, numbers: decimal }'))).toEqual([
      '9:37 "numbers" does not fit the field surgery_date',
    ]);
    expect(toldOf(column('{ colum: Date }'))).toEqual(['9:23 "colum" is not known here']);
    expect(adviceOf(column('{ colum: Date }'))).toEqual(['Nearest   column', 'Known     column, occurrence, position']);
  });

  it('made of a decimal comma in braces are told as such', () => {
    const text = `${operations}policies: { vertex_mm: 12,5 }\n`;
    expect(toldOf(text)).toEqual(['10:27 "5" is not known here']);
    expect(adviceOf(text)).toEqual(['Do        write decimals with a point: a comma in braces begins the next key']);
  });
});

describe('missing keys', () => {
  it('are told where they should stand, with their meaning and an example', () => {
    expect(faultsOf(operations.replace('title: My audit 2025\n', ''))).toEqual([
      {
        line: 1,
        column: 1,
        message: '"title" is missing',
        advice: ['Expected  Title of the report.', 'Example   title: Cataract outcomes 2025'],
      },
    ]);
    expect(toldOf(`${operations}quality:\n  off:\n    - rule: sphere-range\n`)).toEqual(['12:7 "reason" is missing']);
  });

  it.each(['', '# nothing yet\n', '- a\n- b\n', 'just words\n'])('of a file without keys %j are one fault', (text) => {
    expect(toldOf(text)).toEqual(['1:1 this file holds no keys']);
  });

  it('of a field without default are told one by one', () => {
    const text = `${operations}      predicted_axis: A\n      predicted_cylinder: { column: C, notation: plus }\n`;
    expect(toldOf(text)).toEqual(['11:7 "plane" is missing']);
    expect(toldOf(text.replace('{ column: C, notation: plus }', 'C'))).toEqual([
      '11:27 ‘C’ is not what is expected here',
    ]);
    expect(adviceOf(text.replace('{ column: C, notation: plus }', 'C'))).toEqual([
      'Expected  { column: header } with plane and notation: neither has a default',
    ]);
  });
});

describe('wrong values', () => {
  const line = (key: string) => `${operations}${key}\n`;

  it.each([
    ['reading: { decimal: coma }', '10:21', ['Nearest   comma', 'Expected  auto, point or comma']],
    ['reading: { header_row: 0 }', '10:24', ['Expected  a whole number from 1 to 1000']],
    ['reading: { encoding: latin-1 }', '10:22', [expect.stringContaining('windows-1252')]],
    ['reading: { units_row: maybe }', '10:23', ['Expected  auto, yes or no']],
    ['allow_outside: sometimes', '10:16', ['Expected  yes or no']],
    [
      'name: Cataract 2025',
      '10:7',
      ['Expected  small letters a to z, digits, - and _', 'Example   name: cataract-2025'],
    ],
    [
      'data_until: 31.3.2026',
      '10:13',
      ['Expected  a day of the calendar written yyyy-mm-dd', 'Example   data_until: 2026-03-31'],
    ],
    [
      'data_until: 2025-02-29',
      '10:13',
      ['Expected  a day of the calendar written yyyy-mm-dd', 'Example   data_until: 2026-03-31'],
    ],
    [
      'period: { from: spring }',
      '10:17',
      ['Expected  a day written yyyy-mm-dd, or a year', 'Example   from: 2025-01-01'],
    ],
    ['policies:\n  vertex_mm: 12,5', '11:14', ['Expected  a number from 0 to 20, with a decimal point']],
    ['policies: { vertex_mm: 0x0C }', '10:24', ['Expected  a number from 0 to 20, with a decimal point']],
    ['policies: { lens_plane_ratio: some }', '10:31', ['Expected  each-eye, or a number from 0.1 to 2']],
    ['acuity: { distance_target: [1] }', '10:11', ['Expected  two values, the smaller first: [from, to]']],
    ['acuity: { distance_target: [0.5, -0.5] }', '10:11', ['Expected  two values, the smaller first: [from, to]']],
    ['bands: { age: [60, 50] }', '10:10', ['Expected  numbers from small to large: [22, 24.5, 26]']],
    [
      'statistics: { confidence: 95 }',
      '10:27',
      ['Expected  a number from 0.5 to 0.9999, with a decimal point', 'Example   confidence: 0.95'],
    ],
    [
      'statistics: { primary: prediction_error }',
      '10:24',
      ['Expected  measure/statistic', expect.stringContaining('Example   primary')],
    ],
    ['outputs: { tables: [csv, pfd] }', '10:26', ['Expected  csv, md, docx or tex']],
    ['outputs: { language: tlh }', '10:22', ['Expected  en']],
    ['outputs: { order: [baselin] }', '10:20', ['Nearest   baseline', expect.stringContaining('Expected  eye-flow')]],
    ['benchmarks: { published: some }', '10:26', ['Expected  all, none, or a list']],
    ['complications: { Posterior rupture: [PCR] }', '10:18', ['Expected  small letters a to z, digits, - and _']],
    ['subgroups: { a: b }', '10:1', ['Expected  a word, or a list of words: [a, b]']],
    ['reading: comma', '10:10', ['Expected  keys with values below or in braces: { key: value }']],
    ['prefer:\n  - a.csv\n  -', '12:4', ['Expected  a word or a text']],
  ])('%s at %s', (written, place, advice) => {
    const told = faultsOf(line(written));
    expect(told.map((fault) => `${fault.line}:${fault.column}`)).toEqual([place]);
    expect(told[0]?.advice).toEqual(advice);
  });

  it('quote the value as written', () => {
    expect(toldOf(line('reading: { header_row: 01.50 }'))).toEqual(['10:24 ‘01.50’ is not what is expected here']);
    expect(toldOf(line('reading: [comma]'))).toEqual(['10:1 a list is not what is expected here']);
  });

  it('behind a field of a column are told even where nothing stands', () => {
    expect(toldOf(`${operations}      technique:\n`)).toEqual(['10:7 nothing stands behind "technique"']);
  });

  it('of a column: a header or a position, a clock with its view, an index of dioptres', () => {
    const incision = (form: string) => adviceOf(`${operations}      incision_axis: ${form}\n`);
    expect(incision('{ occurrence: 2 }')).toEqual(['Expected  either column or position']);
    expect(incision('{ column: X, position: 2 }')).toEqual(['Expected  either column or position']);
    expect(incision('{ column: X, unit: clock }')).toEqual([
      'Expected  view together with unit: clock, and only with it',
    ]);
    expect(incision('{ column: X, view: facing }')).toEqual([
      'Expected  view together with unit: clock, and only with it',
    ]);
    expect(incision('[X, Y]')).toEqual([expect.stringContaining('Expected  a header, or { column: header }')]);
    const radius = `${operations}${examinations}      k1: { column: R1, unit: mm, index: 1.332 }\n      k2: R2\n`;
    expect(adviceOf(radius)).toEqual(['Expected  index only where the unit is D']);
  });
});

describe('all faults at once', () => {
  it('in the order of the file, each once, whatever layer finds them', () => {
    const text = `format: 1
title: My audit
sources:
  - file: a.csv
    holds: surgery
    columns:
      patient: ID: code
      eye: { column: Eye, words: { right: [D], left: [D] } }
      speher: Sph
      surgery_date: { column: Date, unit: deg }
      lens_power:
follow_up:
  visits:
    - { name: early, days: [7, 30] }
    - { name: late, days: [30, 90] }
  outcome: latest
outputs: { tables: [pdf] }
`;
    expect(toldOf(text)).toEqual([
      '7:16 a colon followed by a blank, or at the end, needs quotation marks around the value',
      '8:55 ‘D’ is a spelling of ‘right’ already',
      '9:7 "speher" is not one of our fields',
      '10:37 "unit" does not fit the field surgery_date',
      '11:7 nothing stands behind "lens_power"',
      '15:21 the windows of ‘late’ and ‘early’ overlap on days 30 to 30',
      '16:12 ‘latest’ is not a declared visit',
      '17:21 ‘pdf’ is not what is expected here',
    ]);
  });
});
