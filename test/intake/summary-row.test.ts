import { expect, it } from 'vitest';
import { isSummaryLabel } from '../../src/intake/summary-row.js';

// Labels met below tables: common practice, no source.
it.each([
  'Total',
  'TOTAL:',
  'Grand total',
  'Subtotal',
  'Mean',
  'average',
  'SD',
  'S.D.',
  'Std. Dev.',
  'n',
  'n = 120',
  'N=4',
  'Total: 4 eyes',
  'Count of eyes',
  'Min',
  'Summe',
  'Mittelwert',
  'Anzahl: 34 Augen',
  'Gesamt',
  'moyenne',
  'Écart-type',
  'Nombre',
  ' Total ',
])('takes %j for the head of a summary line', (label) => {
  expect(isSummaryLabel(label)).toBe(true);
});

it.each(['', 'A1', 'P0001', 'Nora', 'Maxi', 'Meaney', 'Totals of what', 'n12x', '12', 'Sum-1', 'Mean of the means of'])(
  'takes %j for a code',
  (label) => {
    expect(isSummaryLabel(label)).toBe(false);
  },
);
