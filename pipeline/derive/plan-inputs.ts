import { fitNumbersOf, hasColumn, numbersOf } from '../../src/columns/table.js';
import { type CanonicalTables, markColumns } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';

/** A column of the eyes; missing everywhere where no export has the field. */
function ofEyes({ eyes }: CanonicalTables, name: string): Float64Array {
  return hasColumn(eyes, name) ? fitNumbersOf(eyes, name) : new Float64Array(eyes.numRows()).fill(Number.NaN);
}

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
    case 'policy.lens_plane_ratio':
      return all(policies.lens_plane_ratio === 'each-eye' ? Number.NaN : policies.lens_plane_ratio);
    case 'incision_effect':
      return all(predictions.incision_effect?.magnitude ?? Number.NaN);
    case 'incision_effect.planned':
      return all(predictions.incision_effect?.magnitude ?? 0);
    case 'predicted_cylinder.vertex': {
      const isSpectacle = marked(tables, markColumns.spectacle);
      return all(0).map((_, eye) => (isSpectacle(eye) ? policies.vertex_mm : 0));
    }
    case 'lens_power.se': {
      const isSphere = marked(tables, markColumns.sphere);
      const cylinder = ofEyes(tables, 'lens_cylinder');
      return ofEyes(tables, 'lens_power').map((power, eye) =>
        isSphere(eye) ? power + (cylinder[eye] as number) / 2 : power,
      );
    }
    default:
      return undefined;
  }
}
