import { vectorFigures } from '../../src/charts/vector-figures.js';
import { categoryColumn } from '../../src/columns/category-column.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Grouping, Membership } from '../../src/records/derived.js';
import type { Points } from '../../src/records/report.js';
import { type ShownVector, vectorOf } from '../../src/tables/vectors.js';

/** What marks are made from. */
interface Eyes {
  columns: ReadonlyMap<string, Float64Array>;
  membership: Membership;
  cohorts: Grouping | undefined;
  strata: readonly Grouping[];
}

/** The marks of one panel: a place for each eye, NaN where it has none. */
export interface Panel {
  name: string;
  x: Float64Array;
  y: Float64Array;
  /** Whether an eye belongs here. */
  holds: (eye: number) => boolean;
}

/** One mark for each analysed eye that has the vector, of every figure that shows it. */
export function pointsOf(eyes: Eyes): readonly Points[] {
  return vectorFigures.map(({ id, panels }) =>
    figurePoints(
      id,
      panels.map((name) => vectorPanel(eyes, vectorOf(name))),
      eyes.cohorts,
    ),
  );
}

function vectorPanel({ columns, membership, strata }: Eyes, { id, measure, family, stratum }: ShownVector): Panel {
  const analysed = analysedIn(membership[family]);
  const grouping = strata.find(({ field }) => field === stratum?.field);
  const code = grouping && stratum ? grouping.names.indexOf(stratum.value) + 1 : 0;
  return {
    name: id,
    x: columns.get(`${measure}_x`) as Float64Array,
    y: columns.get(`${measure}_y`) as Float64Array,
    holds: (eye) => analysed[eye] === 1 && (grouping === undefined || grouping.code[eye] === code),
  };
}

/** One mark for each eye of each panel of a figure. */
export function figurePoints(figure: string, panels: readonly Panel[], cohorts: Grouping | undefined): Points {
  const drawn = panels.map(({ x, y, holds }) =>
    Int32Array.from(x.keys()).filter((eye) => holds(eye) && !Number.isNaN((x[eye] as number) + (y[eye] as number))),
  );
  const length = drawn.reduce((sum, eyes) => sum + eyes.length, 0);
  const [panel, cohort] = [new Uint8Array(length), new Uint8Array(length)];
  const [x, y, eye] = [new Float64Array(length), new Float64Array(length), new Int32Array(length)];
  let at = 0;
  drawn.forEach((eyes, index) => {
    const own = panels[index] as Panel;
    for (const one of eyes) {
      panel[at] = index + 1;
      cohort[at] = cohorts?.code[one] ?? 0;
      x[at] = own.x[one] as number;
      y[at] = own.y[one] as number;
      eye[at] = one;
      at += 1;
    }
  });
  const panelNames = ['', ...panels.map(({ name }) => name)];
  const cohortNames = ['', ...(cohorts?.names ?? [])];
  return { figure, panel: categoryColumn(panelNames, panel), cohort: categoryColumn(cohortNames, cohort), x, y, eye };
}
