import { describe, expect, it } from 'vitest';
import { type Artwork, artworks } from '../../src/charts/theme.js';
import { legends } from '../../src/text/legends.js';
import { en } from '../../src/words/index.js';

const table = {
  id: 'made-up',
  number: 2,
  title: 'Made up',
  head: [],
  rows: [],
  footnotes: ['* few', 'CI, confidence interval.'],
};
const artwork = artworks['journal-single'] as Artwork;
const figure = {
  artwork,
  id: 'drawn',
  number: 1,
  spec: {},
  title: 'Drawn',
  legend: 'Points are eyes.',
  alt: '',
  from: [],
};

describe('legends', () => {
  it('lists titles with footnotes, then figures with their legends', () => {
    expect(legends([table], [figure], en)).toBe(
      `${[
        '# Titles, footnotes and legends',
        '## Tables',
        '**Table 2. Made up**',
        '\\* few',
        'CI, confidence interval.',
        '## Figures',
        '**Figure 1. Drawn**',
        'Points are eyes.',
      ].join('\n\n')}\n`,
    );
  });

  it('has no heading for what is not there', () => {
    expect(legends([], [figure], en)).not.toContain('Tables');
    expect(legends([table], [], en)).not.toContain('Figures');
  });
});
