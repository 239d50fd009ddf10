import { count, fixed } from '../format/number.js';
import type { Plan, Visit } from '../records/plan.js';
import { groupPair, type Results } from '../results/index.js';
import { levelText } from '../tables/level.js';
import { noteCodes } from '../tables/marks.js';
import { markdownText } from '../tables/render/markdown.js';
import { vertexText } from '../tables/rows.js';
import { valueText } from '../tables/value-text.js';
import type { Cited } from '../words/en/methods-text.js';
import type { ReferenceKey } from '../words/en/references.js';
import type { Words } from '../words/index.js';
import { comparisonParagraph, formulaSentences } from './comparison-methods.js';
import { methodSentences, ofOneGroup } from './method-sentences.js';
import { cited, referenceList } from './references.js';

/**
 * methods.md: the statistical-methods section, written from what was really run. Only measures that an eye has and
 * methods that a results row bears are told; the works cited are numbered in the order in which they are met.
 *
 * @throws {RangeError} when the method of an interval has no words, or a row on eyes operated or eligible is not there
 */
export function methods(results: Results, plan: Plan, words: Words): string {
  const text = words.tables.methods;
  const { told, keys } = cited(paragraphsOf(results, plan, words));
  return `${[
    `# ${text.heading}`,
    ...told.map(markdownText),
    `## ${text.referencesHeading}`,
    referenceList(keys, text)
      .map((entry, i) => `${i + 1}. ${markdownText(entry)}`)
      .join('\n'),
    `## ${text.cautionHeading}`,
    ...text.caution,
  ].join('\n\n')}\n`;
}

/** The works that methods.md cites, in the order of their numbers. */
export function worksCited(results: Results, plan: Plan, words: Words): readonly ReferenceKey[] {
  return cited(paragraphsOf(results, plan, words)).keys;
}

function paragraphsOf(results: Results, plan: Plan, words: Words): readonly (readonly Cited[])[] {
  return [
    eyesParagraph(results, plan, words),
    measuresParagraph(results, plan, words),
    statisticsParagraph(results, plan, words),
    followUpParagraph(results, words),
    comparisonParagraph(results, plan, words),
    closingParagraph(results, plan, words),
  ].filter((paragraph) => paragraph.length > 0);
}

function eyesParagraph(results: Results, plan: Plan, words: Words): readonly Cited[] {
  const text = words.tables.methods;
  const operated = results.get('eyes_operated', 'all', 'count');
  const both = valueText(results.get('eyes_operated', 'all', 'patients_both_eyes'), words);
  const eligible = valueText(results.get('flow:eligible', 'all', 'analysed'), words);
  const reasons = plan.eligibility.exclude.map(({ reason }) => reason);
  const visits = plan.follow_up.outcome.map((name) => visitText(name, plan.follow_up.visits, words));
  return [
    { text: text.audit(count(operated.n), count(operated.patients), both) },
    { text: text.eligible(eligible) },
    ...(reasons.length > 0 ? [{ text: text.excluded(reasons.join('; ')) }] : []),
    { text: text.eyesPerPatient[plan.eligibility.eyes_per_patient] },
    { text: text.outcome(visits.join(words.tables.or)) },
  ];
}

function visitText(name: string, visits: readonly Visit[], words: Words): string {
  const { visitLabelled, visitWindow } = words.tables.methods;
  const days = visits.find((visit) => visit.name === name)?.days;
  return days === undefined ? visitLabelled(name) : visitWindow(name, String(days[0]), String(days[1]));
}

function measuresParagraph(results: Results, plan: Plan, words: Words): readonly Cited[] {
  const text = words.tables.methods;
  const measured = (measure: string) => Boolean(results.find(measure, 'all', 'n')?.value);
  const told = (name: keyof typeof text.measures): readonly Cited[] => (measured(name) ? [text.measures[name]] : []);
  const { primary_formula: formula } = plan.predictions;
  const prediction = formula === undefined || formula === 'planned' ? text.planned : text.formula(formula);
  const { count_fingers: fingers, hand_movements: hand } = plan.acuity.low_vision;
  return [
    ...told('prediction_error'),
    ...(measured('prediction_error') ? [{ text: prediction }] : []),
    ...told('target_error'),
    ...told('prediction_error_centred'),
    ...told('refractive_cylinder_after_recorded'),
    ...(measured('refractive_cylinder_after') ? [text.vectors(vertexText(results, plan, words))] : []),
    ...told('cdva'),
    ...(measured('cdva') ? [{ text: text.lowVision(fixed(fingers, 1), fixed(hand, 1)) }] : []),
    ...(measured('any_complication') ? [text.measures[blankComplication(plan)]] : []),
  ];
}

/** What a blank complication means: missing, unless audit.yaml declares it for an export. */
function blankComplication({ sources }: Plan): 'any_complication' | 'any_complication_blank_none' {
  const isDeclared = sources.some(({ blocks }) => blocks.some((block) => 'complication' in block.blank_means));
  return isDeclared ? 'any_complication_blank_none' : 'any_complication';
}

function statisticsParagraph(results: Results, plan: Plan, words: Words): readonly Cited[] {
  const text = words.tables.methods;
  const notes = new Set(results.rows.flatMap(noteCodes));
  return [
    text.estimand(levelText(plan)),
    ...methodSentences(ofOneGroup(results), words),
    ...(notes.has('icc:whole-audit') ? [{ text: text.iccFromAll }] : []),
    ...(notes.has('icc:fellow-eyes-identical') ? [{ text: text.iccIdentical }] : []),
    { text: text.smallSamples },
    text.conventions,
  ];
}

/** Completeness by visit, and what eyes without an outcome could change. */
function followUpParagraph(results: Results, words: Words): readonly Cited[] {
  const { methodBounds, methodCompared, methodVisits } = words.tables.followUp;
  const { rows } = results;
  const isBound = rows.some(({ statistic }) => statistic.startsWith('if_missing_failed:'));
  return [
    ...(rows.some(({ measure, group }) => measure === 'completeness' && isOfVisit(group))
      ? [{ text: methodVisits }]
      : []),
    ...(isBound ? [{ text: methodBounds }] : []),
    ...(results.find('completeness', groupPair('follow_up', 'missing'), 'count')?.value
      ? [{ text: methodCompared }]
      : []),
  ];
}

const isOfVisit = (group: string): boolean => group.split(';').some((pair) => pair.startsWith('visit='));

/** Formulas against each other, the same with fewer eyes, and what holds for every number. */
function closingParagraph(results: Results, plan: Plan, words: Words): readonly Cited[] {
  const text = words.tables.methods;
  return [
    ...formulaSentences(results, plan, words),
    ...(plan.policies.lane === 'to-infinity' ? [{ text: words.tables.recomputed.lane }] : []),
    ...(results.rows.some(({ group }) => group.startsWith('sensitivity=')) ? [{ text: text.sensitivity }] : []),
    { text: text.rounding },
    { text: text.program },
  ];
}
