import { unwrapped } from '../intake/signs.js';

/**
 * A patient's number, or name, as it is compared between files: without any blank, leading zeros kept.
 *
 * @param written  one cell as written
 * @returns '' for a blank cell
 * @source spellings in common practice, no source
 * @example recordKey(' 00 12\u00a034') // '001234'
 */
export function recordKey(written: string): string {
  return unwrapped(written).normalize('NFC').replace(/\s+/gu, '');
}

/**
 * Numbers that differ in leading zeros alone: a spreadsheet that takes a number for an amount drops them, and one
 * patient becomes two.
 *
 * @param keys  distinct numbers, as `recordKey` gives them
 * @returns how many numbers have such a double
 * @example doublesWithoutZeros(['0012', '12', '34']) // 2
 */
export function doublesWithoutZeros(keys: Iterable<string>): number {
  const met = new Map<string, number>();
  for (const key of keys) {
    if (!/^\d+$/.test(key)) continue;
    const bare = key.replace(/^0+(?=\d)/, '');
    met.set(bare, (met.get(bare) ?? 0) + 1);
  }
  return [...met.values()].reduce((sum, count) => sum + (count > 1 ? count : 0), 0);
}
