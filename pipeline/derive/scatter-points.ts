import { analysedIn } from '../../src/eligibility/membership.js';
import { trendErrors, trendFields, trendName } from '../../src/predictions/trends.js';
import type { Grouping, Membership } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';
import type { Points } from '../../src/records/report.js';
import { figurePoints, type Panel } from './points.js';

/** Columns of the eyes by name. */
type Columns = ReadonlyMap<string, Float64Array>;

/** Marks of the figures of the spherical equivalent: achieved over planned change, errors over what the eye was before. */
export function scatterPoints(
  columns: Columns,
  registry: readonly Measure[],
  membership: Membership,
  cohorts: Grouping | undefined,
): readonly Points[] {
  const column = (name: string) => columns.get(name) as Float64Array;
  const analysed = analysedIn(membership.refraction);
  const errors = trendErrors(registry, column('prediction_error').some(Number.isFinite));
  const panel = (name: string, x: string, y: string): Panel => ({
    name,
    x: column(x),
    y: column(y),
    holds: (eye) => analysed[eye] === 1,
  });
  const trends = errors.flatMap(({ name }) =>
    trendFields.map((field) => panel(trendName(field, name), field.measure, name)),
  );
  return [
    figurePoints('planned-achieved', [panel('changes', 'planned_change', 'achieved_change')], cohorts),
    figurePoints('error-trend', trends, cohorts),
  ];
}
