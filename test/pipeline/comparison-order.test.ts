// Cohorts, covariates and their categories come in the order of the files; nothing that is published may tell which.
import { expect, it } from 'vitest';
import { draw } from '../../pipeline/6-draw.js';
import { tabulate } from '../../pipeline/6-tabulate.js';
import { resultsFile } from '../../pipeline/publish/results-file.js';
import { methods } from '../../src/text/methods.js';
import { en } from '../../src/words/index.js';
import { auditOfEyes, type MadeEye } from '../comparison/made-up-audit.js';
import { madeUpEyes } from '../comparison/made-up-eyes.js';

const eyes = madeUpEyes();

/** Every eye once, in an order of no meaning: each steps on by a number without a common factor. */
const strewn = (step: number): readonly MadeEye[] => eyes.map((_, i) => eyes[(i * step) % eyes.length] as MadeEye);

async function published(rows: readonly MadeEye[], cohorts: string): Promise<readonly string[]> {
  const more = `cohorts: { by: technique${cohorts} }\nsubgroups: [surgeon]\nstatistics: { adjust_for: [surgeon, axial_length] }`;
  const audit = await auditOfEyes(rows, more);
  return [
    Buffer.from(resultsFile('results.csv', audit.rows).bytes).toString('utf8'),
    JSON.stringify(tabulate(audit.results, audit.plan, en)),
    JSON.stringify(draw(audit.results, audit.derived.points, audit.plan, en)),
    methods(audit.results, audit.plan, en),
  ];
}

it.each([
  ['the largest cohort the reference', ''],
  ['the reference declared', ', reference: C'],
])('in any order of rows: same bytes of results, tables, figures and methods; %s', async (_, cohorts) => {
  const first = await published(eyes, cohorts);
  expect(first[0]?.split('\n').length).toBeGreaterThan(3000);
  for (const rows of [eyes.toReversed(), strewn(7), strewn(29)]) {
    expect(new Set(rows)).toEqual(new Set(eyes));
    const again = await published(rows, cohorts);
    first.forEach((bytes, i) => {
      expect(again[i] === bytes, `part ${i}`).toBe(true);
    });
  }
});
