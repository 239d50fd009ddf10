import { type Better, isRatio } from '../comparison/compared.js';
import { type CohortPair, cohortPairs } from '../tables/cohort-pairs.js';
import { type ComparedOutcome, comparedOutcomes, isTold } from '../tables/compared-outcomes.js';
import { type HeadlineError, headlineError } from '../tables/headline-error.js';
import { outcomeName, outcomePart } from '../tables/outcome-words.js';
import type { ChartSetting } from './setting.js';
import { type Accent, accents } from './theme.js';

/** One comparison and how it is drawn: with the symbol of the cohort that is compared. */
export interface DrawnPair extends CohortPair {
  accent: Accent;
}

/** One outcome of every comparison. */
export interface ForestRow {
  /** 'Prediction error' and ' within ±0.50 D'. */
  name: string;
  part: string;
  isPrimary: boolean;
  /** One a pair, in their order; undefined where a pair has no eye with it. */
  outcomes: readonly (ComparedOutcome | undefined)[];
}

/** Outcomes that share a scale and a direction. */
export interface ForestGroup {
  kind: 'difference' | 'ratio' | 'effect';
  unit: string;
  better: Better | undefined;
  rows: readonly ForestRow[];
}

/** The comparisons of an audit; none where it has more than symbols tell apart. */
export function drawnPairs({ results, words }: ChartSetting): readonly DrawnPair[] {
  const pairs = cohortPairs(results, words);
  if (pairs.length >= accents.length) return [];
  return pairs.map((pair, index) => ({ ...pair, accent: accents[index + 1] as Accent }));
}

/** What is the headline's error measured once more: centred, by another formula, against the other reference. */
function isVariant({ measure }: ComparedOutcome, headline: HeadlineError | undefined): boolean {
  const isOther = ['prediction_error', 'target_error'].includes(measure.name) && measure.name !== headline;
  return isOther || measure.absoluteFrom !== undefined || measure.name.includes(':');
}

/** What a line with an interval can show: no vector; of the rest what the table shows, each thing once. */
function isDrawn(outcome: ComparedOutcome, headline: HeadlineError | undefined): boolean {
  const { one, isPrimary } = outcome;
  if (one.by === 'centroid') return false;
  if (isPrimary) return true;
  if (isVariant(outcome, headline) || one.by === 'effect' || one.by === 'risk-ratio') return false;
  return one.by !== 'spread' || one.better !== undefined;
}

const keyOf = ({ row }: ComparedOutcome): string => `${row.measure}/${row.statistic}`;

/** All rows of the chart in groups of one scale: those with a primary first, ratios last. */
export function forestGroups(setting: ChartSetting, pairs: readonly DrawnPair[]): readonly ForestGroup[] {
  const { results, plan } = setting;
  const headline = headlineError(results);
  const told = pairs.map(({ group }) => {
    const all = comparedOutcomes(results, plan, group);
    return all.filter((outcome) => isTold(outcome, all) && isDrawn(outcome, headline));
  });
  const firsts = new Map(told.flat().map((outcome) => [keyOf(outcome), outcome]));
  const groups = new Map<string, ForestGroup>();
  for (const [key, first] of firsts) {
    const outcomes = told.map((own) => own.find((outcome) => keyOf(outcome) === key));
    const name = outcomeName(first, setting.words);
    const row = { name, part: outcomePart(first, setting.words), isPrimary: first.isPrimary, outcomes };
    const group = groupOf(first);
    const scale = `${group.kind} ${group.unit} ${group.better}`;
    groups.set(scale, { ...group, rows: [...(groups.get(scale)?.rows ?? []), row] });
  }
  return [...groups.values()].map(primariesFirst).sort((a, b) => rankOf(a) - rankOf(b));
}

function groupOf({ one, row }: ComparedOutcome): Omit<ForestGroup, 'rows'> {
  const kind = isRatio(one) ? 'ratio' : one.by === 'effect' ? 'effect' : 'difference';
  return { kind, unit: kind === 'difference' ? row.unit : '', better: one.better };
}

function primariesFirst(group: ForestGroup): ForestGroup {
  const { rows } = group;
  return {
    ...group,
    rows: [...rows.filter(({ isPrimary }) => isPrimary), ...rows.filter(({ isPrimary }) => !isPrimary)],
  };
}

/** Primaries, shares, other differences, relative effects, ratios. */
function rankOf({ kind, unit, rows }: ForestGroup): number {
  const kinds = { difference: unit === 'share' ? 1 : 2, effect: 3, ratio: 4 };
  return rows.some(({ isPrimary }) => isPrimary) ? 0 : kinds[kind];
}
