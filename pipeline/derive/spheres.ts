import { fitNumbersOf } from '../../src/columns/table.js';
import { sphereAtInfinity } from '../../src/optics/lane.js';
import type { CanonicalTables } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';

/**
 * The sphere of every refraction: as found, or, where the policy says so and the lane is known, for an infinite
 * distance. What is followed over time and what is compared with a prediction start from here alike.
 */
export function spheresOf({ measurements }: CanonicalTables, { policies }: Plan): Float64Array {
  const sphere = fitNumbersOf(measurements.refractions, 'sphere');
  if (policies.lane === 'as-recorded') return sphere;
  const lane = fitNumbersOf(measurements.refractions, 'lane');
  return sphere.map((dioptres, row) =>
    Number.isNaN(lane[row] as number) ? dioptres : sphereAtInfinity(dioptres, lane[row] as number),
  );
}
