import { hasColumn, numbersOf } from '../../src/columns/table.js';
import { type CanonicalTables, spectacleMark } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';

/** 1 where audit.yaml says of the eye's source what the mark stands for. */
function marked({ eyes }: CanonicalTables, mark: string): (eye: number) => boolean {
  if (!hasColumn(eyes, mark)) return () => false;
  const values = numbersOf(eyes, mark);
  return (eye) => values[eye] === 1;
}

/** What audit.yaml declares for every eye, and fields that it says how to read; undefined for any other input. */
export function planInput(name: string, tables: CanonicalTables, plan: Plan): Float64Array | undefined {
  const { policies, predictions } = plan;
  const all = (value: number) => new Float64Array(tables.eyes.numRows()).fill(value);
  switch (name) {
    case 'policy.vertex':
      return all(policies.vertex_mm);
    case 'policy.restates_vertex':
      return all(policies.vertex === 'to-formula' ? 1 : 0);
    case 'policy.lane_to_infinity':
      return all(policies.lane === 'to-infinity' ? 1 : 0);
    case 'policy.lens_plane_ratio':
      return all(policies.lens_plane_ratio === 'each-eye' ? Number.NaN : policies.lens_plane_ratio);
    case 'incision_effect':
      return all(predictions.incision_effect?.magnitude ?? Number.NaN);
    case 'incision_effect.planned':
      return all(predictions.incision_effect?.magnitude ?? 0);
    case 'predicted_cylinder.vertex': {
      const isSpectacle = marked(tables, spectacleMark);
      return all(0).map((_, eye) => (isSpectacle(eye) ? policies.vertex_mm : 0));
    }
    default:
      return undefined;
  }
}
