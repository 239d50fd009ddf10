import {
  type Acuity,
  DECIMAL_LINES,
  FEET_LINES,
  logMarOfDecimal,
  logMarOfFeet,
  notWorse,
  read,
  uncorrected as uncorrectedLogMar,
} from './acuity.js';
import type { Anatomy } from './anatomy.js';
import { dayOf, weekday } from './calendar.js';
import { type Keratometry, keratometer, type Refraction, refract } from './devices.js';
import type { Patient } from './people.js';
import { type PowerMatrix, principal } from './power-matrix.js';
import type { Random } from './random.js';
import { DATA_UNTIL } from './truth.js';

/** One examination of one eye, as far as anything was written down. */
export interface Examination {
  readonly visit: 'before' | '1 month' | '3 months';
  /** Date, days since 1970-01-01. */
  readonly day: number;
  readonly refraction?: Refraction;
  readonly uncorrected?: Acuity;
  readonly corrected?: Acuity;
  readonly keratometry?: Keratometry;
  readonly lensAxis?: number;
}

/** What there is to see at an examination. */
export interface State {
  readonly correction: PowerMatrix;
  readonly cornea: PowerMatrix;
  readonly logMar: number;
  readonly lensAxis?: number;
}

type Visit = Examination['visit'];

/** Each lane's habits. */
const LANES = {
  North: { notation: 'minus', axisStep: 5, lines: DECIMAL_LINES.map(logMarOfDecimal) },
  South: { notation: 'plus', axisStep: 1, lines: FEET_LINES.map(logMarOfFeet) },
} as const;

/** Shares of visits at which nothing was refracted though the acuity was taken, and at which no keratometer stood by. */
const NOT_REFRACTED = 0.02;
const KERATOMETER_AT: Readonly<Record<Visit, number>> = { before: 1, '1 month': 0.25, '3 months': 0.96 };

export function examine(random: Random, patient: Patient, visit: Visit, day: number, state: State): Examination {
  const lane = LANES[patient.site];
  const { least, greatest } = principal(state.correction);
  const without = uncorrectedLogMar(state.logMar, (least + greatest) / 2, greatest - least);
  const corrected = read(random, state.logMar, lane.lines);
  const uncorrected = notWorse(read(random, without, lane.lines), corrected);
  const refraction = refract(random, state.correction, lane.notation, lane.axisStep);
  const keratometry = keratometer(random, state.cornea);
  const refracted = visit === 'before' || !random.chance(NOT_REFRACTED);
  const measured = random.chance(KERATOMETER_AT[visit]);
  return {
    visit,
    day,
    uncorrected,
    corrected,
    ...(refracted ? { refraction } : {}),
    ...(measured ? { keratometry } : {}),
    ...(state.lensAxis === undefined ? {} : { lensAxis: writtenAxis(state.lensAxis + random.normal()) }),
  };
}

/** A whole degree from 1 to 180. */
export function writtenAxis(axis: number): number {
  return ((Math.round(axis) + 179) % 180) + 1;
}

/** Days from surgery of a follow-up, inside the audit's windows but for one eye in sixty that comes much too late. */
function daysAfter(random: Random, visit: '1 month' | '3 months'): number {
  if (visit === '1 month') return Math.round(Math.min(42, Math.max(23, 30 + 4 * random.normal())));
  if (random.chance(1 / 60)) return random.whole(140, 190);
  return Math.round(Math.min(132, Math.max(60, 92 + 12 * random.normal())));
}

const LOST = 0.035;
const MISSED = { '1 month': 0.06, '3 months': 0.07 } as const;

/** Dates of the follow-up visits that took place before the data were exported. */
export function followUpDays(random: Random, surgery: number): ReadonlyMap<'1 month' | '3 months', number> {
  const lost = random.chance(LOST);
  const days = new Map<'1 month' | '3 months', number>();
  for (const visit of ['1 month', '3 months'] as const) {
    const day = weekday(surgery + daysAfter(random, visit));
    const missed = random.chance(MISSED[visit]);
    if (!lost && !missed && day <= dayOf(DATA_UNTIL)) days.set(visit, day);
  }
  return days;
}

/** logMAR with best correction before surgery: from a light cataract to a white one. */
export function clouded(random: Random): number {
  if (random.chance(0.025)) return 1.5 + 0.9 * random.uniform();
  return 0.16 - 0.26 * Math.log(random.uniform());
}

/** logMAR with best correction afterwards; a sick macula or nerve keeps some of the loss. */
export function cleared(random: Random, comorbidity: string, before: number): number {
  const healthy = -0.02 + 0.05 * random.normal();
  const sick = comorbidity !== '' && comorbidity !== 'none';
  return Math.min(before + 0.02, sick ? healthy + 0.28 * Math.abs(random.normal()) : healthy);
}

/** Correction before surgery: long eyes are short-sighted, and the cataract adds its own; what is rarer stays out. */
export function shortSightedness(random: Random, anatomy: Anatomy): number {
  return Math.max(-10.5, Math.min(6, -2.2 * (anatomy.axialLength - 23.6) - 0.3 + 0.9 * random.normal()));
}
