import { describe, expect, it } from 'vitest';
import { adviceOf, examinations, operations, toldOf } from '../audit-text.js';

const wide = (blocks: string, shared = 'patient: ID, eye: Side') =>
  `format: 1\ntitle: x\nsources:\n  - file: a.csv\n    columns: { ${shared} }\n    blocks:\n${blocks}`;

describe('rows and columns', () => {
  it('need holds or blocks, and columns', () => {
    expect(toldOf(operations.replace('    holds: surgery\n', ''))).toEqual(['4:5 a source needs holds, or blocks']);
    const bare = 'format: 1\ntitle: x\nsources:\n  - file: a.csv\n    holds: surgery\n';
    expect(toldOf(bare)).toEqual(['4:5 "columns" is missing']);
  });

  it('need patient and eye, in the block or beside it, as a column or a constant', () => {
    expect(toldOf(operations.replace('      patient: ID\n', ''))).toEqual(['6:5 the column of "patient" is missing']);
    expect(adviceOf(operations.replace('      eye: Side\n', ''))).toContain('Example   eye: Side');
    expect(toldOf(operations.replace('      eye: Side\n', '').concat('    constants: { eye: right }\n'))).toEqual([]);
    expect(toldOf(wide('      - { holds: surgery, columns: { surgery_date: D } }\n'))).toEqual([]);
    expect(toldOf(wide('      - { holds: surgery, columns: { surgery_date: D } }\n', 'patient: ID'))).toEqual([
      '7:27 the column of "eye" is missing',
    ]);
  });

  it('point to the lines that still stand as comments, once for all blocks of the source', () => {
    const lines = [
      'format: 1',
      'title: x',
      'sources:',
      '  - file: a.csv',
      '    columns:',
      '      patient: ID',
      '      # eye: { column: Eye, words: { right: [1], left: [2] } }   # 1, 2 · by its header',
      '      # eye: { column: Eye, words: { right: [2], left: [1] } }',
      '    blocks:',
      '      - { holds: surgery, columns: { surgery_date: D } }',
      '      - { holds: exam, visit: before, columns: { cdva: V } }',
    ];
    const text = `${lines.join('\n')}\n`;
    expect(toldOf(text)).toEqual(['7:7 "eye" is open: its lines are still a comment']);
    expect(adviceOf(text)).toEqual([
      'Do        take the # away from the one of these lines that holds',
      'Line 7    eye: { column: Eye, words: { right: [1], left: [2] } }',
      'Line 8    eye: { column: Eye, words: { right: [2], left: [1] } }',
    ]);
    // A comment of another source settles nothing here.
    const other = `${lines.filter((line) => !line.includes('# eye')).join('\n')}\n${lines.slice(3).join('\n')}\n`;
    expect(toldOf(other).slice(0, 2)).toEqual([
      '8:27 the column of "eye" is missing',
      '9:39 the column of "eye" is missing',
    ]);
  });

  it('carry only fields of their kind', () => {
    const told = toldOf(`${operations}      sphere: Sph\n      cylinder: Cyl\n`);
    expect(told).toEqual([
      '10:7 "sphere" does not stand on surgery rows',
      '11:7 "cylinder" does not stand on surgery rows',
    ]);
    expect(adviceOf(`${operations}      lane_m: Lane\n`)[0]).toBe('Do        move it to rows that hold exam');
  });

  it('share only what some block can carry', () => {
    const surgeryOnly = '      - { holds: surgery, columns: { surgery_date: D } }\n';
    expect(toldOf(wide(surgeryOnly, 'patient: ID, eye: Side, exam_date: E'))).toEqual([
      '5:40 no block of this source can hold "exam_date"',
    ]);
    const withExam = `${surgeryOnly}      - { holds: exam, columns: { cdva: { column: V, numbers: decimal } } }\n`;
    expect(toldOf(wide(withExam, 'patient: ID, eye: Side, exam_date: E'))).toEqual([]);
  });

  it('of an examination need its time', () => {
    const exam = `${operations}${examinations}      lane_m: Lane\n`;
    const timeless = exam.replace('      exam_date: Date\n', '');
    expect(toldOf(exam)).toEqual([]);
    expect(toldOf(timeless)).toEqual(['12:5 nothing says when these examinations were']);
    expect(toldOf(`${timeless}      days: Days\n`)).toEqual([]);
    expect(toldOf(`${timeless}      visit: Label\n`)).toEqual([]);
    expect(toldOf(timeless.replace('holds: exam', 'holds: exam\n    visit: before'))).toEqual([]);
  });

  it('of a prediction need what is predicted', () => {
    const block = '      - { holds: prediction, formula: SRK/T, columns: { constant: A } }\n';
    expect(toldOf(wide(block))).toEqual(['7:46 the column of "predicted_se" is missing']);
  });

  it('need the fields that belong together', () => {
    const exam = (columns: string) => toldOf(`${operations}${examinations}${columns}`);
    expect(exam('      k1: R1\n')).toEqual(['16:7 "k1" says nothing without k2']);
    expect(exam('      axis: Ax\n')).toEqual(['16:7 "axis" says nothing without cylinder']);
    expect(exam('      sphere: Sph\n    constants: { cylinder: 0 }\n')).toEqual([]);
  });

  it('carry one form of a measurement', () => {
    const exam = (columns: string) => toldOf(`${operations}${examinations}${columns}`);
    expect(exam('      refraction: Rx\n      sphere: S\n      cylinder: C\n')).toEqual([
      '17:7 "sphere" and "refraction" are two forms of one measurement',
    ]);
    expect(exam('      k1: R1\n      k2: R2\n      k_mean: K\n')).toEqual([
      '18:7 "k_mean" and "k1" are two forms of one measurement',
    ]);
  });

  it('keep visit for examinations and formula for predictions', () => {
    expect(toldOf(operations.replace('surgery\n', 'surgery\n    visit: before\n'))).toEqual([
      '6:5 "visit" has a meaning on exam rows only',
    ]);
    const text = wide('      - { holds: surgery, columns: { surgery_date: D } }\n').replace(
      '    blocks',
      '    formula: SRK/T\n    blocks',
    );
    expect(toldOf(text)).toEqual(['6:5 "formula" cannot stand beside blocks']);
  });
});

