import { count } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { Results } from '../results/index.js';
import { cohortPairs, referenceOf } from '../tables/cohort-pairs.js';
import { type ComparedOutcome, comparedOutcomes } from '../tables/compared-outcomes.js';
import { designNote, primaryLevel } from '../tables/comparison-notes.js';
import { formulasCompared, primaryFormula } from '../tables/formulas.js';
import { levelText, percentLevel } from '../tables/level.js';
import { noteCodes } from '../tables/marks.js';
import { covariateName, declaredText, outcomeText } from '../tables/outcome-words.js';
import { recomputedShown } from '../tables/recomputed-notes.js';
import type { Cited } from '../words/en/methods-text.js';
import type { Words } from '../words/index.js';
import { methodSentences, ofComparisons } from './method-sentences.js';

/** How cohorts were compared, as far as they were: design, methods, verdicts and their number, adjustment. */
export function comparisonParagraph(results: Results, plan: Plan, words: Words): readonly Cited[] {
  const pairs = cohortPairs(results, words);
  const [first] = pairs;
  if (!first) return [];
  const { comparison } = words.tables.methods;
  const outcomes = comparedOutcomes(results, plan, first.group);
  const adjusted = plan.statistics.adjust_for.map((name) => covariateName(name, words));
  return [
    { text: comparison.cohorts(pairs.map(({ compared }) => compared.label).join(', '), referenceOf(pairs).label) },
    ...pairs.map((pair) => ({ text: comparison.design(designNote(results, pair, words)) })),
    { text: comparison.observed },
    comparison.baseline,
    ...methodSentences(ofComparisons(results), words),
    ...testSentences(results, words),
    ...(adjusted.length > 0 ? [{ text: comparison.adjusted(adjusted.join(', ')) }] : []),
    ...verdictSentences(results, plan, words, outcomes),
  ];
}

/** Tests that no interval stands for, and the textbook forms that tests equal in these data. */
function testSentences(results: Results, words: Words): readonly Cited[] {
  const { byTest, byTextbook, comparison } = words.tables.methods;
  const rows = ofComparisons(results);
  const used = new Set(rows.filter(({ statistic }) => statistic.startsWith('p:')).map(({ method }) => method));
  const codes = new Set(rows.flatMap(noteCodes));
  const textbook = Object.entries(byTextbook).flatMap(([code, text]) => (codes.has(code) ? [text] : []));
  return [
    ...Object.entries(byTest).flatMap(([method, sentence]) => (used.has(method) ? [sentence] : [])),
    ...(textbook.length > 0 ? [{ text: comparison.textbook(textbook.join('; ')) }] : []),
  ];
}

/** Primaries, their number and their margins; what the rest is. */
function verdictSentences(
  results: Results,
  plan: Plan,
  words: Words,
  outcomes: readonly ComparedOutcome[],
): readonly Cited[] {
  const { comparison } = words.tables.methods;
  const primaries = outcomes.filter(({ isPrimary }) => isPrimary);
  const margins = outcomes.flatMap((outcome) => {
    if (outcome.margin === undefined) return [];
    return [comparison.marginOf(outcomeText(outcome, words), declaredText(outcome, outcome.margin, words))];
  });
  const rest = { text: comparison.exploratory(levelText(plan)) };
  if (primaries.length === 0) return [rest];
  return [
    primarySentence(results, plan, words, primaries),
    { text: margins.length > 0 ? comparison.margins(margins.join('; ')) : comparison.noMargin },
    { text: comparison.power },
    rest,
  ];
}

function primarySentence(results: Results, plan: Plan, words: Words, primaries: readonly ComparedOutcome[]): Cited {
  const { comparison } = words.tables.methods;
  const names = primaries.map((outcome) => outcomeText(outcome, words)).join('; ');
  const k = results.get('primaries', 'all', 'count').value ?? 1;
  if (k === 1) return { text: comparison.primary(names, primaryLevel(results)) };
  return comparison.primaries(names, count(k), percentLevel(1 - plan.statistics.confidence), primaryLevel(results));
}

/** How formulas were compared on the same eyes; nothing where the audit has one. */
export function formulaSentences(results: Results, plan: Plan, words: Words): readonly Cited[] {
  const { formulas } = words.tables.methods;
  const compared = formulasCompared(results);
  const recomputed = recomputedShown(results, plan);
  const told = recomputed.length === 0 ? [] : [{ text: words.tables.recomputed.method(recomputed.join(', ')) }];
  if (compared.length === 0) return told;
  const list = compared.map(({ formula }) => formula).join(', ');
  const hasTextbook = results.rows.some(({ statistic }) => statistic.startsWith('p_textbook:'));
  return [
    ...told,
    { text: formulas.sameEyes(list, primaryFormula(plan, words)) },
    ...(compared.length > 1 ? [formulas.holm] : []),
    ...(hasTextbook ? [formulas.textbook] : []),
  ];
}
