import { axisText } from '../format/axis.js';
import { count } from '../format/number.js';
import type { Plan } from '../records/plan.js';
import type { TypesetTable } from '../records/report.js';
import type { Results } from '../results/index.js';
import { type CohortPair, cohortPairs, referenceOf } from '../tables/cohort-pairs.js';
import { cohortColumns } from '../tables/cohorts.js';
import { concernsOf } from '../tables/concerns.js';
import { fieldLabel } from '../tables/groups.js';
import { levelText } from '../tables/level.js';
import { valueText } from '../tables/value-text.js';
import { type Headline, headlines } from '../text/headline.js';
import { sentences } from '../text/sentences.js';
import { verdictSentences } from '../text/verdicts.js';
import { warnings } from '../text/warnings.js';
import type { Words } from '../words/index.js';
import type { DrawnFigure, FindingGroup, InternalContent, PageContent, Section } from './content.js';
import { bigNumbers, statedNumber } from './numbers.js';

/** What a page is made from. */
export interface PageParts {
  results: Results;
  plan: Plan;
  typeset: readonly TypesetTable[];
  figures: readonly DrawnFigure[];
  findings: readonly FindingGroup[];
  /** methods.md. */
  methods: string;
  internal: InternalContent | undefined;
}

/**
 * The questions of the report in their order: which headlines answer them, which tables and figures belong there. One
 * that headlines answer is asked in every audit, the others where the data allow an exhibit.
 */
const questions = [
  {
    id: 'eyes',
    headlines: ['operated', 'outcome-known'],
    exhibits: ['eye-flow', 'follow-up', 'baseline', 'missing-outcomes'],
  },
  { id: 'data', headlines: [], exhibits: [] },
  {
    id: 'plan',
    headlines: ['within-half', 'mean-error'],
    exhibits: [
      'prediction-error',
      'accuracy-bands',
      'accuracy-shares',
      'planned-achieved',
      'refractive-accuracy',
      'benchmarks',
    ],
  },
  { id: 'systematic', headlines: [], exhibits: ['error-trend', 'formulas', 'accuracy-by-subgroup', 'lens-constants'] },
  {
    id: 'astigmatism',
    headlines: ['cylinder'],
    exhibits: [
      'cylinder-shares',
      'double-angle',
      'target-induced',
      'angle-error',
      'residual-cylinder',
      'double-angle-summary',
      'astigmatism-treatment',
    ],
  },
  {
    id: 'incision',
    headlines: [],
    exhibits: ['double-angle-cornea', 'double-angle-induced', 'induced-incision', 'induced-astigmatism'],
  },
  {
    id: 'toric',
    headlines: [],
    exhibits: ['double-angle-error', 'double-angle-toric', 'toric-rotation', 'toric-alignment'],
  },
  {
    id: 'vision',
    headlines: ['corrected', 'uncorrected'],
    exhibits: ['acuity-cumulative', 'acuity-difference', 'lines-change', 'visual-acuity', 'acuity-change'],
  },
  { id: 'safety', headlines: ['complication'], exhibits: ['endothelium', 'safety'] },
  { id: 'resources', headlines: [], exhibits: ['resources'] },
  { id: 'time', headlines: [], exhibits: ['stability', 'monitoring', 'funnel'] },
  { id: 'differences', headlines: [], exhibits: ['differences', 'confounding', 'comparison', 'sensitivity'] },
] as const satisfies readonly {
  id: keyof Words['page']['questions'] | 'differences';
  headlines: Headline['id'][];
  exhibits: string[];
}[];

/** The content of a page; the publication version is the one without `internal`. */
export function compose(parts: PageParts, words: Words): PageContent {
  const { results, plan, methods, internal } = parts;
  const { methods: text } = words.tables;
  return {
    language: plan.outputs.language,
    title: plan.title,
    period: periodText(plan, words),
    cohort: cohortText(results, plan, words),
    numbers: bigNumbers(results, plan, words),
    sentences: sentences(results, plan, words),
    warnings: warnings(results, plan, words).map((warning) => warning.text),
    sections: sectionsOf(parts, words),
    methods: methods.split(`## ${text.cautionHeading}`)[0] ?? '',
    cautions: text.caution,
    internal,
  };
}

function periodText({ period: { from, to } }: Plan, { page }: Words): string {
  if (from === undefined && to === undefined) return page.period.all;
  if (from === undefined) return page.period.until(dateText(to ?? '', page));
  if (to === undefined) return page.period.since(dateText(from, page));
  return from === to
    ? page.period.in(dateText(from, page))
    : page.period.between(dateText(from, page), dateText(to, page));
}

/** '2025-01-31' → '31 January 2025'; a year stays a year. */
function dateText(date: string, page: Words['page']): string {
  const [year = '', month, day] = date.split('-');
  const name = page.months[Number(month) - 1];
  return name === undefined ? year : `${Number(day)} ${name} ${year}`;
}

