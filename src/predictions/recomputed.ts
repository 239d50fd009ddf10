import { categoriesOf, hasColumn } from '../columns/table.js';
import { type FormulaName, formulaNames } from '../optics/formulas/formula.js';
import type { CanonicalTables } from '../records/canonical.js';
import type { Plan } from '../records/plan.js';

/** A formula that the audit computes itself. */
export interface Recomputed {
  /** Its name in the results: never that of a supplied prediction, which was made before surgery. */
  label: string;
  formula: FormulaName;
}

const suffix = ', recomputed';

/**
 * The formulas that `predictions.recompute` asks for, under names of their own.
 *
 * @param supplied  formulas whose predictions the exports bring
 * @example recomputedFormulas(plan, ['SRK/T'])[0].label // 'SRK/T, recomputed'
 */
export function recomputedFormulas({ predictions }: Pick<Plan, 'predictions'>, supplied: readonly string[]) {
  return formulaNames
    .filter((formula) => predictions.recompute.includes(formula))
    .map((formula): Recomputed => ({ label: supplied.includes(formula) ? `${formula}${suffix}` : formula, formula }));
}

/** Which field says that lenses share a constant; undefined where no export names a lens. */
export function lensField({ eyes }: Pick<CanonicalTables, 'eyes'>): 'lens_family' | 'lens_model' | undefined {
  return (['lens_family', 'lens_model'] as const).find((name) => hasColumn(eyes, name));
}

/**
 * The declared constant of each eye's lens for one formula.
 *
 * @returns NaN where the eye's lens is not named, or has no constant for the formula
 * @example declaredConstants('SRK/T', tables, plan)[eye] // 118.9
 */
export function declaredConstants(formula: FormulaName, tables: CanonicalTables, { predictions }: Plan): Float64Array {
  const field = lensField(tables);
  const missing = new Float64Array(tables.eyes.numRows()).fill(Number.NaN);
  if (field === undefined) return missing;
  const lens = categoriesOf(tables.eyes, field);
  return missing.map((none, eye) => predictions.constants[lens.at(eye) ?? '']?.[formula] ?? none);
}
