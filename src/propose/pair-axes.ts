import type { Context } from './context.js';
import type { Placed } from './placed.js';
import type { HeaderReading } from './read-header.js';
import type { Term } from './vocabulary/vocabulary.js';

/** The axis that belongs to a power. */
const axisOf: Readonly<Record<Term, Term>> = {
  cylinder: 'axis',
  k1: 'k1_axis',
  k2: 'k2_axis',
  k_flat: 'k_flat_axis',
  k_steep: 'k_steep_axis',
  k_cylinder: 'k_cylinder_axis',
  lens_cylinder: 'lens_axis_intended',
  predicted_cylinder: 'predicted_axis',
  total_corneal_cylinder: 'total_corneal_axis',
  posterior_corneal_cylinder: 'posterior_corneal_axis',
};

/** Columns without an axis of their own that may stand between a power and its axis. */
const mostBetween = 3;

/** A header that says no more than "axis": which one, its neighbours tell. */
export const isBareAxis = ({ matches }: HeaderReading): boolean =>
  matches.some(({ term, strength }) => term === 'axis' && strength > 1);

const keyOf = (term: Term, { visit, side }: Context): string => `${term}|${visit?.name}|${side}`;

/** Runs of neighbouring columns headed "axis" that are of one visit and eye. */
function runsOf(bare: readonly number[], contextOf: (index: number) => Context): readonly (readonly number[])[] {
  const runs: number[][] = [];
  for (const index of bare) {
    const last = runs.at(-1)?.at(-1);
    const goesOn = last === index - 1 && keyOf('', contextOf(last)) === keyOf('', contextOf(index));
    if (goesOn) runs.at(-1)?.push(index);
    else runs.push([index]);
  }
  return runs;
}

/** Powers to the left that still want an axis, nearest last, as many as there are axes. */
function powersBefore(
  run: readonly number[],
  columns: ReadonlyMap<number, Placed>,
  taken: ReadonlySet<string>,
  context: Context,
): Placed[] {
  const powers: Placed[] = [];
  let between = 0;
  for (let index = (run[0] as number) - 1; index >= 0 && between <= mostBetween; index--) {
    const one = columns.get(index);
    const axis = one && axisOf[one.term];
    const wants =
      one &&
      axis !== undefined &&
      keyOf('', one.context) === keyOf('', context) &&
      !taken.has(keyOf(axis, one.context));
    if (!wants) between++;
    else if (powers.length < run.length) powers.unshift(one);
    // One axis behind K1 and K2 may be that of either.
    else return one.term === 'k1' && powers[0]?.term === 'k2' ? [] : powers;
  }
  return powers;
}

/**
 * Which axis a column is that is headed "axis" and no more: that of the power to its left. Of several powers in a row
 * as many axes follow, in the same order.
 *
 * @param settled  columns whose meaning is known
 * @param bare     columns headed "axis", ascending
 * @returns those of them that the neighbours tell
 */
export function pairAxes(
  settled: ReadonlyMap<number, Placed>,
  bare: readonly number[],
  headers: readonly HeaderReading[],
): readonly Placed[] {
  const contextOf = (index: number): Context => headers[index]?.context ?? { visit: undefined, side: undefined };
  const taken = new Set([...settled.values()].map(({ term, context }) => keyOf(term, context)));
  return runsOf(bare, contextOf).flatMap((run) => {
    const powers = powersBefore(run, settled, taken, contextOf(run[0] as number));
    return powers.map(({ term, context }, at): Placed => {
      const axis = axisOf[term] as Term;
      taken.add(keyOf(axis, context));
      return { index: run[at] as number, term: axis, context, by: 'neighbours', likeness: 1, against: undefined };
    });
  });
}
