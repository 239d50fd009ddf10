/** Halvings that reach the grain of a double from any start. */
const halvings = 200;

/**
 * The smallest effect that a number of eyes shows: where the size a comparison needs falls to the eyes there are.
 *
 * @param needed  eyes for an effect; falls as the effect grows
 * @param eyes    eyes in each cohort, already divided by the design effect and less those lost
 * @param most    largest effect that is possible
 * @returns undefined where not even `most` can be seen
 * @source bisection of the sizes in `size.ts`
 * @example smallestEffect((d) => sizeForMeans(d, 0.45, certainty), 317.9, 10) // 0.10
 */
export function smallestEffect(needed: (effect: number) => number, eyes: number, most: number): number | undefined {
  if (!(needed(most) <= eyes)) return undefined;
  let [low, high] = [0, most];
  for (let i = 0; i < halvings; i++) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (needed(middle) <= eyes) high = middle;
    else low = middle;
  }
  return high;
}
