import { trendErrors, trendFields, trendName } from '../../src/analysis/trends.js';
import { categoryColumn } from '../../src/columns/category-column.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Grouping, Membership } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';
import type { Points } from '../../src/records/report.js';

/** Columns of the eyes by name. */
type Columns = ReadonlyMap<string, Float64Array>;

/** One panel: what stands on which axis. */
interface Panel {
  name: string;
  x: Float64Array;
  y: Float64Array;
}

/** One mark for each eye that has both values, panel by panel. */
function figurePoints(
  figure: string,
  panels: readonly Panel[],
  analysed: Uint8Array,
  cohorts: Grouping | undefined,
): Points {
  const drawn = panels.map(({ x, y }) =>
    Int32Array.from(x.keys()).filter(
      (eye) => analysed[eye] === 1 && Number.isFinite((x[eye] as number) + (y[eye] as number)),
    ),
  );
  const eyes = Int32Array.from(drawn.flatMap((one) => [...one]));
  const panelOf = Uint8Array.from(drawn.flatMap((one, index) => Array<number>(one.length).fill(index + 1)));
  const at = (axis: 'x' | 'y'): Float64Array =>
    Float64Array.from(eyes, (eye, row) => panels[(panelOf[row] as number) - 1]?.[axis][eye] as number);
  return {
    figure,
    panel: categoryColumn(['', ...panels.map(({ name }) => name)], panelOf),
    cohort: categoryColumn(
      ['', ...(cohorts?.names ?? [])],
      Uint8Array.from(eyes, (eye) => cohorts?.code[eye] ?? 0),
    ),
    x: at('x'),
    y: at('y'),
    eye: eyes,
  };
}

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
  const trends = errors.flatMap(({ name }) =>
    trendFields.map((field) => ({ name: trendName(field, name), x: column(field.measure), y: column(name) })),
  );
  const changes = { name: 'changes', x: column('planned_change'), y: column('achieved_change') };
  return [
    figurePoints('planned-achieved', [changes], analysed, cohorts),
    figurePoints('error-trend', trends, analysed, cohorts),
  ];
}
