import { withPair } from '../comparison/group.js';
import { groupPair, type Results } from '../results/index.js';
import type { Words } from '../words/index.js';

/** A vector by the name of its words, and of its panel among the points. */
export type VectorId = keyof Words['tables']['vectors']['named'];

/** A cylinder vector that readers are shown. */
export interface ShownVector {
  id: VectorId;
  measure: string;
  /** The eyes whose flow tells who is not shown. */
  family: 'astigmatism' | 'cornea' | 'toric';
  /** Shown of these eyes alone, as all eyes together would mix what may not be mixed. */
  stratum?: { field: string; value: string };
  /** Says nothing new, and is not shown, where it has the eyes of this one. */
  within?: VectorId;
}

const vectors: readonly ShownVector[] = [
  { id: 'corneal_cylinder_before', measure: 'corneal_cylinder_before', family: 'astigmatism' },
  { id: 'corneal_cylinder_after', measure: 'corneal_cylinder_after', family: 'cornea' },
  { id: 'refractive_cylinder_after', measure: 'refractive_cylinder_after', family: 'astigmatism' },
  ...(['right', 'left'] as const).map((value): ShownVector => {
    const stratum = { field: 'eye', value };
    return { id: `induced_${value}`, measure: 'induced_corneal_cylinder', family: 'cornea', stratum };
  }),
  { id: 'induced_in_incision_frame', measure: 'induced_in_incision_frame', family: 'cornea' },
  { id: 'cylinder_prediction_error', measure: 'cylinder_prediction_error', family: 'astigmatism' },
  {
    id: 'cylinder_prediction_error:toric',
    measure: 'cylinder_prediction_error:toric',
    family: 'toric',
    within: 'cylinder_prediction_error',
  },
  { id: 'split_predicted', measure: 'split_predicted', family: 'toric' },
  { id: 'split_residual', measure: 'split_residual', family: 'toric' },
];

/** Vectors by name. */
export function vectorOf(id: VectorId): ShownVector {
  const found = vectors.find((vector) => vector.id === id);
  if (!found) throw new RangeError(`vectorOf: "${id}"; expected one of ${vectors.map((one) => one.id).join(', ')}`);
  return found;
}

/** The results group of a vector within a group: 'eye=right', 'eye=right;technique=manual'. */
export function vectorGroup({ stratum }: ShownVector, group: string): string {
  if (!stratum) return group;
  return withPair(group, groupPair(stratum.field, stratum.value));
}

/** Those of the given vectors that some eye has. */
export function vectorsShown(results: Results, ids: readonly VectorId[]): readonly ShownVector[] {
  const eyesOf = (vector: ShownVector): number =>
    results.find(vector.measure, vectorGroup(vector, 'all'), 'n')?.value ?? 0;
  return ids
    .map(vectorOf)
    .filter((vector) => eyesOf(vector) > 0)
    .filter((vector) => vector.within === undefined || eyesOf(vectorOf(vector.within)) > eyesOf(vector));
}
