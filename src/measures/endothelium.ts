import type { Measure } from '../records/measure.js';

/** Days of a mean month of the Gregorian calendar. */
const daysPerMonth = 30.436875;

const counted = {
  family: 'endothelium',
  kind: 'continuous',
  groupings: 'cohorts',
  whereRecorded: true,
} as const;

/** Endothelial cells before and after surgery, of eyes counted twice by one device. */
export const endotheliumMeasures: readonly Measure[] = [
  {
    ...counted,
    name: 'endothelium_before',
    role: 'baseline',
    unit: 'cells/mm²',
    inputs: ['ecd@before', 'ecd@outcome'],
    formula: 'last count before surgery, of eyes counted after it too',
    source: 'the export',
    of: (before, after) => (Number.isNaN(after as number) ? Number.NaN : (before as number)),
  },
  {
    ...counted,
    name: 'endothelium_after',
    unit: 'cells/mm²',
    better: 'higher',
    secondary: true,
    inputs: ['ecd@outcome', 'ecd@before'],
    formula: 'count at the outcome visit, of eyes counted before it too',
    source: 'the export',
    of: (after, before) => (Number.isNaN(before as number) ? Number.NaN : (after as number)),
  },
  {
    ...counted,
    name: 'endothelial_loss',
    unit: '%',
    better: 'lower',
    inputs: ['ecd@before', 'ecd@outcome'],
    formula: '100 (before − after) / before; negative is more cells after than before',
    source: 'definition; typical loss 100 (1 − exp(mean ln(after / before)))',
    geometric: 'loss',
    of: (before, after) => (100 * ((before as number) - (after as number))) / (before as number),
  },
  {
    ...counted,
    name: 'follow_up_months:endothelium',
    role: 'follow-up',
    unit: 'months',
    inputs: ['endothelia.day@outcome'],
    formula: 'days from surgery to the count / 30.44',
    source: 'definition',
    of: (days) => (days as number) / daysPerMonth,
  },
];
