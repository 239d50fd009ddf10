import { analysedIn } from '../../src/eligibility/membership.js';
import { trendErrors, trendFields, trendName } from '../../src/measures/trends.js';
import type { Grouping, Membership } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';
import type { Points } from '../../src/records/report.js';
import { figurePoints } from './figure-points.js';

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
  const holds = (eye: number): boolean => analysed[eye] === 1;
  const errors = trendErrors(registry, column('prediction_error').some(Number.isFinite));
  const trends = errors.flatMap(({ name }) =>
    trendFields.map((field) => ({ name: trendName(field, name), x: column(field.measure), y: column(name), holds })),
  );
  const changes = { name: 'planned-achieved', x: column('planned_change'), y: column('achieved_change'), holds };
  return [figurePoints('planned-achieved', [changes], cohorts), figurePoints('error-trend', trends, cohorts)];
}
