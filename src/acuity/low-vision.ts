import type { LogMAR } from '../units.js';

/** Acuities that no chart measures, from best to worst; code 0 of a category column is none of them. */
export const lowVisionNames = ['count_fingers', 'hand_movements', 'light_perception', 'no_light_perception'] as const;

export type LowVision = (typeof lowVisionNames)[number];

/** The logMAR that stands for each. Conventions differ by up to 0.7: the one in use is printed. */
export type LowVisionTable = Readonly<Record<LowVision, LogMAR>>;

/** Default table: author table of imputations (Bach), read in a secondary source; an audit may declare another. */
export const defaultLowVision: LowVisionTable = {
  count_fingers: 1.9,
  hand_movements: 2.3,
  light_perception: 2.7,
  no_light_perception: 3.0,
};

/** Each spelling in lower case, without dots, dashes and double blanks. English, German, French. */
const spellings: Readonly<Record<LowVision, readonly string[]>> = {
  count_fingers: [
    'cf',
    'fc',
    'count fingers',
    'counts fingers',
    'counting fingers',
    'counting finger',
    'finger counting',
    'fingers',
    'fz',
    'fingerzählen',
    'fingerzaehlen',
    'finger zählen',
    'cld',
    'cd',
    'compte les doigts',
    'compte doigts',
    'compter les doigts',
  ],
  hand_movements: [
    'hm',
    'hand movement',
    'hand movements',
    'hand motion',
    'hand motions',
    'hbw',
    'hb',
    'handbewegung',
    'handbewegungen',
    'vbm',
    'vblm',
    'mdm',
    'voit bouger la main',
    'mouvement de la main',
    'mouvements de la main',
  ],
  light_perception: [
    'lp',
    'pl',
    'pol',
    'lp+',
    'pl+',
    'light perception',
    'perception of light',
    'ls',
    'ls+',
    'lichtschein',
    'lichtwahrnehmung',
    'perception lumineuse',
    'perception de lumière',
  ],
  no_light_perception: [
    'nlp',
    'npl',
    'pl-',
    'no light perception',
    'no perception of light',
    'no pl',
    'no lp',
    'nulla lux',
    'nullalux',
    'kein lichtschein',
    'keine lichtwahrnehmung',
    'ppl',
    'pas de perception lumineuse',
    'absence de perception lumineuse',
  ],
};

const categoryOf = new Map<string, LowVision>(
  lowVisionNames.flatMap((name) => spellings[name].map((spelling) => [spelling, name] as const)),
);

/** A distance behind the word, as in "CF 1 m" or "HM @ 30cm": recorded, not used. */
const distance = /\s*(?:(?:@|at|à|in|auf|bei)\s*)?\d+(?:[.,]\d+)?\s*(?:m|cm|ft|feet|'|mètres?|meter|metres?)$/;

/**
 * The low-vision category that a word names.
 *
 * @param word  as written; case, dots, and a distance behind it do not matter
 * @returns undefined where the word names none
 * @source abbreviations in common practice, no source
 * @example lowVisionOf('C.F. 1m') // 'count_fingers'
 */
export function lowVisionOf(word: string): LowVision | undefined {
  const plain = word
    .trim()
    .toLowerCase()
    .replace(/[\u2212\u2013\u2010\u2011]/g, '-')
    .replace(distance, '')
    .replace(/\./g, '')
    .replace(/\s+/g, ' ')
    .trim();
  return categoryOf.get(plain) ?? categoryOf.get(plain.replace(/-/g, ' '));
}

/**
 * Whether the category's table value may enter a mean. Perception of light and its absence are ranks, not acuities:
 * they are counted, and only the median uses them.
 *
 * @source settled for this project, after Holladay JT. J Cataract Refract Surg 2004;30
 * @example entersMeans('light_perception') // false
 */
export function entersMeans(category: LowVision): boolean {
  return category === 'count_fingers' || category === 'hand_movements';
}
