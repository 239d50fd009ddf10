import { numbersOf } from '../../src/columns/table.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Derived } from '../../src/records/derived.js';
import type { Measure } from '../../src/records/measure.js';
import type { Plan } from '../../src/records/plan.js';
import { columnsOf, type MeasureColumns } from './columns.js';

/** A policy that was not chosen, and what it would add to each error that it moves. */
interface Other {
  name: string;
  shifts: Readonly<Record<string, Float64Array>>;
}

/** The errors with what another policy adds; an eye of which it does not know keeps its own. */
function shifted(columns: MeasureColumns, shift: Float64Array): MeasureColumns {
  return { ...columns, values: columns.values.map((error, eye) => error + (shift[eye] || 0)) };
}

/**
 * The headline errors by the other policy on the length of the lane, and on the vertex distance: as ways for the
 * sensitivity rows, where any analysed eye would be moved by it.
 */
export function policyWays(derived: Derived, { policies }: Plan) {
  const { eyes, membership } = derived;
  const analysed = analysedIn(membership.refraction);
  const lane = policies.lane === 'as-recorded' ? 'lane-to-infinity' : 'lane-as-recorded';
  const toInfinity = policies.lane === 'as-recorded' ? -1 : 1;
  const vertex = policies.vertex === 'as-recorded' ? 'vertex-to-formula' : 'vertex-as-recorded';
  const others: readonly Other[] = [
    {
      name: lane,
      shifts: {
        prediction_error: numbersOf(eyes, 'other_lane_shift'),
        // The target is compared with the refraction as recorded, which no vertex distance bends.
        target_error: numbersOf(eyes, 'lane@outcome').map((metres) => toInfinity / metres),
      },
    },
    { name: vertex, shifts: { prediction_error: numbersOf(eyes, 'other_vertex_shift') } },
  ];
  const moves = (shift: Float64Array): boolean =>
    shift.some((dioptres, eye) => analysed[eye] === 1 && Math.abs(dioptres) > 0);
  return others
    .filter(({ shifts }) => Object.values(shifts).some(moves))
    .map(({ name, shifts }) => ({
      pair: `sensitivity=${name}`,
      columns: (measure: Measure): MeasureColumns | undefined => {
        const shift = shifts[measure.name];
        return shift && shifted(columnsOf(measure, derived), shift);
      },
    }));
}
