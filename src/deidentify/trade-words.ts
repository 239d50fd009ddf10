import { wordsOf } from '../propose/header-words.js';
import { phrasesOf } from '../propose/phrases.js';
import { vocabularies } from '../propose/vocabulary/index.js';
import type { Vocabulary } from '../propose/vocabulary/vocabulary.js';

/** What clinics call files and places beside the words of their headers. @source words in common practice, no source */
const more = `export, exports, list, liste, listing, data, daten, donnees, report, bericht, file, table, theatre, theater,
  surgery, clinic, klinik, clinique, north, south, east, west, nord, sud, est, ouest, main, lane, lanes, keratometer,
  keratometry, biometer, biometry, biometrie, refractometer, refraction, autorefractor, topography, topographer, acuity,
  visus, prediction, predictions, cataract, cataracts, katarakt, cataracte, audit, outcome, outcomes, results, exam, exams,
  examination, examinations, visits, eyes, patients, operations, operationen, all, alle, raw, copy, new, old, year, month,
  january, february, march, april, may, june, july, august, september, october, november, december, januar, februar,
  märz, mai, juni, juli, oktober, dezember, janvier, fevrier, mars, avril, juin, juillet, aout, septembre, octobre,
  novembre, decembre, quarter, sheet, tabelle, feuille, wide, long, tidy, sample, test, none, nil, other, removed,
  uncomplicated, mild, moderate, severe, dense, soft, hard, yes, no, normal, present, absent, mature, white, brunescent,
  north site, south site, one, two, three, monofocal, toric, multifocal, aspheric, edof, trifocal`;

/** Every text of a vocabulary, whatever it lists. */
function textsOf(value: Vocabulary | string | object): readonly string[] {
  return typeof value === 'string' ? [value] : Object.values(value).flatMap(textsOf);
}

const words = new Set([...vocabularies.flatMap(textsOf), more].flatMap((text) => phrasesOf(text).flat()));

/** Whether a word, as `wordsOf` gives it, is one of the trade: it may stand anywhere, and names nobody. */
export function isTradeWord(word: string): boolean {
  return words.has(word) || /^\d{1,4}$/.test(word) || /^[a-z]{1,2}$/.test(word);
}

/** Whether a text consists of words of the trade, and of numbers between them. @example isTradeText('anterior capsule tear') // true */
export function isTradeText(text: string): boolean {
  const all = wordsOf(text);
  return all.some((word) => /[a-z]/.test(word)) && all.every(isTradeWord);
}
