import { type Peculiar, usualBut, withCells, written } from './corpus.js';

/** What spreadsheets leave in an export, or make of it. */
export const spreadsheetCases: readonly Peculiar[] = [
  {
    name: 'fraction-became-date',
    peculiarity: '6/9 became the sixth of September',
    bytes: withCells({ '2 VA': '06-Sep' }),
    reads: usualBut({ 'A1 right': 'day 41: -1.75 +0.5 × 180' }),
    finds: [{ rule: 'spreadsheet-leftover', severity: 'set aside', row: 2, written: '06-Sep', detail: 0 }],
  },
  {
    name: 'fraction-became-date-german',
    peculiarity: '6/12 became a day of December in a German spreadsheet',
    bytes: withCells({ '4 VA': '06. Dez' }),
    reads: usualBut({ 'A2 right': 'day 45: -1.25 +1 × 85' }),
    finds: [{ rule: 'spreadsheet-leftover', severity: 'set aside', row: 4, written: '06. Dez', detail: 0 }],
  },
  {
    name: 'decimal-became-date',
    peculiarity: '0.50 stayed, 1.5 became the first of May',
    bytes: withCells({ '3 Sph': '01. Mai' }),
    reads: usualBut({ 'A1 left': 'day 42: NaN +0.75 × 95, corrected 0' }),
    finds: [{ rule: 'spreadsheet-leftover', severity: 'set aside', row: 3, written: '01. Mai', detail: 0 }],
  },
  {
    name: 'decimal-became-whole-date',
    peculiarity: 'a number became a whole date, which is not told',
    bytes: withCells({ '3 Sph': '2025-05-01' }),
    reads: usualBut({ 'A1 left': 'day 42: NaN +0.75 × 95, corrected 0' }),
    finds: [{ rule: 'spreadsheet-leftover', severity: 'set aside', row: 3, written: undefined, detail: 0 }],
  },
  {
    name: 'codes-became-exponents',
    peculiarity: 'long codes of patients became numbers with an exponent: several may have become one',
    bytes: withCells({ '2 ID': '1.2E+11', '3 ID': '1.2E+11' }),
    reads: usualBut({ 'A1 right': undefined, 'A1 left': undefined }),
    finds: [2, 3].map(
      (row) => ({ rule: 'spreadsheet-leftover', severity: 'set aside', row, column: 'ID', detail: 1 }) as const,
    ),
  },
  {
    name: 'number-with-exponent',
    peculiarity: 'a number with an exponent, which is refused',
    bytes: withCells({ '2 Sph': '-1.25E+00' }),
    reads: usualBut({ 'A1 right': 'day 41: NaN +0.5 × 180, corrected 0.1761' }),
    finds: [{ rule: 'spreadsheet-leftover', severity: 'set aside', row: 2, detail: 1 }],
  },
  {
    name: 'formula-errors',
    peculiarity: 'formulas that gave no value, in three languages',
    bytes: withCells({ '2 Sph': '#DIV/0!', '3 Axis': '#WERT!', '4 VA': '#REF!', '5 VA': '#N/A' }),
    reads: {
      'A1 right': 'day 41: NaN +0.5 × 180, corrected 0.1761',
      'A1 left': 'day 42: -0.25 +0.75 × NaN, corrected 0',
      'A2 right': 'day 45: -1.25 +1 × 85',
      'A3 left': 'day 46: -0.25 +0.25 × 10',
    },
    finds: [
      { rule: 'spreadsheet-leftover', severity: 'set aside', row: 2, detail: 2 },
      { rule: 'spreadsheet-leftover', severity: 'set aside', row: 3, detail: 2 },
      { rule: 'spreadsheet-leftover', severity: 'set aside', row: 4, detail: 2 },
    ],
  },
  {
    name: 'formula-error-in-code',
    peculiarity: 'a formula that gave no code for the patient',
    bytes: withCells({ '4 ID': '#VALUE!' }),
    reads: usualBut({ 'A2 right': undefined }),
    finds: [{ rule: 'spreadsheet-leftover', severity: 'set aside', row: 4, column: 'ID', detail: 2 }],
  },
  {
    name: 'narrow-column',
    peculiarity: 'a column too narrow for its dates',
    bytes: withCells({ '4 Date': '########' }),
    reads: usualBut({ 'A2 right': undefined }),
    finds: [{ rule: 'spreadsheet-leftover', severity: 'set aside', row: 4, column: 'Date', detail: 3 }],
  },
  {
    name: 'text-formula',
    peculiarity: 'cells wrapped so that spreadsheets take them for text',
    bytes: written(',', (cell, row) => (row < 0 ? cell : `="${cell}"`)),
  },
  {
    name: 'text-apostrophe',
    peculiarity: 'an apostrophe before numbers that were typed as text',
    bytes: withCells({ '2 ID': "'A1", '2 Sph': "'-1.25", '3 VA': "'6/6" }),
  },
  {
    name: 'zero-width',
    peculiarity: 'marks that do not show, copied with the codes',
    bytes: withCells({ '2 ID': '\u200bA1', '3 ID': 'A1\ufeff' }),
  },
];
