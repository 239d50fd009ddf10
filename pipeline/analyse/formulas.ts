import type { EyeGroup } from '../../src/analysis/sample.js';
import { integersOf, numbersOf } from '../../src/columns/table.js';
import { bandRows, type FormulaRows, formulaRows, sameEyes } from '../../src/comparison/formulas.js';
import { adjusted } from '../../src/comparison/primaries.js';
import { rowAbout } from '../../src/comparison/rows.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import { groupByBand } from '../../src/groups/grouping.js';
import { trendFields } from '../../src/predictions/trends.js';
import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { type Groups, groupsFrom } from './groups.js';

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

/** Bands of axial length and of mean keratometry, whether or not they are among the subgroups asked for. */
function bandsOf({ eyes }: Derived, { all }: Groups, { bands }: Plan): readonly EyeGroup[] {
  return trendFields.flatMap(({ field, measure }) => {
    const edges = bands[field];
    return edges === undefined ? [] : groupsFrom(groupByBand(field, numbersOf(eyes, measure), edges), all.eyes);
  });
}

/** Every other formula against the primary one, on the eyes that have both; all of them, and in bands. */
export function formulasCompared(derived: Derived, groups: Groups, plan: Plan): readonly ResultRow[] {
  const { all } = groups;
  const { eyes, membership, registry } = derived;
  const patient = integersOf(eyes, 'patient');
  const analysed = analysedIn(membership.refraction);
  const primary = numbersOf(eyes, 'prediction_error');
  const others = registry.filter(({ name }) => name.startsWith(otherFormula));
  const compared = (measure: string, unit: string, { key, eyes: own }: EyeGroup) => {
    const inFamily = own.filter((eye) => analysed[eye] === 1);
    return {
      about: { measure, group: key, eyes: inFamily.length, unit },
      same: sameEyes(numbersOf(eyes, measure), primary, patient, inFamily),
    };
  };
  const { confidence } = plan.statistics;
  const blocks = others.flatMap(({ name, unit }) => {
    const { about, same } = compared(name, unit, all);
    return formulaRows(about, same, confidence);
  });
  const bands = bandsOf(derived, groups, plan);
  const inBands = others.flatMap(({ name, unit }) =>
    bands.flatMap((band) => {
      const { about, same } = compared(name, unit, band);
      return about.eyes === 0 ? [] : bandRows(about, same, confidence);
    }),
  );
  return [...withHolm(blocks), ...inBands];
}
