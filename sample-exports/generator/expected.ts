import { ACUITY_EFFECTS } from './effects/acuity.js';
import { ASTIGMATISM_EFFECTS } from './effects/astigmatism.js';
import type { Effect } from './effects/effect.js';
import { PREDICTION_EFFECTS } from './effects/prediction.js';
import { SERIES_EFFECTS } from './effects/series.js';
import { makeEyes } from './eyes.js';
import { outcomes } from './outcomes.js';
import { makeSeries } from './series.js';
import { mean, standardDeviation } from './sums.js';
import { SEED } from './truth.js';

/** What an audit of such a sample should find, and what it would find by a mistake. */
export interface Expected {
  /** The audit that finds it. */
  readonly audit: 'audit.yaml' | 'wide-audit.yaml';
  readonly measure: string;
  readonly group: string;
  readonly statistic: string;
  readonly planted?: string;
  /** Mean over many samples of the same making, slips apart. */
  readonly expected: number;
  /** How much one sample of this size strays from it (standard deviation over the samples). */
  readonly standardError: number;
  readonly mistakes: readonly Mistake[];
}

export interface Mistake {
  readonly mistake: string;
  readonly value: number;
  /** Distance from the expected value in standard errors. */
  readonly away: number;
}

/** Samples of the same making with other seeds; a thousandth of a dioptre is settled by so many. */
const SAMPLES = 100;

function settled(value: number): number {
  return Math.round(value * 1e4) / 1e4 + 0;
}

function expectedOf<Sample>(
  audit: Expected['audit'],
  effects: readonly Effect<Sample>[],
  samples: readonly Sample[],
): Expected[] {
  return effects.map(({ of, mistakes, ...named }) => {
    const values = samples.map(of);
    const expected = mean(values);
    const standardError = standardDeviation(values);
    const wrong = Object.entries(mistakes).map(([mistake, by]) => {
      const value = mean(samples.map(by));
      const away = Math.round((10 * Math.abs(value - expected)) / standardError) / 10;
      return { mistake, value: settled(value), away };
    });
    return { audit, ...named, expected: settled(expected), standardError: settled(standardError), mistakes: wrong };
  });
}

/** The planted effects of both series, worked out by making the sample again and again. */
export function expectedValues(): Expected[] {
  const seeds = Array.from({ length: SAMPLES }, (_, i) => SEED + 1 + i);
  const samples = seeds.map((seed) => outcomes(makeEyes(seed)));
  const effects = [...PREDICTION_EFFECTS, ...ASTIGMATISM_EFFECTS, ...ACUITY_EFFECTS];
  return [
    ...expectedOf('audit.yaml', effects, samples),
    ...expectedOf('wide-audit.yaml', SERIES_EFFECTS, seeds.map(makeSeries)),
  ];
}
