import { type Acuity, DECIMAL_LINES, logMarOfDecimal, notWorse, read, uncorrected } from './acuity.js';
import { dayOf, weekday } from './calendar.js';
import { biometer, type Keratometry, type Refraction, refract, toStep } from './devices.js';
import { correctionFor } from './eyes.js';
import { cleared, clouded } from './follow-up.js';
import { matrix, movedForward, plus } from './power-matrix.js';
import { type Random, stream } from './random.js';
import { SERIES, VERTEX } from './truth.js';

/** One eye of the second series; every patient has one. */
export interface SeriesEye {
  readonly code: string;
  readonly laterality: 'right' | 'left';
  readonly day: number;
  readonly age: number;
  readonly power: number;
  readonly axialLength: number;
  readonly predicted: number;
  /** Intended spherical equivalent: it matches the fellow eye's. */
  readonly aim: number;
  readonly keratometry: Keratometry;
  readonly before: { readonly corrected: Acuity };
  readonly after: {
    readonly day: number;
    readonly refraction: Refraction;
    readonly uncorrected: Acuity;
    readonly corrected: Acuity;
  };
}

const LINES = DECIMAL_LINES.map(logMarOfDecimal);

function seriesEye(random: Random, code: string, step: number): SeriesEye {
  const { residual, aim, meanError, errorSd } = SERIES;
  const horizontal = residual.horizontal + residual.spread * random.normal();
  const oblique = residual.oblique + residual.spread * random.normal();
  const predicted = toStep(aim + 0.25 * (random.uniform() - 0.5), 0.01);
  const achieved = predicted + meanError + errorSd * random.normal();
  const correction = movedForward(correctionFor(matrix(0, horizontal, oblique), achieved), VERTEX);
  const cornea = plus(matrix(43.8 + 1.1 * random.normal()), matrix(0, horizontal - 0.2, oblique));
  const cloudedLogMar = clouded(random);
  const logMar = cleared(random, 'none', cloudedLogMar);
  const corrected = read(random, logMar, LINES);
  const day = weekday(random.whole(dayOf('2025-01-06'), dayOf('2025-11-28')));
  const axialLength = toStep(27.6 + 0.9 * random.normal(), 0.01);
  return {
    code,
    laterality: random.chance(0.5) ? 'right' : 'left',
    day,
    age: Math.round(Math.min(85, 66 + 8 * random.normal())),
    power: toStep(19 - 2.2 * (axialLength - 27) + 0.5 * random.normal(), 0.5),
    axialLength,
    predicted,
    aim: aim + 0.25 * step,
    keratometry: biometer(random, cornea),
    before: { corrected: read(random, cloudedLogMar, LINES) },
    after: {
      day: weekday(day + random.whole(24, 40)),
      refraction: refract(random, correction, 'minus', 5),
      uncorrected: notWorse(read(random, uncorrected(logMar, achieved, 2), LINES), corrected),
      corrected,
    },
  };
}

/** The second series of one sample. */
export function makeSeries(seed: number): SeriesEye[] {
  return Array.from({ length: SERIES.eyes }, (_, i) => {
    const code = `W${201 + 7 * ((11 * i) % SERIES.eyes)}`;
    return seriesEye(stream(seed, `series ${code}`), code, stream(seed, `aim of ${code}`).whole(-1, 1));
  });
}
