import { parseLaterality } from '../intake/laterality.js';
import type { DecimalMark } from '../intake/number.js';
import { isAcuity, isDate, isRefractionCell, isWhole, type Look, likeEnough } from './looks.js';
import type { Profile, ProfileWord } from './profile.js';

/** A quantity by its cells alone; `acuity` and `date` stand for any of their kind. */
export type Guess =
  | 'eye'
  | 'refraction'
  | 'date'
  | 'acuity'
  | 'radius'
  | 'power'
  | 'axial_length'
  | 'axis'
  | 'cylinder'
  | 'sphere'
  | 'lens_power'
  | 'ecd'
  | 'cct';

const hasDecimals = ({ value }: ProfileWord): boolean => !Number.isNaN(value) && !Number.isInteger(value);
const steps = (value: number, size: number): boolean => Math.abs(value / size - Math.round(value / size)) < 1e-6;

/** Looks so much of their own that the cells alone tell; a column may pass more than one. */
const guesses: readonly (readonly [Guess, Look])[] = [
  ['eye', ({ share, words }) => (words.length > 12 ? 0 : share(({ word }) => parseLaterality(word) !== undefined))],
  ['refraction', ({ share }, decimal) => share(({ word }) => isRefractionCell(word, decimal))],
  ['date', ({ share }) => share(isDate)],
  ['acuity', ({ share }, decimal) => share(({ word, value }) => Number.isNaN(value) && isAcuity(word, decimal))],
  ['radius', ({ share, within, words }) => (words.length > 5 && share(hasDecimals) > 0.5 ? within(6.5, 9.5) : 0)],
  ['power', ({ share, within }) => (share(hasDecimals) > 0.5 ? within(36, 50) : 0)],
  [
    'axial_length',
    ({ share, within, quantile }) =>
      share((one) => hasDecimals(one) && !steps(one.value, 0.5)) > 0.5 && quantile(0.5) > 21.5 ? within(20, 34) : 0,
  ],
  [
    'axis',
    ({ share, quantile }) =>
      quantile(0.98) > 100 && quantile(0.1) < 70
        ? share((one) => isWhole(one) && one.value >= 0 && one.value <= 180)
        : 0,
  ],
  [
    'cylinder',
    ({ share, quantile }) =>
      quantile(0.02) < -0.2 && quantile(0.9) <= 0
        ? share(({ value }) => steps(value, 0.25) && Math.abs(value) <= 8)
        : 0,
  ],
  [
    'sphere',
    ({ share, quantile }) =>
      quantile(0.1) < 0 && quantile(0.9) > 0 ? share(({ value }) => steps(value, 0.25) && Math.abs(value) <= 25) : 0,
  ],
  [
    'lens_power',
    ({ share, quantile }) =>
      quantile(0.5) >= 14 &&
      quantile(0.5) <= 27 &&
      quantile(0.1) > 5 &&
      share((one) => hasDecimals(one) && steps(one.value, 0.5)) > 0.2
        ? share(({ value }) => steps(value, 0.5) && value >= 5 && value <= 40)
        : 0,
  ],
  ['ecd', ({ quantile, within }) => (quantile(0.5) > 1000 ? within(500, 4000) : 0)],
  [
    'cct',
    ({ share, quantile }) =>
      quantile(0.5) > 450 && quantile(0.5) < 650
        ? share((one) => isWhole(one) && one.value >= 380 && one.value <= 750)
        : 0,
  ],
];

/** What a column is by its cells alone; undefined where they could be several things, or are too few. */
export function guessOf(profile: Profile, decimal: DecimalMark): Guess | undefined {
  if (profile.filled < 3) return undefined;
  return guesses.find(([, look]) => look(profile, decimal) >= likeEnough.surely)?.[0];
}
