import { tabulate } from '../../pipeline/6-tabulate.js';
import { type Artwork, artworks } from '../../src/charts/theme.js';
import type { PageParts } from '../../src/page/compose.js';
import type { DrawnFigure } from '../../src/page/content.js';
import type { Plan } from '../../src/records/plan.js';
import { indexResults } from '../../src/results/index.js';
import { methods } from '../../src/text/methods.js';
import { en } from '../../src/words/index.js';
import { auditRows } from '../tables/audit.js';
import { planOf } from '../tables/plan.js';

/** A figure of two marks; on the page of the clinic they bear names. */
export function figureOf(id: string, number: number, named: boolean): DrawnFigure {
  const mark = (name: string): string => `<path d="M0,0h1v1z"${named ? ` aria-label="${name}"` : ''}/>`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" class="marks" width="238.11" height="90" viewBox="0 0 238.11 90">${mark('P1 right')}${mark('P2 left')}</svg>`;
  const figure = {
    id,
    number,
    spec: {},
    title: `Title of ${id}`,
    legend: 'A legend < b.',
    alt: `What ${id} shows`,
    from: [],
    artwork: artworks['journal-single'] as Artwork,
  };
  return { figure, svg };
}

/** What a page is made from, of the made-up audit; parts given replace those. */
export function partsOf(more: Partial<PageParts> = {}, sections: Partial<Plan> = {}): PageParts {
  const plan = planOf(sections);
  const results = indexResults(auditRows);
  return {
    results,
    plan,
    typeset: tabulate(results, plan, en),
    figures: ['eye-flow', 'prediction-error', 'double-angle'].map((id, at) => figureOf(id, at + 1, false)),
    findings: [
      { rule: 'axis-range', severity: 'set aside', sentence: 'axis outside 0 to 180 °', count: 3, places: [] },
      { rule: 'sphere-range', severity: 'query', sentence: 'unusual sphere', count: 1205, places: [] },
    ],
    methods: methods(results, plan, en),
    internal: undefined,
    ...more,
  };
}

/** The same for the page that stays in the clinic. */
export function internalParts(): PageParts {
  const place = 'P0042 right: lane.csv row 88 "Ax" ‘195’';
  return partsOf({
    figures: [figureOf('double-angle', 1, true)],
    findings: [{ rule: 'axis-range', severity: 'set aside', sentence: 'axis outside', count: 3, places: [place] }],
    internal: {
      review: [
        { patient: 'P0042', laterality: 'left', year: '2025', reasons: ['prediction error −1.22 D', 'complication'] },
      ],
      files: [{ file: 'eyes.csv', holds: 'one row an eye' }],
    },
  });
}
