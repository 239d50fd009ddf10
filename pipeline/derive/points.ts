import { categoryColumn } from '../../src/columns/category-column.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Grouping, Membership } from '../../src/records/derived.js';
import type { Points } from '../../src/records/report.js';

/** Cylinder vectors that the double-angle figure shows, one panel each. */
const doubleAnglePanels = ['corneal_cylinder_before', 'refractive_cylinder_after'] as const;

/** One mark for each analysed eye that has the vector. */
export function doubleAnglePoints(
  columns: ReadonlyMap<string, Float64Array>,
  membership: Membership,
  cohorts: Grouping | undefined,
): readonly Points[] {
  const analysed = analysedIn(membership.astigmatism);
  const marks = doubleAnglePanels.flatMap((name, panel) => {
    const x = columns.get(`${name}_x`) as Float64Array;
    const y = columns.get(`${name}_y`) as Float64Array;
    const drawn = [...analysed.keys()].filter(
      (eye) => analysed[eye] && !Number.isNaN((x[eye] as number) + (y[eye] as number)),
    );
    return drawn.map((eye) => ({ panel: panel + 1, eye, x: x[eye] as number, y: y[eye] as number }));
  });
  const cohortNames = ['', ...(cohorts?.names ?? [])];
  return [
    {
      figure: 'double-angle',
      panel: categoryColumn(
        ['', ...doubleAnglePanels],
        Uint8Array.from(marks, (mark) => mark.panel),
      ),
      cohort: categoryColumn(
        cohortNames,
        Uint8Array.from(marks, ({ eye }) => cohorts?.code[eye] ?? 0),
      ),
      x: Float64Array.from(marks, (mark) => mark.x),
      y: Float64Array.from(marks, (mark) => mark.y),
      eye: Int32Array.from(marks, (mark) => mark.eye),
    },
  ];
}
