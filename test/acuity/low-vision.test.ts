import { describe, expect, it } from 'vitest';
import {
  defaultLowVision,
  entersMeans,
  type LowVision,
  lowVisionNames,
  lowVisionOf,
} from '../../src/acuity/low-vision.js';

// Abbreviations and translations in general use: common practice, no source.
const spellings: Readonly<Record<LowVision, readonly string[]>> = {
  count_fingers: [
    'CF',
    'C.F.',
    'cf 1m',
    'CF @ 2 ft',
    'CF at 50cm',
    'Counting fingers',
    'FZ',
    'Fingerzählen',
    'Fz in 1 m',
    'CLD',
    'compte les doigts à 1 m',
  ],
  hand_movements: [
    'HM',
    'hm 30 cm',
    'Hand movements',
    'hand motion',
    'HBW',
    'Handbewegungen',
    'VBM',
    'Voit bouger la main',
  ],
  light_perception: ['LP', 'PL', 'P.L.', 'PL+', 'perception of light', 'Lichtschein', 'LS', 'perception lumineuse'],
  no_light_perception: [
    'NLP',
    'NPL',
    'N.P.L.',
    'PL−',
    'no light perception',
    'Nulla Lux',
    'keine Lichtwahrnehmung',
    'PPL',
  ],
};

describe.each(lowVisionNames)('%s', (category) => {
  it.each(spellings[category])('is written %s', (word) => {
    expect(lowVisionOf(word)).toBe(category);
  });
});

it.each(['', '6/60', '0.05', '1', 'normal', 'NL', 'cfm', 'LP with projection', 'PCR'])('%s names none', (word) => {
  expect(lowVisionOf(word)).toBeUndefined();
});

// Table of imputations by Bach, read in a secondary source.
it('has the default values 1.9, 2.3, 2.7 and 3.0, in the order of the ranks', () => {
  expect(lowVisionNames.map((name) => defaultLowVision[name])).toEqual([1.9, 2.3, 2.7, 3]);
});

it('lets counting fingers and hand movements into means, and perception of light and its absence never', () => {
  expect(lowVisionNames.map(entersMeans)).toEqual([true, true, false, false]);
});
