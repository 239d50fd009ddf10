import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { referencePresent } from '../shared-reference.js';
import { exampleIds } from './reference-examples.js';

/** Worked examples of shared/reference/stat-examples.json whose methods this project does not offer, and why. */
const notOurs: Record<string, string> = {
  'fisher-rxc-job': 'several cohorts are compared one by one with the reference',
  'chisq-fleiss-smokers': 'several cohorts are compared one by one with the reference',
  'chisq-haireye': 'tables larger than two by two are described, not tested',
  'cochranq-drugs': 'type I error of 7–14 % when fellow eyes correlate',
  'friedman-baseball': 'type I error of 7–14 % when fellow eyes correlate',
  'kruskal-mucociliary': 'skewed outcomes are compared two by two by the relative effect',
  'kruskal-airquality': 'skewed outcomes are compared two by two by the relative effect',
  'dunn-airquality': 'pairs of cohorts are adjusted by Holm',
  'signedrank-depression': 'type I error of 7–14 % when fellow eyes correlate',
  'signedrank-zeros': 'type I error of 7–14 % when fellow eyes correlate',
  'levene-moore': 'spread is compared by the jackknife of the log SD',
  'tukey-sas-ache': 'each cohort against the reference, adjusted by Holm',
  'hotelling1-sweat': 'three variables; ours are planes, with the closed form of two',
  'yuen-selfawareness': 'no trimmed means',
  'yuen-scipy-a': 'no trimmed means',
  'yuen-scipy-b': 'no trimmed means',
  'yuen-sas': 'no trimmed means',
  'yuen-paired-darwin': 'no trimmed means',
  'circular-zar': 'axes enter as vectors with their magnitude, never as bare directions',
  'circular-turtles': 'axes enter as vectors with their magnitude, never as bare directions',
  'axial-doubling': 'axes enter as vectors with their magnitude, never as bare directions',
  'd-mtcars': 'effects are printed in their own unit',
  'd-borenstein': 'effects are printed in their own unit',
  'bootstrap-law-deterministic': 'no resampling in a run: patient bootstraps cover 85–91 % for the SD at 20 patients',
  'bootstrap-exact-enumeration': 'no resampling in a run',
  'perm-two-sample-exact': 'label permutation has 0.3–18 % type I error with unequal groups and spread',
  'perm-paired-darwin': 'label permutation is undefined in mixed designs',
  'cor-cielab': 'no correlation is reported',
  'cor-airquality-ties': 'no correlation is reported',
  'ols-anscombe1': 'regression takes its variance by patients; not in this folder',
  'kappa-cohen1968': 'no agreement of raters is reported',
  'tost-welch': 'equivalence is read off the interval against the declared margin',
  'power-t': 'sizes use the normal multipliers of the statistics page',
  'rm-anova-baseball': 'no repeated-measures ANOVA',
};

/** Text of all tests of this folder but this one. */
function testTexts(): string {
  const folder = new URL('.', import.meta.url);
  const own = import.meta.url.split('/').at(-1);
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts') && name !== own)
    .map((name) => readFileSync(new URL(name, folder), 'utf8'))
    .join('\n');
}

it.skipIf(!referencePresent)('every worked example is tested here or listed with the reason why not', () => {
  const texts = testTexts();
  const untested = exampleIds.filter((id) => !texts.includes(`'${id}'`));
  expect(untested.toSorted()).toEqual(Object.keys(notOurs).toSorted());
});
