/** Eyes that a lens model needs before its mean error is taken off. */
export const fewestForCentring = 10;

/** Fewer than these are enough, but what they give is provisional. */
export const manyForCentring = 30;

export interface GroupMeans {
  /** Mean of the eye's group; NaN where the group is too small. */
  mean: Float64Array;
  /** The same without the eye's own patient; NaN where nothing is left. */
  leftOut: Float64Array;
}

/** Running sum and count of one group, or of one patient inside it. */
interface Tally {
  sum: number;
  n: number;
}

function add(tallies: Map<string, Tally>, key: string, value: number): void {
  const tally = tallies.get(key) ?? { sum: 0, n: 0 };
  tallies.set(key, { sum: tally.sum + value, n: tally.n + 1 });
}

/**
 * Mean of a value over each group, with and without the eye's own patient.
 *
 * @param values   one an eye; NaN takes no part
 * @param group    group of each eye; 0 none
 * @param patient  patient of each eye
 * @source decision of the project: a group under 10 eyes has no mean worth taking off
 */
export function groupMeans(values: Float64Array, group: ArrayLike<number>, patient: Int32Array): GroupMeans {
  const groups = new Map<string, Tally>();
  const patients = new Map<string, Tally>();
  const keyOf = (eye: number): string => String(group[eye]);
  values.forEach((value, eye) => {
    if (Number.isNaN(value) || !group[eye]) return;
    add(groups, keyOf(eye), value);
    add(patients, `${keyOf(eye)} ${patient[eye]}`, value);
  });
  const none: Tally = { sum: 0, n: 0 };
  const mean = values.map((value, eye) => {
    const all = groups.get(keyOf(eye)) ?? none;
    return Number.isNaN(value) || all.n < fewestForCentring ? Number.NaN : all.sum / all.n;
  });
  const leftOut = mean.map((value, eye) => {
    const all = groups.get(keyOf(eye)) ?? none;
    const own = patients.get(`${keyOf(eye)} ${patient[eye]}`) ?? none;
    return Number.isNaN(value) || all.n === own.n ? Number.NaN : (all.sum - own.sum) / (all.n - own.n);
  });
  return { mean, leftOut };
}
