import { doubleAngleX, doubleAngleY } from '../optics/double-angle.js';
import { cornealPlanePower } from '../optics/vertex.js';
import type { Measure } from '../records/measure.js';

const vertexSource = 'definition of vergence; each principal meridian apart (Holladay, Moran, Kezirian 2001)';
const doubledSource = 'Holladay, Dudeja, Koch 1998, J Cataract Refract Surg 24:57-65';

const cornea = { family: 'astigmatism', kind: 'continuous', unit: 'D', plane: 'cornea', groupings: 'cohorts' } as const;

/** Steps towards the refraction at the corneal plane: the two principal meridians, then their difference. */
const steps: readonly Measure[] = [
  {
    ...cornea,
    name: 'corneal_plane_sphere_after',
    inputs: ['sphere@outcome', 'vertex@outcome'],
    formula: 'F / (1 − d F), F = sphere in plus notation, d in metres',
    source: vertexSource,
    step: true,
    of: (sphere, vertex) => cornealPlanePower(sphere, vertex),
  },
  {
    ...cornea,
    name: 'corneal_plane_cylinder_after',
    inputs: ['sphere@outcome', 'cylinder@outcome', 'vertex@outcome', 'corneal_plane_sphere_after'],
    formula: 'F / (1 − d F), F = sphere + cylinder; less the corneal-plane sphere',
    source: vertexSource,
    step: true,
    of: (sphere, cylinder, vertex, atCornea) => cornealPlanePower(sphere + cylinder, vertex) - atCornea,
  },
];

/** The two components of one cylinder in the doubled-angle plane; no cylinder is the zero vector. */
function vector(name: string, magnitude: string, axis: string, role?: Measure['role']): readonly Measure[] {
  const component = (part: 'x' | 'y', formula: string, of: (c: number, a: number) => number): Measure => ({
    ...cornea,
    name: `${name}_${part}`,
    vector: { name, component: part },
    kind: 'vector',
    ...(role ? { role } : {}),
    better: 'nearer zero',
    inputs: [magnitude, axis],
    formula,
    source: doubledSource,
    of,
  });
  return [
    component('x', 'C cos 2a, a = steep meridian', doubleAngleX),
    component('y', 'C sin 2a, a = steep meridian', doubleAngleY),
  ];
}

/** Astigmatism as vectors, at the corneal plane. */
export const astigmatismMeasures: readonly Measure[] = [
  ...steps,
  ...vector('corneal_cylinder_before', 'corneal_cylinder_magnitude_before', 'steepAxis@before', 'baseline'),
  ...vector('refractive_cylinder_after', 'corneal_plane_cylinder_after', 'axis@outcome'),
];