function cohortText(results: Results, plan: Plan, words: Words): string {
  const eyes = results.get('eyes_operated', 'all', 'count');
  const both = valueText(results.get('eyes_operated', 'all', 'patients_both_eyes'), words);
  const cohorts = cohortColumns(results, plan, words).slice(0, -1);
  const text = words.page.cohort(count(eyes.n), count(eyes.patients), both);
  if (cohorts.length === 0) return text;
  const field = plan.cohorts.by === undefined ? '' : fieldLabel(plan.cohorts.by, words);
  return `${text}. ${words.page.cohorts(field, cohorts.map(({ label }) => label).join(', '))}`;
}

function sectionsOf(parts: PageParts, words: Words): readonly Section[] {
  const pairs = cohortPairs(parts.results, words);
  const open = questions.filter((question) => isAsked(question, parts, pairs));
  const asked = new Set<string>(open.flatMap(({ exhibits }) => exhibits));
  const others = exhibitsOf(parts, (id) => !asked.has(id));
  const sections = open.map(({ id, exhibits }) => ({
    id,
    question: id === 'differences' ? differenceQuestion(pairs, words) : words.page.questions[id],
    answer: answerOf(id, parts, words),
    ...exhibitsOf(parts, (name) => (exhibits as readonly string[]).includes(name)),
    ...(id === 'data' ? { findings: parts.findings } : {}),
  }));
  const more = { id: 'more', question: words.page.questions.more, answer: [], ...others };
  return others.figures.length + others.tables.length > 0 ? [...sections, more] : sections;
}

type Question = (typeof questions)[number];

function isAsked({ id, headlines, exhibits }: Question, parts: PageParts, pairs: readonly CohortPair[]): boolean {
  if (id === 'differences') return pairs.length > 0;
  if (id === 'data' || headlines.length > 0) return true;
  const { figures, tables } = exhibitsOf(parts, (name) => (exhibits as readonly string[]).includes(name));
  return figures.length + tables.length > 0;
}

/** Asked with the names of the cohorts. */
function differenceQuestion(pairs: readonly CohortPair[], { page, tables }: Words): string {
  const compared = pairs.map(({ compared: { label } }) => label).join(tables.orAnother);
  return page.isDifferent(compared, referenceOf(pairs).label);
}

function exhibitsOf(
  { figures, typeset }: PageParts,
  belongs: (id: string) => boolean,
): Pick<Section, 'figures' | 'tables'> {
  return {
    figures: figures.filter(({ figure }) => belongs(figure.panels?.figures[0]?.id ?? figure.id)),
    tables: typeset.filter(({ id }) => belongs(id)),
  };
}

function answerOf(id: Question['id'], parts: PageParts, words: Words): readonly string[] {
  const { results, plan } = parts;
  if (id === 'data') return dataAnswer(parts, words);
  if (id === 'differences') return differenceAnswer(parts, words);
  const wanted: readonly string[] = questions.find((question) => question.id === id)?.headlines ?? [];
  const told = headlines(results, words)
    .filter((headline) => wanted.includes(headline.id))
    .map((headline) => `${statedNumber(headline, levelText(plan), words)}.`);
  if (wanted.length === 0) return [];
  const centroid = id === 'astigmatism' ? centroidAnswer(results, words) : [];
  return told.length + centroid.length > 0 ? [...told, ...centroid] : [words.page.notRecorded];
}

/** The verdicts, and what else may be the reason for a difference. */
function differenceAnswer({ results, plan }: PageParts, words: Words): readonly string[] {
  const concerns = cohortPairs(results, words).flatMap((pair) => concernsOf(results, pair, words));
  const told = [...verdictSentences(results, plan, words), ...concerns.map(({ text }) => text)];
  return told.length > 0 ? told : [words.page.notRecorded];
}

function centroidAnswer(results: Results, words: Words): readonly string[] {
  const row = (statistic: string) => results.find('refractive_cylinder_after', 'all', statistic);
  const [magnitude, axis] = [row('centroid_magnitude'), row('centroid_axis')];
  if (magnitude?.value === undefined || axis?.value === undefined) return [];
  const vector = words.charts.doubleAngle.vector(valueText(magnitude, words), axisText(axis.value));
  return [words.page.centroid(words.tables.blocks.refractiveAfter, vector)];
}

/** How many values were doubted; what audit.yaml declared safe, switched off or had answered is told with its reason. */
function dataAnswer({ findings, plan }: PageParts, { page }: Words): readonly string[] {
  const sum = (severity: FindingGroup['severity']): number =>
    findings.reduce((total, group) => (group.severity === severity ? total + group.count : total), 0);
  const [setAside, query, note] = [sum('set aside'), sum('query'), sum('note')];
  return [
    page.doubts(count(setAside), count(query), count(note)),
    ...plan.quality.off.map(({ rule, reason }) => page.ruleOff(rule, reason)),
    ...plan.identifiers_reviewed.map(({ column, reason }) => page.columnReviewed(column, reason)),
  ];
}
