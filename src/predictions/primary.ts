/** The formula under which `predicted_se` of a surgery row stands. */
export const plannedFormula = 'planned';

/**
 * Which prediction is *the* prediction: the declared formula, else the one on the surgery row, else the only one.
 *
 * @param formulas  formulas that the data hold
 * @param declared  `predictions.primary_formula`
 * @returns undefined where nobody can tell: the audit has to say
 */
export function primaryFormula(formulas: readonly string[], declared: string | undefined): string | undefined {
  if (declared !== undefined) return declared;
  if (formulas.includes(plannedFormula)) return plannedFormula;
  return formulas.length === 1 ? formulas[0] : undefined;
}
