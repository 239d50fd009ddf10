import { type SizeAnswer, type SizeQuestion, sizeScreen } from '../../src/screens/size.js';
import {
  type Certainty,
  eyesNeeded,
  sizeForMeans,
  sizeForNonInferiority,
  sizeForShares,
  sizeForSpread,
} from '../../src/statistics/size.js';
import { smallestEffect } from '../../src/statistics/size-inverse.js';
import { en } from '../../src/words/index.js';
import type { Reply } from './reply.js';

/** What all kinds of comparison share; shares in percent. */
export interface SizeOptions {
  bothEyes: number;
  correlation: number;
  loss: number;
  power: number;
  confidence: number;
  eyes?: number;
}

/** Independent eyes for the question with another effect: its difference, ratio or margin as asked. */
function independentEyes(question: SizeQuestion, certainty: Certainty): (effect: number) => number {
  switch (question.of) {
    case 'share':
      return (points) => sizeForShares(question.from / 100, (question.from + points) / 100, certainty);
    case 'mean':
      return (difference) => sizeForMeans(difference, question.sd, certainty);
    case 'spread':
      return (ratio) => (ratio <= 1 ? Number.POSITIVE_INFINITY : sizeForSpread(ratio, question.kurtosis, certainty));
    case 'margin':
      return (points) => sizeForNonInferiority(question.share / 100, points / 100, certainty);
  }
}

/** The effect as asked, and the largest that is possible. */
function effectOf(question: SizeQuestion): { asked: number; most: number } {
  switch (question.of) {
    case 'share':
      return { asked: question.to - question.from, most: 100 - question.from };
    case 'mean':
      return { asked: question.difference, most: 100 * question.sd };
    case 'spread':
      return { asked: question.ratio, most: 100 };
    case 'margin':
      return { asked: question.margin, most: 100 };
  }
}

/** `size`: eyes that a comparison needs, and what the eyes at hand can show. Reads and writes no file. */
export function size(question: SizeQuestion, options: SizeOptions): Reply {
  const { bothEyes, correlation, loss, eyes } = options;
  if (question.of === 'share' && question.from === question.to) return refused(en.size.equal, 'equal shares');
  const certainty = { confidence: options.confidence / 100, power: options.power / 100 };
  const needed = independentEyes(question, certainty);
  const { asked, most } = effectOf(question);
  const patients = { bilateral: bothEyes / 100, icc: correlation, loss: loss / 100 };
  const independent = needed(asked);
  const designEffect = 1 + ((1 + 3 * patients.bilateral) / (1 + patients.bilateral) - 1) * correlation;
  const effective = eyes === undefined ? undefined : (eyes * (1 - patients.loss)) / designEffect;
  const effect = effective === undefined ? undefined : smallestEffect(needed, effective, most);
  if (effective !== undefined && effect === undefined) return refused(en.size.beyond, 'too few eyes');
  const answer: SizeAnswer = {
    question,
    ...options,
    designEffect,
    independent,
    needed: eyesNeeded(independent, patients),
    atHand: eyes === undefined || effect === undefined ? undefined : { eyes, effect },
  };
  return { code: 0, screen: sizeScreen(answer, en), data: { outcome: 'sized', ...answer } };
}

function refused(text: string, reason: string): Reply {
  return {
    code: 2,
    screen: `${text}\n\n${en.screens.next}   ${en.size.equalNext}\n`,
    data: { outcome: 'not started', reason },
  };
}
