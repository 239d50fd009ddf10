import { describe, expect, it } from 'vitest';
import { compose, questions } from '../../src/page/compose.js';
import type { PageContent } from '../../src/page/content.js';
import { figureNames, tableNames } from '../../src/plan/published.js';
import { indexResults } from '../../src/results/index.js';
import { en } from '../../src/words/index.js';
import { auditRows, without } from '../tables/audit.js';
import { figureOf, partsOf } from './parts.js';

const content = compose(partsOf(), en);
const sectionOf = (id: string, of: PageContent = content) => of.sections.find((section) => section.id === id);

describe('the opening', () => {
  it('tells cohort and period in the words of a reader', () => {
    expect(content.cohort).toBe('421 eyes of 268 patients, 153 of them with both eyes. Technique: manual, laser & co');
    const periodOf = (from?: string, to?: string) => compose(partsOf({}, { period: { from, to } }), en).period;
    expect(periodOf()).toBe('All operations in the data');
    expect(periodOf('2025-01-01', '2025-12-31')).toBe('Operated 1 January 2025 to 31 December 2025');
    expect(periodOf('2024', '2025')).toBe('Operated 2024 to 2025');
    expect(periodOf('2025', '2025')).toBe('Operated in 2025');
    expect(periodOf('2025-06-09')).toBe('Operated since 9 June 2025');
    expect(periodOf(undefined, '2025')).toBe('Operated until 2025');
  });

  // By hand from test/tables/audit.ts: 421 eyes, 386/407 = 94.8 %, 278/371 = 74.9 %.
  it('has six numbers, those that belong to another below it', () => {
    expect(content.numbers.map(({ label, value }) => [label, value])).toEqual([
      ['Operated', '421'],
      ['Within ±0.50 D', '74.9 %'],
      ['Mean error', '−0.06 D'],
      ['Recorded cylinder ≤ 0.50 D', '74.9 %'],
      ['Corrected 20/40 (6/12) or better', '74.9 %'],
      ['Complication during surgery', '1.0 %'],
    ]);
    expect(content.numbers[0]?.details).toEqual([
      '421 eyes, 268 patients',
      'Outcome known, of eyes due: 386 of 407 eyes, 94.8 % (95 % CI 92.2 to 96.8, exact)',
    ]);
    expect(content.numbers[1]?.details).toEqual(['278 of 371 eyes, by predicted refraction', '95 % CI 70.3 to 79.1']);
  });

  it('draws each interval on a scale that holds it', () => {
    expect(content.numbers[1]?.strip).toMatchObject({ from: 0, to: 1, low: 0.7026, high: 0.7905 });
    expect(content.numbers[2]?.strip).toMatchObject({ from: -0.5, to: 0.5, low: -0.1, high: -0.0051 });
    const far = auditRows.map((row) =>
      row.measure === 'prediction_error' && row.statistic === 'mean' ? { ...row, value: -1.2, ci_low: -1.6 } : row,
    );
    const { strip } = compose(partsOf({ results: indexResults(far) }), en).numbers[2] ?? {};
    expect(strip).toMatchObject({ from: -2, to: 2 });
    expect(strip?.marks.map(({ label }) => label)).toEqual(['−2.00', '0', '+2.00 D']);
  });
});

describe('the sections', () => {
  it('answer one question each, and hold what belongs there', () => {
    expect(content.sections.map(({ id }) => id)).toEqual([
      'eyes',
      'data',
      'plan',
      'systematic',
      'astigmatism',
      'vision',
      'safety',
    ]);
    expect(sectionOf('plan')?.tables.map(({ id }) => id)).toEqual(['refractive-accuracy']);
    expect(sectionOf('systematic')?.tables.map(({ id }) => id)).toEqual(['accuracy-by-subgroup']);
    expect(sectionOf('astigmatism')?.figures.map(({ figure }) => figure.id)).toEqual(['double-angle']);
    expect(sectionOf('safety')?.answer).toEqual([
      'Complication during surgery: 4 of 421 eyes, 1.0 % (95 % CI 0.3 to 2.4, exact).',
    ]);
  });

  it('show every table and figure once, one that no question asks for at the end', () => {
    const parts = partsOf({ figures: [figureOf('a-new-one', 1, false), figureOf('eye-flow', 2, false)] });
    const shown = compose(parts, en).sections;
    expect(shown.at(-1)).toMatchObject({ id: 'more', figures: [{ figure: { id: 'a-new-one' } }] });
    expect(shown.flatMap(({ tables }) => tables.map(({ id }) => id)).sort()).toEqual(
      parts.typeset.map(({ id }) => id).sort(),
    );
    expect(shown.flatMap(({ figures }) => figures)).toHaveLength(2);
  });

  it('say so where the data do not tell', () => {
    const bare = without(auditRows, ({ measure }) => measure === 'any_complication');
    const told = compose(partsOf({ results: indexResults(bare) }), en);
    expect(sectionOf('safety', told)?.answer).toEqual([en.page.notRecorded]);
  });

  it('tell in numbers what was doubted, and with its reason what was declared', () => {
    const declared = {
      quality: { limits: {}, off: [{ rule: 'sphere-range', reason: 'Referral centre' }], answers: [] },
      identifiers_reviewed: [{ file: 'lane.csv', column: 'Lens name', reason: 'names a model' }],
    };
    expect(sectionOf('data', compose(partsOf({}, declared), en))?.answer).toEqual([
      en.page.doubts('3', '1,205', '0'),
      'The rule sphere-range was switched off: Referral centre.',
      'The column “Lens name” was declared free of identifiers: names a model.',
    ]);
  });
});

it('the methods come without the cautions, which end the page', () => {
  expect(content.methods).toContain('Statistical methods');
  for (const caution of content.cautions) expect(content.methods).not.toContain(caution);
  expect(content.cautions).toHaveLength(en.tables.methods.caution.length);
});

it.each([
  ['tables', tableNames],
  ['figures', figureNames],
] as const)('numbers the %s in the order in which a reader meets them', (_, names: readonly string[]) => {
  const met: readonly string[] = questions.flatMap(({ exhibits }): readonly string[] => exhibits);
  expect(met.filter((name) => names.includes(name))).toEqual(names.filter((name) => met.includes(name)));
  expect(names.filter((name) => !met.includes(name))).toEqual([]);
});
