/**
 * Edits between two words: letters put in, left out, exchanged for another, or swapped with the next one.
 *
 * @source optimal string alignment distance, restricted form of Damerau 1964, Commun ACM 7:171-176
 * @example editDistance('colums', 'columns') // 1
 */
export function editDistance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const above = rows[i - 1] as number[];
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const exchanged = (above[j - 1] as number) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swap = swapped ? (rows[i - 2]?.[j - 2] as number) + 1 : Number.POSITIVE_INFINITY;
      row.push(Math.min((above[j] as number) + 1, (row[j - 1] as number) + 1, exchanged, swap));
    }
    rows.push(row);
  }
  return rows[a.length]?.[b.length] as number;
}

const plain = (word: string): string => word.toLowerCase().replace(/[\s_-]+/g, '_');

/**
 * The known word that a reader most likely meant.
 *
 * Case, blanks, hyphens and underscores count as alike. A third of the letters may differ, three at the most:
 * beyond that a suggestion misleads.
 *
 * @returns undefined where no known word is near; of several equally near the first
 * @example nearest('speher', ['axis', 'sphere']) // 'sphere'
 */
export function nearest(word: string, known: readonly string[]): string | undefined {
  const limit = Math.min(3, Math.floor(word.length / 3));
  let best: string | undefined;
  let least = limit + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - word.length) >= least) continue;
    const distance = editDistance(plain(word), plain(candidate));
    if (distance < least) [best, least] = [candidate, distance];
  }
  return best;
}
