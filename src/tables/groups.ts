import type { Words } from '../words/index.js';

/** `field=value` pairs of a results group, decoded; none for 'all'. */
export function groupPairs(group: string): readonly (readonly [field: string, value: string])[] {
  if (group === 'all') return [];
  return group.split(';').map((pair) => {
    const at = pair.indexOf('=');
    if (at < 0) throw new RangeError(`groupPairs: "${group}"; expected field=value pairs, or all`);
    return [decodeURIComponent(pair.slice(0, at)), decodeURIComponent(pair.slice(at + 1))] as const;
  });
}

/** A group's value as readers see it: bands in words, '(missing)' as 'not recorded'. */
export function valueLabel(value: string, words: Words): string {
  if (value === '(missing)') return words.tables.missingGroup;
  const band = /^[[(](-|[\d.]+),(-|[\d.]+)[\])]$/.exec(value);
  if (!band) return value;
  const [, low = '-', high = '-'] = band;
  if (high === '-' && value.startsWith('[')) return words.tables.atLeast(low);
  return bandLabel(low, high, value.endsWith(']'), words);
}

/** A field's name as readers see it; a covariate keeps the name that audit.yaml gives it. */
export function fieldLabel(field: string, words: Words): string {
  return words.tables.fields[field] ?? field;
}

function bandLabel(low: string, high: string, closed: boolean, words: Words): string {
  const { above, below, fromTo, fromToBelow } = words.tables;
  if (low === '-') return below(high);
  if (high === '-') return above(low);
  return closed ? fromTo(low, high) : fromToBelow(low, high);
}
