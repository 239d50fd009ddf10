import { describe, expect, it } from 'vitest';
import { citing } from '../../src/charts/setting.js';
import { count as groupedCount } from '../../src/format/number.js';
import { indexResults } from '../../src/results/index.js';
import { intervalText, valueText } from '../../src/tables/value-text.js';
import { bibliography } from '../../src/text/bibliography.js';
import { worksCited } from '../../src/text/methods.js';
import { resultsSection } from '../../src/text/results-section.js';
import { type ReferenceKey, references } from '../../src/words/en/references.js';
import { en } from '../../src/words/index.js';
import { comparedRows } from '../tables/compared.js';
import { planOf } from '../tables/plan.js';

const results = indexResults(comparedRows);
const plan = planOf();

describe('the draft of a Results section', () => {
  const { results: noted, cited } = citing(results);
  const text = resultsSection(noted, plan, en);
  const sentences = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  const numbers = (of: string): readonly string[] =>
    (of.replaceAll('\u2212', '-').match(/-?\d+(?:[.,]\d+)*/g) ?? []).map((number) => number.replace(/^0+(?=\d)/, ''));

  it('prints no number that is not a value, limit or count of a row it looked at', () => {
    const rows = cited().map((key) => {
      const at = [key.indexOf('|'), key.lastIndexOf('|')] as const;
      return results.get(key.slice(0, at[0]), key.slice(at[0] + 1, at[1]), key.slice(at[1] + 1));
    });
    const known = new Set(
      rows.flatMap((row) => [
        ...numbers(valueText(row, en)),
        ...numbers(intervalText(row, en) ?? ''),
        ...[row.n, row.patients, row.eyes].map((count) => groupedCount(count)),
      ]),
    );
    // Limits of the definitions, levels, the power of a comparison, and Snellen lines are no results.
    const defined = new Set(['0.50', '1.00', '95', '97.5', '80', '20', '40', '6', '12', '0.05']);
    const told = sentences.slice(1).flatMap(numbers);
    expect(told.length).toBeGreaterThan(40);
    expect(told.filter((number) => !known.has(number) && !defined.has(number))).toEqual([]);
  });

  it('judges nothing: none of the words with which results are praised or excused', () => {
    const judging =
      /\b(?:excellent|good|poor|remarkabl\w+|significant\w*|only|clearly|slight\w*|substantial\w*|high|low|very|interesting\w*)\b/i;
    expect(sentences.filter((sentence) => judging.test(sentence))).toEqual([]);
  });

  it('tells each subject for every cohort and for all eyes', () => {
    for (const heading of ['Refraction', 'Visual acuity']) {
      const part = text.split(`## ${heading}\n`)[1]?.split('\n## ')[0] ?? '';
      expect(part.match(/^[^\n:]+: /gm)).toHaveLength(3);
    }
  });
});

describe('references.bib', () => {
  const keys = Object.keys(references) as ReferenceKey[];

  it('has an entry for every work that the methods cite, in their order', () => {
    const cited = worksCited(results, plan, en);
    const text = bibliography(cited, en);
    expect([...text.matchAll(/^@\w+\{(\w+),$/gm)].map(([, key]) => key)).toEqual(cited);
    expect(cited.length).toBeGreaterThan(5);
  });

  it('takes nearly all works apart, and warns where details were not read again', () => {
    const text = bibliography(keys, en);
    const articles = text.match(/^@article/gm) ?? [];
    expect(articles.length).toBeGreaterThanOrEqual(keys.length * 0.8);
    for (const key of keys) {
      const work: { text: string; memory?: true } = references[key];
      const entry = bibliography([key], en);
      expect(entry.includes(en.tables.methods.fromMemory), key).toBe(work.memory === true);
      expect(entry.match(/\{/g)?.length, key).toBe(entry.match(/\}/g)?.length);
    }
  });

  // Wilson EB. J Am Stat Assoc 1927;22:209–212, as BibTeX wants it (Patashnik O. BibTeXing, 1988).
  it('writes an article as BibTeX reads it', () => {
    expect(bibliography(['wilson'], en)).toContain(
      [
        '@article{wilson,',
        '  author = {Wilson, E. B.},',
        '  title = {{Probable inference, the law of succession, and statistical inference}},',
        '  journal = {J Am Stat Assoc},',
        '  year = {1927},',
        '  volume = {22},',
        '  pages = {209--212},',
      ].join('\n'),
    );
  });
});
