import { integersOf, numbersOf } from '../../src/columns/table.js';
import { type FormulaRows, formulaRows, sameEyes } from '../../src/comparison/formulas.js';
import { adjusted } from '../../src/comparison/primaries.js';
import { rowAbout } from '../../src/comparison/rows.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import type { Groups } from './groups.js';

/** Measures of the other formulas' prediction errors: `prediction_error:<formula>`. */
const otherFormula = 'prediction_error:';

/** Holm over the pairs of formulas, apart for each way of comparing them. */
function withHolm(blocks: readonly FormulaRows[]): readonly ResultRow[] {
  return blocks.flatMap((block) => {
    const family = blocks.filter(({ statistic }) => statistic === block.statistic);
    const value = adjusted(family.map(({ p }) => p))[family.indexOf(block)];
    const [first] = block.rows;
    if (!first || value === undefined) return block.rows;
    const parts = { statistic: `p_adjusted:${block.statistic}`, value, method: 'holm' };
    return [...block.rows, rowAbout(block.about, first, parts)];
  });
}

/** Every other formula against the primary one, on the eyes that have both. */
export function formulasCompared(derived: Derived, { all }: Groups, plan: Plan): readonly ResultRow[] {
  const { eyes, membership, registry } = derived;
  const patient = integersOf(eyes, 'patient');
  const analysed = analysedIn(membership.refraction);
  const inFamily = all.eyes.filter((eye) => analysed[eye] === 1);
  const primary = numbersOf(eyes, 'prediction_error');
  const others = registry.filter(({ name }) => name.startsWith(otherFormula));
  const blocks = others.flatMap(({ name, unit }) => {
    const about = { measure: name, group: all.key, eyes: inFamily.length, unit };
    const same = sameEyes(numbersOf(eyes, name), primary, patient, inFamily);
    return formulaRows(about, same, plan.statistics.confidence);
  });
  return withHolm(blocks);
}
