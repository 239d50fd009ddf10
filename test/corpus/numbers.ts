import { type Peculiar, usualBut, withCells, withCommas, written } from './corpus.js';

/** Numbers as people and programs write them. */
export const numberCases: readonly Peculiar[] = [
  {
    name: 'true-minus',
    peculiarity: 'the minus sign of typographers',
    bytes: written(',', (cell, row, column) => (row >= 0 && column > 2 ? cell.replace('-', '\u2212') : cell)),
  },
  {
    name: 'blank-behind-sign',
    peculiarity: 'a blank between sign and number, no zero before the point',
    bytes: withCells({ '2 Sph': '- 1.25', '3 Sph': '+.50', '3 Cyl': '-.75' }),
  },
  {
    name: 'units-in-cells',
    peculiarity: 'units behind the numbers',
    bytes: withCells({ '2 Sph': '-1.25 D', '3 Cyl': '-0.75dpt', '4 Axis': '175°', '5 Axis': '100 deg' }),
  },
  {
    name: 'hard-blanks',
    peculiarity: 'non-breaking blanks around numbers and codes',
    bytes: withCells({ '2 ID': 'A1\u00a0', '2 Sph': '\u00a0-1.25\u202fD', '4 Eye': 'R\u00a0' }),
  },
  {
    name: 'axis-marks',
    peculiarity: 'axes with their mark, and with leading zeros',
    bytes: withCells({ '2 Axis': 'x 90', '3 Axis': '005', '4 Axis': '@175', '5 Axis': 'ax. 100°' }),
  },
  {
    name: 'plano',
    peculiarity: 'words for no power',
    bytes: withCells({ '5 Sph': 'plano', '2 Cyl': 'DS', '2 Axis': '', '3 Cyl': 'sph', '3 Axis': '-' }),
    reads: usualBut({
      'A1 right': 'day 41: -1.25 +0 × NaN, corrected 0.1761',
      'A1 left': 'day 42: 0.5 +0 × NaN, corrected 0',
    }),
  },
  {
    name: 'axis-zero',
    peculiarity: 'axis 0, which is 180',
    bytes: withCells({ '2 Axis': '0' }),
    reads: usualBut({ 'A1 right': 'day 41: -1.75 +0.5 × 90, corrected 0.1761' }),
  },
  {
    name: 'missing-words',
    peculiarity: 'words for no value, built in and declared',
    bytes: withCells({ '2 VA': 'n/a', '3 VA': '#N/A', '4 VA': 'not done', '5 VA': '--' }),
    source: { reading: { missing: ['not done'] } },
    reads: {
      'A1 right': 'day 41: -1.75 +0.5 × 180',
      'A1 left': 'day 42: -0.25 +0.75 × 95',
      'A2 right': 'day 45: -1.25 +1 × 85',
      'A3 left': 'day 46: -0.25 +0.25 × 10',
    },
  },
  {
    name: 'trailing-sign',
    peculiarity: 'a sign behind the number, which is refused',
    bytes: withCells({ '2 Sph': '1.25-' }),
    reads: usualBut({ 'A1 right': 'day 41: NaN +0.5 × 180, corrected 0.1761' }),
    finds: [{ rule: 'number-unreadable', severity: 'set aside', row: 2, written: '1.25-' }],
  },
  {
    name: 'two-numbers',
    peculiarity: 'two numbers in one cell, which are refused',
    bytes: withCells({ '2 Sph': '-1.25 (-1.00)' }),
    reads: usualBut({ 'A1 right': 'day 41: NaN +0.5 × 180, corrected 0.1761' }),
    finds: [{ rule: 'number-unreadable', severity: 'set aside', row: 2 }],
  },
  {
    name: 'question-mark',
    peculiarity: 'a doubt typed behind a number',
    bytes: withCells({ '4 Cyl': '-1.00?' }),
    reads: usualBut({ 'A2 right': 'day 45: corrected 0.301' }),
    finds: [{ rule: 'number-unreadable', severity: 'set aside', row: 4 }],
  },
  {
    name: 'comma-and-point-meet',
    peculiarity: 'one number of an export with decimal points has a comma',
    bytes: withCells({ '2 Sph': '"-1,25"' }),
    reads: 'nothing',
    finds: [{ rule: 'decimal-mixed', row: 3, column: 'Sph', written: '+0.50’ and ‘-1,25' }],
    lines: ['reading: { decimal: point }', 'reading: { decimal: comma }'],
  },
  {
    name: 'comma-and-point-settled',
    peculiarity: 'the same with the line that settles it: the other cell is set aside',
    bytes: withCells({ '2 Sph': '"-1,25"' }),
    source: { reading: { decimal: 'point' } },
    reads: usualBut({ 'A1 right': 'day 41: NaN +0.5 × 180, corrected 0.1761' }),
    finds: [{ rule: 'number-unreadable', severity: 'set aside', row: 2, written: '-1,25' }],
  },
  {
    name: 'thousands',
    peculiarity: 'cell counts with thousands marks beside decimals',
    bytes: 'ID;Eye;Date;Sph;Cyl;Axis;VA;Cells\nA1;R;2025-02-20;-1.25;-0.50;90;6/9;2,350.5\n',
    columns: { ecd: 'Cells' },
    reads: 'nothing',
    finds: [{ rule: 'thousands-marks', row: 2, column: 'Cells', written: '2,350.5' }],
    lines: ['reading: { decimal: point }', 'reading: { decimal: comma }'],
  },
  {
    name: 'thousands-blank',
    peculiarity: 'cell counts whose thousands are set off by a blank',
    bytes:
      'ID;Eye;Date;Sph;Cyl;Axis;VA;Cells\nA1;R;2025-02-20;-1.25;-0.50;90;6/9;2 350\nA1;L;2025-02-21;+0.50;-0.75;5;6/6;2410\n',
    columns: { ecd: 'Cells' },
    reads: {
      'A1 right': 'day 41: -1.75 +0.5 × 180, corrected 0.1761',
      'A1 left': 'day 42: -0.25 +0.75 × 95, corrected 0',
    },
    finds: [{ rule: 'spreadsheet-leftover', severity: 'set aside', row: 2, written: '2 350', detail: 4 }],
  },
  {
    name: 'decimal-declared-against',
    peculiarity: 'a decimal comma declared for an export with points: most of a column cannot be read',
    bytes: written(';'),
    source: { reading: { decimal: 'comma' } },
    reads: {
      'A1 right': 'day 41: corrected 0.1761',
      'A1 left': 'day 42: corrected 0',
      'A2 right': 'day 45: corrected 0.301',
    },
    finds: [
      { rule: 'column-unreadable', row: 2, column: 'Sph', detail: 4 },
      { rule: 'column-unreadable', row: 2, column: 'Cyl', detail: 4 },
      { rule: 'acuity-unreadable', severity: 'set aside', row: 5 },
    ],
    lines: ['reading: { decimal: point }', 'reading: { decimal: point }'],
  },
  {
    name: 'signs-by-hand',
    peculiarity: 'a decimal comma, a plus sign and a degree sign in one file',
    bytes: withCommas(';', { '3 Sph': '+ 0,50', '4 Axis': '175 °' }),
  },
  {
    name: 'radii',
    peculiarity: 'corneal radii in millimetres, declared',
    // 337.5 / 8.00 = 42.1875, 337.5 / 7.50 = 45.
    bytes: 'ID,Eye,Date,R1 (mm),A1,R2 (mm),A2\nA1,R,2025-02-20,8.00,10,7.50,100\n',
    columns: {
      sphere: undefined,
      cylinder: undefined,
      axis: undefined,
      cdva: undefined,
      k1: { column: 'R1 (mm)', unit: 'mm' },
      k1_axis: 'A1',
      k2: { column: 'R2 (mm)', unit: 'mm' },
      k2_axis: 'A2',
    },
    reads: { 'A1 right': 'day 41: K 42.1875 / 45 @ 100' },
  },
];
