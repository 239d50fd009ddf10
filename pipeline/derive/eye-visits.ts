import { type ColumnTable, table } from 'arquero';
import { numbersOf } from '../../src/columns/table.js';
import { sphericalEquivalent } from '../../src/optics/spherical-equivalent.js';
import type { CanonicalTables } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';
import type { Assembly } from '../../src/visits/assemble.js';
import { spheresOf } from './spheres.js';

/** One row an eye and declared visit with an examination: what is followed over time. */
export function eyeVisitsOf(tables: CanonicalTables, assembly: Assembly, plan: Plan): ColumnTable {
  const seen = assembly.visits.flatMap((visit) =>
    [...visit.seen.keys()].filter((eye) => visit.seen[eye]).map((eye) => ({ visit, eye })),
  );
  const { refractions, corrected, uncorrected } = tables.measurements;
  const valueAt = (values: Float64Array, row: number | undefined): number =>
    row === undefined || row < 0 ? Number.NaN : (values[row] as number);
  const sphere = spheresOf(tables, plan);
  const cylinder = numbersOf(refractions, 'cylinder');
  return table({
    eye: Int32Array.from(seen, ({ eye }) => eye),
    visit: Int32Array.from(seen, ({ visit }) => visit.rule.index),
    day: Int32Array.from(seen, ({ visit, eye }) => visit.anchorDay[eye] as number),
    spherical_equivalent: Float64Array.from(seen, ({ visit, eye }) => {
      const row = visit.rows.refractions[eye];
      return sphericalEquivalent(valueAt(sphere, row), valueAt(cylinder, row));
    }),
    cylinder: Float64Array.from(seen, ({ visit, eye }) => valueAt(cylinder, visit.rows.refractions[eye])),
    cdva: Float64Array.from(seen, ({ visit, eye }) =>
      valueAt(numbersOf(corrected, 'logMAR'), visit.rows.corrected[eye]),
    ),
    udva: Float64Array.from(seen, ({ visit, eye }) =>
      valueAt(numbersOf(uncorrected, 'logMAR'), visit.rows.uncorrected[eye]),
    ),
  });
}
