import { type Peculiar, usualBut, withCells, written } from './corpus.js';

const acuities = (...cells: readonly string[]): string =>
  withCells(Object.fromEntries(cells.map((cell, i) => [`${i + 2} VA`, cell])));

/** Acuities in every notation. logMAR by hand: the logarithm of the denominator over the numerator. */
export const acuityCases: readonly Peculiar[] = [
  { name: 'acuity-feet', peculiarity: 'feet instead of metres', bytes: acuities('20/30', '20/20', '20/40', '20/25') },
  {
    name: 'acuity-mixed',
    peculiarity: 'feet and metres in one column, which explain themselves',
    bytes: acuities('20/30', '6/6', '20/40', '4/5'),
  },
  {
    name: 'acuity-decimal',
    peculiarity: 'decimal acuities, declared',
    // −log10(0.5) = 0.3010, −log10(0.8) = 0.0969.
    bytes: acuities('0.5', '1.0', '0.5', '0.8'),
    columns: { cdva: { column: 'VA', numbers: 'decimal' } },
    reads: usualBut({ 'A1 right': 'day 41: -1.75 +0.5 × 180, corrected 0.301' }),
  },
  {
    name: 'acuity-logmar',
    peculiarity: 'logMAR with its unit in the cells',
    bytes: acuities('0.18 logMAR', '0.00 logMAR', '0.30 logMAR', '0.10 logmar'),
    reads: usualBut({
      'A1 right': 'day 41: -1.75 +0.5 × 180, corrected 0.18',
      'A2 right': 'day 45: -1.25 +1 × 85, corrected 0.3',
      'A3 left': 'day 46: -0.25 +0.25 × 10, corrected 0.1',
    }),
  },
  {
    name: 'acuity-letters',
    peculiarity: 'letters read, declared: 85 letters are logMAR 0, each letter is 0.02',
    bytes: acuities('75', '85', '70', '80'),
    columns: { cdva: { column: 'VA', numbers: 'letters' } },
    reads: {
      'A1 right': 'day 41: -1.75 +0.5 × 180, corrected 0.2',
      'A1 left': 'day 42: -0.25 +0.75 × 95, corrected 0',
      'A2 right': 'day 45: -1.25 +1 × 85, corrected 0.3',
      'A3 left': 'day 46: -0.25 +0.25 × 10, corrected 0.1',
    },
  },
  {
    name: 'acuity-suffixes',
    peculiarity: 'letters behind the line, not declared: the line is used',
    bytes: acuities('6/9-2', '6/6p', '6/12+1', '6/7.5'),
    finds: [{ rule: 'acuity-suffix', severity: 'note', detail: 3, column: 'VA', written: '6/9-2' }],
  },
  {
    name: 'acuity-suffixes-declared',
    peculiarity: 'letters behind the line, five a line declared',
    // 0.1761 + 2 · 0.02, 0 − 0.02, 0.3010 − 0.02.
    bytes: acuities('6/9-2', '6/6 +1', '6/12(+1)', '6/7.5'),
    lettersPerLine: 5,
    reads: usualBut({
      'A1 right': 'day 41: -1.75 +0.5 × 180, corrected 0.2161',
      'A1 left': 'day 42: -0.25 +0.75 × 95, corrected -0.02',
      'A2 right': 'day 45: -1.25 +1 × 85, corrected 0.281',
    }),
  },
  {
    name: 'acuity-low-vision',
    peculiarity: 'words for low vision in three languages',
    bytes: acuities('CF 1m', 'Handbewegungen', 'PL', 'N.P.L.'),
    reads: {
      'A1 right': 'day 41: -1.75 +0.5 × 180, corrected 1.9 (word 1)',
      'A1 left': 'day 42: -0.25 +0.75 × 95, corrected 2.3 (word 2)',
      'A2 right': 'day 45: -1.25 +1 × 85, corrected 2.7 (word 3)',
      'A3 left': 'day 46: -0.25 +0.25 × 10, corrected 3 (word 4)',
    },
  },
  {
    name: 'acuity-zero',
    peculiarity: 'a decimal acuity of zero, which is no measurement',
    bytes: acuities('0', '1.0', '0.5', '0.8'),
    columns: { cdva: { column: 'VA', numbers: 'decimal' } },
    reads: usualBut({ 'A1 right': 'day 41: -1.75 +0.5 × 180' }),
    finds: [{ rule: 'acuity-unreadable', severity: 'set aside', row: 2, written: '0' }],
  },
  {
    name: 'acuity-scale-open',
    peculiarity: 'bare numbers that may be decimal or logMAR',
    bytes: acuities('0.5', '1.0', '0.5', '0.8'),
    reads: 'nothing',
    finds: [{ rule: 'acuity-scale-open', row: 2, column: 'VA', detail: 3 }],
    lines: ['cdva: { column: VA, numbers: decimal }', 'cdva: { column: VA, numbers: logmar }'],
  },
  {
    name: 'acuity-header-says-logmar',
    peculiarity: 'a header that says logMAR over a column declared as decimal',
    bytes: written()
      .replace(',VA', ',VA (logMAR)')
      .replace(/6\/[\d.]+/g, '0.2'),
    columns: { cdva: { column: 'VA (logMAR)', numbers: 'decimal' } },
    reads: 'nothing',
    finds: [{ rule: 'unit-differs', column: 'VA (logMAR)', written: 'logmar' }],
    lines: ['cdva: { column: "VA (logMAR)", numbers: logmar }'],
  },
];
