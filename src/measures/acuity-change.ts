import type { Measure } from '../records/measure.js';

/** Change and indices of acuity leave out every eye with a low-vision word: its logMAR is a convention. */
const measured = (value: number, ...words: number[]): number =>
  words.every((word) => word === 0) ? value : Number.NaN;

const words = { before: 'cdva.word@before', after: 'cdva.word@outcome', uncorrected: 'udva.word@outcome' } as const;

/** A ratio of two decimal acuities of one eye, 1 where they are equal. */
const ratio = {
  kind: 'continuous',
  better: 'higher',
  unit: '',
  groupings: 'cohorts',
  geometric: true,
  secondary: true,
} as const;
const classic = 'Koch, Kohnen, Obstbaum, Rosen 1998, J Cataract Refract Surg 24:285-287 (pages from memory)';
const raised = 'raised by the cataract, which lowers the acuity before surgery';

/** Whether a low-vision word stands before surgery, after it, or both. */
export const lowVisionChanges = ['measured_both', 'from_low_vision', 'to_low_vision', 'low_vision_both'] as const;

/** What was gained or lost: corrected acuity in lines, and uncorrected against corrected as ratios. */
export const acuityChangeMeasures: readonly Measure[] = [
  {
    name: 'cdva_change',
    family: 'corrected',
    kind: 'continuous',
    better: 'higher',
    unit: 'logMAR',
    inputs: ['cdva_before', 'cdva', words.before, words.after],
    formula: 'corrected before − corrected after; positive is a gain; low-vision words left out',
    source: 'definition; lines by fixed edges: 2 lines from 0.19, 3 from 0.29',
    groupings: 'cohorts',
    inLines: true,
    of: (before, after, ...said) => measured((before as number) - (after as number), ...said),
  },
  {
    name: 'cdva_low_vision_change',
    family: 'corrected',
    kind: 'category',
    unit: '',
    inputs: ['cdva_before', 'cdva', words.before, words.after],
    formula: 'low-vision word before, after, both or neither',
    source: 'definition',
    groupings: 'cohorts',
    categories: lowVisionChanges,
    of: (before, after, saidBefore, saidAfter) =>
      Number.isNaN(before as number) || Number.isNaN(after as number)
        ? Number.NaN
        : (saidBefore as number) + 2 * (saidAfter as number),
  },
  {
    ...ratio,
    name: 'efficacy_ratio',
    family: 'uncorrected',
    inputs: ['udva', 'cdva', words.uncorrected, words.after],
    formula: 'uncorrected after / corrected after, as decimals: 10^(logMAR corrected − logMAR uncorrected)',
    source: 'definition; the corrected acuity after surgery is what the eye can see',
    ratioOf: ['udva', 'cdva'],
    of: (uncorrected, corrected, ...said) => measured(10 ** ((corrected as number) - (uncorrected as number)), ...said),
  },
  {
    ...ratio,
    name: 'efficacy_index',
    family: 'uncorrected',
    inputs: ['udva', 'cdva_before', words.uncorrected, words.before],
    formula: `uncorrected after / corrected before, as decimals; ${raised}`,
    source: classic,
    ratioOf: ['udva', 'cdva_before'],
    of: (uncorrected, before, ...said) => measured(10 ** ((before as number) - (uncorrected as number)), ...said),
  },
  {
    ...ratio,
    name: 'safety_index',
    family: 'corrected',
    inputs: ['cdva', 'cdva_before', words.after, words.before],
    formula: `corrected after / corrected before, as decimals; ${raised}`,
    source: classic,
    ratioOf: ['cdva', 'cdva_before'],
    of: (after, before, ...said) => measured(10 ** ((before as number) - (after as number)), ...said),
  },
];
