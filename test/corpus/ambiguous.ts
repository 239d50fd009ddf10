import { type Peculiar, usualBut, withCells, withCommas, written } from './corpus.js';

/** Exports that could be read in two ways: each stops with the line that settles it. */
export const ambiguousCases: readonly Peculiar[] = [
  {
    name: 'decimal-open',
    peculiarity: 'every number may have three decimals or a thousands mark',
    bytes: 'ID;Eye;Date;Sph\nA1;R;2025-02-20;1,250\nA1;L;2025-02-21;2,125\n',
    columns: { cylinder: undefined, axis: undefined, cdva: undefined },
    reads: 'nothing',
    finds: [{ rule: 'decimal-open', row: 2, column: 'Sph', written: '1,250' }],
    lines: ['reading: { decimal: point }', 'reading: { decimal: comma }'],
  },
  {
    name: 'delimiter-open',
    peculiarity: 'commas and semicolons fit equally well',
    bytes: 'ID;x,Eye\nA1;x,R\n',
    reads: 'nothing',
    finds: [{ rule: 'delimiter-open' }],
    lines: ['comma', 'semicolon', 'tab', 'pipe'].map((name) => `reading: { delimiter: ${name} }`),
  },
  {
    name: 'header-twice',
    peculiarity: 'two columns of one header',
    bytes: written().replace('Cyl,Axis', 'Axis,Axis'),
    columns: { cylinder: undefined },
    reads: 'nothing',
    finds: [{ rule: 'column-twice', column: 'Axis', field: 'axis', detail: 2 }],
    lines: ['axis: { column: Axis, occurrence: 1 }', 'axis: { column: Axis, occurrence: 2 }'],
  },
  {
    name: 'header-misspelt',
    peculiarity: 'a header that audit.yaml spells otherwise',
    bytes: written().replace('Sph', 'Spj'),
    reads: 'nothing',
    finds: [{ rule: 'column-missing', column: 'Sph', field: 'sphere' }],
    lines: ['sphere: Spj'],
  },
  {
    name: 'eyes-in-spanish',
    peculiarity: 'D and I for the eyes, which nobody has declared',
    bytes: `${written()}${written()
      .replace(/^.*\n/, '')
      .replace(/2025-02/g, '2025-03')}`
      .replace(/,R,/g, ',D,')
      .replace(/,L,/g, ',I,'),
    reads: 'nothing',
    finds: [{ rule: 'eye-words-open', row: 2, column: 'Eye', detail: 8, written: 'D’ and ‘I' }],
    lines: [
      'eye: { column: Eye, words: { right: [D], left: [I] } }',
      'eye: { column: Eye, words: { right: [I], left: [D] } }',
    ],
  },
  {
    name: 'eyes-one-side-strange',
    peculiarity: 'L is known and D is not: one side alone would be left out',
    bytes: `${written()}${written()
      .replace(/^.*\n/, '')
      .replace(/2025-02/g, '2025-03')}`.replace(/,R,/g, ',D,'),
    reads: 'nothing',
    finds: [{ rule: 'eye-words-open', row: 2, column: 'Eye', detail: 4, written: 'D' }],
    lines: ['eye: { column: Eye, words: { right: [D] } }', 'eye: { column: Eye, words: { left: [D] } }'],
  },
  {
    name: 'eyes-declared',
    peculiarity: 'the same, declared',
    bytes: written().replace(/,R,/g, ',D,').replace(/,L,/g, ',I,'),
    columns: { eye: { column: 'Eye', words: { right: ['D'], left: ['I'] } } },
  },
  {
    name: 'eye-slip',
    peculiarity: 'one eye mistyped among others is a slip',
    bytes: withCells({ '2 Eye': 'X' }),
    reads: usualBut({ 'A1 right': undefined }),
    finds: [{ rule: 'eye-missing', severity: 'set aside', row: 2, written: 'X' }],
  },
  {
    name: 'eyes-both',
    peculiarity: 'a row for both eyes, which is refused by itself',
    bytes: withCells({ '2 Eye': 'OU' }),
    reads: usualBut({ 'A1 right': undefined }),
    finds: [{ rule: 'eye-both', severity: 'set aside', row: 2, written: 'OU' }],
  },
  {
    name: 'unit-in-header',
    peculiarity: 'a header that says millimetres over a column read in dioptres',
    bytes: 'ID,Eye,Date,K1 (mm),K2 (mm)\nA1,R,2025-02-20,8.00,7.50\n',
    columns: {
      sphere: undefined,
      cylinder: undefined,
      axis: undefined,
      cdva: undefined,
      k1: 'K1 (mm)',
      k2: { column: 'K2 (mm)', unit: 'mm' },
    },
    reads: 'nothing',
    finds: [{ rule: 'unit-differs', column: 'K1 (mm)', field: 'k1', written: 'mm' }],
    lines: ['k1: { column: "K1 (mm)", unit: mm }'],
  },
  {
    name: 'unit-below-header',
    peculiarity: 'a row of units that says centimetres over an axial length',
    bytes: 'Code;Side;AL\n;;cm\nA1;R;2.35\n',
    source: { holds: 'eye' },
    columns: {
      patient: 'Code',
      eye: 'Side',
      exam_date: undefined,
      sphere: undefined,
      cylinder: undefined,
      axis: undefined,
      cdva: undefined,
      axial_length: 'AL',
    },
    reads: 'nothing',
    finds: [
      { rule: 'rows-passed-over', severity: 'note', detail: 1 },
      { rule: 'unit-differs', column: 'AL', field: 'axial_length', written: 'cm' },
    ],
    lines: [],
  },
  {
    name: 'unit-turned-off',
    peculiarity: 'a misleading header, declared with a reason',
    bytes: written(';').replace('Axis', 'Axis (clock hours)'),
    columns: { axis: 'Axis (clock hours)' },
    plan: { quality: { limits: {}, off: [{ rule: 'unit-differs', reason: 'degrees since 2020' }], answers: [] } },
  },
  {
    name: 'name-column',
    peculiarity: 'a column of names, which stops and is not told',
    bytes: withCommas()
      .replace('ID', 'ID;Surname')
      .replace(/\nA/g, '\nA;A')
      .replace(/\nA;A(\d)/g, '\nA$1;Muster'),
    reads: 'nothing',
    finds: [{ rule: 'identifier-present', column: 'Surname', written: undefined }],
    lines: ['identifiers_reviewed:', '  - { file: lane.csv, column: Surname, reason: … }'],
  },
];
