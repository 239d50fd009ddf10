import { count, fixed } from '../format/number.js';
import type { Words } from '../words/index.js';
import { labelled, screen, wrapped } from './layout.js';

/** What was asked, in numbers as typed: shares in percent. */
export type SizeQuestion =
  | { of: 'share'; from: number; to: number }
  | { of: 'mean'; difference: number; sd: number }
  | { of: 'spread'; ratio: number; kurtosis: number }
  | { of: 'margin'; share: number; margin: number };

export interface SizeAnswer {
  question: SizeQuestion;
  /** Percent. */
  bothEyes: number;
  correlation: number;
  /** Percent. */
  loss: number;
  confidence: number;
  power: number;
  designEffect: number;
  /** Eyes in each cohort, were all independent. */
  independent: number;
  /** Eyes in each cohort with both eyes and losses allowed for. */
  needed: number;
  /** Eyes at hand, and the smallest effect they show. */
  atHand: { eyes: number; effect: number } | undefined;
}

/** A number as short as two decimals allow. */
const short = (value: number): string => String(Number(fixed(value, 2).replace('\u2212', '-')));

function toSee(question: SizeQuestion, words: Words['size']): string {
  switch (question.of) {
    case 'share':
      return words.toSee.share(short(question.from), short(question.to));
    case 'mean':
      return words.toSee.mean(fixed(question.difference, 2), fixed(question.sd, 2));
    case 'spread':
      return words.toSee.spread(fixed(question.ratio, 2), short(question.kurtosis));
    case 'margin':
      return words.toSee.margin(short(question.share), short(question.margin));
  }
}

function shown(question: SizeQuestion, effect: number, words: Words['size']): string {
  switch (question.of) {
    case 'share':
      return words.shows.share(short(question.from), fixed(question.from + effect, 1));
    case 'mean':
      return words.shows.mean(fixed(effect, 3));
    case 'spread':
      return words.shows.spread(fixed(effect, 3));
    case 'margin':
      return words.shows.margin(fixed(effect, 1));
  }
}

/** The screen of `size`: each step from independent eyes to the eyes that are needed. */
export function sizeScreen(answer: SizeAnswer, words: Words): string {
  const { size } = words;
  const { labels } = size;
  const line = (label: string, text: string) => labelled(label, text, { indent: 2, at: 16 });
  const atHand = answer.atHand
    ? [
        line(labels.atHand, size.atHand(count(answer.atHand.eyes))),
        line(labels.shows, shown(answer.question, answer.atHand.effect, size)),
      ].flat()
    : [];
  return screen([
    wrapped(size.titles[answer.question.of]),
    [
      ...line(labels.toSee, toSee(answer.question, size)),
      ...line(labels.independent, size.independent(fixed(answer.independent, 1))),
      ...line(
        labels.bothEyes,
        size.bothEyes(short(answer.bothEyes), short(answer.correlation), fixed(answer.designEffect, 3)),
      ),
      ...line(labels.loss, size.loss(short(answer.loss))),
      ...line(labels.needed, size.needed(count(answer.needed))),
      ...line(labels.certainty, size.certainty(short(answer.confidence), short(answer.power))),
    ],
    ...(atHand.length > 0 ? [atHand] : []),
    wrapped(size.caution, 78, 2),
    labelled(words.screens.next, size.next, { indent: 0, at: 7 }),
  ]);
}