describe('constants and blanks', () => {
  it('are values of their fields', () => {
    const constants = (text: string) => toldOf(`${operations}    constants: { ${text} }\n`);
    expect(constants('sex: male')).toEqual(['10:23 ‘male’ is no value of sex']);
    expect(constants('lens_power: high')).toEqual(['10:30 ‘high’ is no value of lens_power']);
    expect(constants('surgeon: 012, incision_axis: 90, age: 70')).toEqual([]);
    expect(constants('vertex_mm: 12')).toEqual(['10:18 "vertex_mm" does not stand on surgery rows']);
    expect(constants('vertx_mm: 12')).toEqual(['10:18 "vertx_mm" is not one of our fields']);
    expect(constants('complication: none')).toEqual(['10:18 "complication" cannot be the same for every row']);
    expect(constants('patient: P1')).toContain('10:18 "patient" cannot be the same for every row');
    expect(constants('surgery_date: 2025-01-01')).toContain('10:18 "surgery_date" cannot be the same for every row');
  });

  it('do not stand beside a column of the same field', () => {
    expect(toldOf(`${operations}      surgeon: Op\n    constants: { surgeon: S1 }\n`)).toEqual([
      '11:18 "surgeon" stands here twice',
    ]);
  });

  it('give blanks a meaning only where a column is mapped and a blank can mean something', () => {
    const blanks = (text: string) =>
      toldOf(`${operations}      complication: Compl\n      lens_cylinder: Cyl\n    blank_means: { ${text} }\n`);
    expect(blanks('complication: none, lens_cylinder: 0')).toEqual([]);
    expect(blanks('lens_cylinder: nil')).toEqual(['12:35 ‘nil’ is no value of lens_cylinder']);
    expect(blanks('lens_cylinder: missing')).toHaveLength(1);
    const lane =
      '  - file: lane.csv\n    holds: exam\n    columns: { patient: ID, eye: Eye, days: D, sphere: S, cylinder: C }\n';
    expect(toldOf(`${operations}${lane}    blank_means: { sphere: 0, cylinder: missing }\n`)).toEqual([]);
    expect(blanks('surgeon: S1')).toEqual(['12:20 "surgeon" is not mapped here']);
    expect(blanks('surgery_date: today')).toEqual(['12:20 a blank "surgery_date" can only be missing']);
  });
});

