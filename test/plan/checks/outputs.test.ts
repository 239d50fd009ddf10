import { describe, expect, it } from 'vitest';
import { operations, planOf, toldOf } from '../audit-text.js';

const after = (text: string) => toldOf(`${operations}outputs: ${text}\n`);

describe('profiles of artwork', () => {
  it('are those that are built in, and those declared', () => {
    expect(after('{ artwork: web }')).toEqual([]);
    expect(after('{ artwork: jornal }')).toEqual(['10:21 ‘jornal’ is not a profile of artwork']);
    expect(after('{ artwork: mine, profiles: { mine: { width_mm: 90 } } }')).toEqual([]);
  });

  it('have the dots and the letters of journals where nothing else is said', () => {
    const { profiles } = planOf(`${operations}outputs: { profiles: { mine: { width_mm: 90 } } }\n`).outputs;
    expect(profiles.mine).toEqual({ width_mm: 90, type_pt: 7.5, dpi: 300, tiff_dpi: 1000, colours: 'colour' });
  });
});

describe('the room for letters', () => {
  // 29 times 14 pt are 406 pt, or 143 mm; of 720 pt two panels with 17.01 pt between have 351.5 pt each.
  it('is that of a single column of a journal, or about', () => {
    expect(after('{ profiles: { mine: { width_mm: 100, type_pt: 14 } } }')).toEqual([
      '10:24 charts with letters of 14 pt cannot be read in this width',
    ]);
    const panel = '{ name: a, figures: [prediction-error, accuracy-shares], artwork: slide }';
    expect(after(`{ panels: [${panel}] }`)).toEqual([
      '10:21 charts with letters of 14 pt cannot be read in this width',
    ]);
    expect(after(`{ panels: [${panel.replace(' }', ', columns: 1 }')}] }`)).toEqual([]);
  });
});

describe('figures in panels', () => {
  it('have a name of their own, figures that stand nowhere else, and a profile that is there', () => {
    const panel = (name: string, figures: string, more = '') => `{ name: ${name}, figures: [${figures}]${more} }`;
    const both = 'prediction-error, accuracy-shares';
    expect(after(`{ panels: [${panel('accuracy', both)}] }`)).toEqual([]);
    expect(after(`{ panels: [${panel('baseline', both)}] }`)).toEqual([
      '10:29 ‘baseline’ names a table or figure already',
    ]);
    expect(after(`{ panels: [${panel('a', both)}, ${panel('b', 'accuracy-shares, eye-flow')}] }`)).toEqual([
      '10:101 ‘accuracy-shares’ stands in a figure of panels already',
    ]);
    expect(after(`{ panels: [${panel('a', both, ', artwork: wide')}] }`)).toEqual([
      '10:87 ‘wide’ is not a profile of artwork',
    ]);
  });
});
