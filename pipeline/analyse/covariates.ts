import { categoriesOf, hasColumn } from '../../src/columns/table.js';
import type { Covariate } from '../../src/comparison/model-matrix.js';
import { eyeNumbers } from '../../src/eligibility/lookup.js';
import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';

/** Fields whose column of the eyes has another name. */
const columnNames: Readonly<Record<string, string>> = {
  k_mean: 'k_mean_before',
  eye: 'laterality',
  surgery_year: 'year',
  surgery_order: 'order',
};

/** A field as its export gives it, else a measure; what no export has is missing in every eye. */
function covariateOf(name: string, { eyes: derived, tables }: Derived): Covariate {
  const column = columnNames[name] ?? name;
  const eyes = hasColumn(tables.eyes, column) ? tables.eyes : derived;
  if (!hasColumn(eyes, column)) return { name, kind: 'category', codes: new Uint8Array(eyes.numRows()) };
  const found: unknown = eyes.column(column);
  if (found instanceof Int32Array) return { name, kind: 'number', values: found };
  if (!(found instanceof Float64Array)) return { name, kind: 'category', codes: categoriesOf(eyes, column).codes };
  return { name, kind: 'number', values: eyeNumbers(eyes, column) as Float64Array };
}

/** What adjusted comparisons are adjusted for, in the order declared. */
export function covariatesOf(derived: Derived, plan: Plan): readonly Covariate[] {
  return plan.statistics.adjust_for.map((name) => covariateOf(name, derived));
}