describe('covariates', () => {
  const covariates = (text: string) => toldOf(`${operations}    covariates: { ${text} }\n`);

  it('have names of their own', () => {
    expect(covariates('dense: Dense, Händigkeit 2: H')).toEqual([]);
    expect(covariates('sphere: Sph')).toEqual(['10:19 "sphere" is a name of ours and cannot name a covariate']);
    expect(covariates('year: Y')).toEqual(['10:19 "year" is a name of ours and cannot name a covariate']);
    expect(covariates('a=b: Y')).toEqual(['10:19 "a=b" cannot name a covariate']);
  });

  it('belong to eyes', () => {
    const exam = `${operations}${examinations}      lane_m: Lane\n    covariates: { dense: Dense }\n`;
    expect(toldOf(exam)).toEqual(['17:5 covariates belong to eyes']);
    const shared = wide('      - { holds: exam, visit: before, columns: { lane_m: L } }\n').concat(
      '    covariates: { dense: D }\n',
    );
    expect(toldOf(shared)).toEqual(['8:5 covariates belong to eyes']);
  });
});

describe('values and words', () => {
  it('give each spelling one meaning', () => {
    expect(toldOf(`${operations}values: { technique: { manual: [M, man.], laser: [L, m] } }\n`)).toEqual([
      '10:54 ‘m’ is a spelling of ‘manual’ already',
    ]);
  });

  it('are the values of fields that have few', () => {
    expect(toldOf(`${operations}values: { sex: { F: [w], male: [m] } }\n`)).toEqual([
      '10:26 ‘male’ is no value of sex',
    ]);
    expect(toldOf(`${operations}values: { axial_length: { long: [L] } }\n`)).toEqual([
      '10:11 ‘axial_length’ is neither a field that fits here nor a covariate',
    ]);
    expect(toldOf(`${operations}    covariates: { dense: D }\nvalues: { dense: { yes: [J] } }\n`)).toEqual([]);
  });
});

describe('paths', () => {
  it('stay in the folder of audit.yaml, unless they are allowed out', () => {
    const file = (path: string) => operations.replace('a.csv', path);
    for (const path of ['../a.csv', '/data/a.csv', 'c:/a.csv', 'exports/../../a.csv']) {
      expect(toldOf(file(path))).toEqual([`4:11 ‘${path}’ leaves the folder of audit.yaml`]);
      expect(toldOf(`${file(path)}allow_outside: yes\n`)).toEqual([]);
    }
    expect(toldOf(file('exports/../a.csv'))).toEqual([]);
    expect(toldOf(file('exports/*.csv'))).toEqual([]);
    expect(toldOf(`${operations}outputs: { folder: ../out }\n`)).toEqual([
      '10:20 ‘../out’ leaves the folder of audit.yaml',
    ]);
  });

  it('are written with /', () => {
    expect(toldOf(operations.replace('a.csv', 'exports\\a.csv'))).toEqual(['4:11 paths are written with /']);
    expect(adviceOf(operations.replace('a.csv', 'exports\\a.csv'))).toEqual(['Write     exports/a.csv']);
  });

  it('of prefer and of reviewed columns are those of sources', () => {
    expect(toldOf(`${operations}prefer: [b.csv]\n`)).toEqual(['10:10 ‘b.csv’ is not a file of sources']);
    expect(toldOf(`${operations}identifiers_reviewed: [{ file: b.csv, column: Name, reason: lens name }]\n`)).toEqual([
      '10:32 ‘b.csv’ is not a file of sources',
    ]);
    expect(toldOf(`${operations}prefer: [a.csv]\n`)).toEqual([]);
    expect(toldOf(`${operations.replace('a.csv', 'a*.csv')}prefer: [a1.csv]\n`)).toEqual([]);
  });
});
