/** Words for the sexes, in lower case. English, German, French. */
const sexWords: Readonly<Record<string, 'F' | 'M' | 'X'>> = {
  f: 'F',
  female: 'F',
  w: 'F',
  weiblich: 'F',
  femme: 'F',
  féminin: 'F',
  m: 'M',
  male: 'M',
  h: 'M',
  männlich: 'M',
  homme: 'M',
  masculin: 'M',
  x: 'X',
  d: 'X',
  diverse: 'X',
  divers: 'X',
};

/**
 * A sex as people write it; numbers mean nothing of themselves and must be declared.
 *
 * @returns undefined where the word names none
 * @source words in common practice, no source
 * @example parseSex('weiblich') // 'F'
 */
export function parseSex(word: string): 'F' | 'M' | 'X' | undefined {
  return sexWords[word.trim().toLowerCase()];
}
