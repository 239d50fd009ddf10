import { groupPair } from '../results/index.js';

/** Group of a comparison in results.csv: 'technique=laser-assisted vs manual'. */
export function comparisonGroup(field: string, compared: string, reference: string): string {
  return `${groupPair(field, compared)} vs ${groupPair(field, reference).slice(groupPair(field, '').length)}`;
}

/** A group with one pair more, pairs in alphabetical order; 'all' has none of its own. */
export function withPair(group: string, pair: string): string {
  return group === 'all' ? pair : [...group.split(';'), pair].sort().join(';');
}
