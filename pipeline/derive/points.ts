import { vectorFigures } from '../../src/charts/vector-figures.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Grouping, Membership } from '../../src/records/derived.js';
import type { Points } from '../../src/records/report.js';
import { type ShownVector, vectorOf } from '../../src/tables/vectors.js';
import { figurePoints, type PanelEyes } from './figure-points.js';

/** What marks are made from. */
interface Eyes {
  columns: ReadonlyMap<string, Float64Array>;
  membership: Membership;
  cohorts: Grouping | undefined;
  strata: readonly Grouping[];
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

function vectorPanel({ columns, membership, strata }: Eyes, { id, measure, family, stratum }: ShownVector): PanelEyes {
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
