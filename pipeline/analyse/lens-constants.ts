import { type EyeGroup, pick } from '../../src/analysis/sample.js';
import { hitsOf } from '../../src/analysis/shares.js';
import { categoriesOf, integersOf, numbersOf } from '../../src/columns/table.js';
import { type About, estimated, rowAbout } from '../../src/comparison/rows.js';
import { analysedIn } from '../../src/eligibility/membership.js';
import { groupByCategory, missingGroup } from '../../src/groups/grouping.js';
import type { Formula } from '../../src/optics/formulas/formula.js';
import { formulaNamed, refusalOf } from '../../src/optics/formulas/index.js';
import { lensConstant } from '../../src/predictions/constant-interval.js';
import { type ConstantEyes, errorsAt } from '../../src/predictions/lens-constant.js';
import { lensField, recomputedFormulas } from '../../src/predictions/recomputed.js';
import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import type { ResultRow } from '../../src/records/result.js';
import { groupPair } from '../../src/results/index.js';
import { meanAbsolute } from '../../src/statistics/absolute-error.js';
import { meanInterval } from '../../src/statistics/mean.js';
import { indexPatients, type PatientIndex } from '../../src/statistics/patients.js';
import { shareInterval } from '../../src/statistics/share.js';
import { isWithin } from '../../src/statistics/within.js';
import { biometryIn } from './biometry.js';
import { type Groups, groupsFrom } from './groups.js';

/** Lenses weaker than this, of either sign, tell next to nothing of where they lie, dioptres. @source judgement */
const weakest = 2;
const limit = 0.5;

/** One lens and one formula: the eyes that can be asked, and what their rows are called. */
interface Asked {
  about: About;
  of: ConstantEyes;
  patients: PatientIndex;
  /** Constant declared for the lens; NaN where there is none. */
  declared: number;
  /** Eyes left out: with too weak a lens, refused by the formula. */
  weak: number;
  refused: number;
  confidence: number;
}

/** Every lens that is named, or all eyes where no export names one. */
function lensesOf({ tables, eyes }: Derived, all: EyeGroup): readonly EyeGroup[] {
  const field = lensField(tables);
  if (field === undefined) return [all];
  const groups = groupsFrom(groupByCategory(field, categoriesOf(eyes, field)), all.eyes);
  return groups.filter(({ key }) => key !== groupPair(field, missingGroup));
}

/** Makes, of one formula, the eyes of a lens that can be asked at any constant it may have. */
function askerOf(derived: Derived, formula: Formula, confidence: number): (lens: EyeGroup) => Asked {
  const { eyes, membership } = derived;
  const [power, biometryOf, analysed] = [
    numbersOf(derived.eyes, 'lens_power'),
    biometryIn(derived),
    analysedIn(membership.refraction),
  ];
  const [achieved, declared] = ['spherical_equivalent_compared', `lens_constant:${formula.name}`].map((name) =>
    numbersOf(eyes, name),
  ) as [Float64Array, Float64Array];
  const patient = integersOf(eyes, 'patient');
  const isRefused = (eye: number): boolean =>
    formula.bracket.some((constant) => refusalOf(formula, biometryOf(eye), power[eye] as number, constant));
  return (lens) => {
    const family = lens.eyes.filter((eye) => analysed[eye] === 1 && Number.isFinite(achieved[eye]));
    const fit = family.filter((eye) => !isRefused(eye));
    const used = fit.filter((eye) => Math.abs(power[eye] as number) >= weakest);
    const unit = formula.constant === 'A' ? '' : 'mm';
    return {
      about: { measure: `lens_constant:${formula.name}`, group: lens.key, eyes: family.length, unit },
      of: {
        formula,
        eyes: Array.from(used, (eye) => formula.eye(biometryOf(eye))),
        power: pick(power, used),
        achieved: pick(achieved, used),
      },
      patients: indexPatients(used.map((eye) => patient[eye] as number)),
      declared: declared[lens.eyes[0] ?? -1] ?? Number.NaN,
      weak: fit.length - used.length,
      refused: family.length - fit.length,
      confidence,
    };
  };
}

/** Mean, mean absolute error and share within ±0.50 D of errors made with one choice of constant. */
function errorRows({ about, patients, confidence }: Asked, errors: Float64Array, choice: string): readonly ResultRow[] {
  const hits = hitsOf(errors, (error) => isWithin(error, limit));
  const share = shareInterval(hits, patients, confidence, { method: 'wilson' });
  return [
    estimated(about, `mean_${choice}`, meanInterval(errors, patients, confidence), 'D'),
    estimated(about, `mean_absolute_${choice}`, meanAbsolute(errors, patients, confidence), 'D'),
    estimated(about, `share_within_0.50_${choice}`, share, 'share'),
    rowAbout(about, share, {
      statistic: `count_within_0.50_${choice}`,
      value: share.count,
      unit: 'eyes',
      method: 'count',
    }),
  ];
}

/** Absolute error of each eye with the constant of the other patients, less that with the constant used. */
function gain({ about, patients, confidence }: Asked, used: Float64Array, refitted: Float64Array): ResultRow {
  const change = refitted.map((error, eye) => Math.abs(error) - Math.abs(used[eye] as number));
  return estimated(about, 'change_mean_absolute', meanInterval(change, patients, confidence), 'D');
}

function constantRows(asked: Asked): readonly ResultRow[] {
  const { about, of, patients, declared, weak, refused, confidence } = asked;
  const { estimate, leftOut } = lensConstant(of, patients, confidence);
  const counted = (statistic: string, value: number): ResultRow =>
    rowAbout(about, estimate, { statistic, value, unit: 'eyes', method: 'count' });
  const used = Number.isNaN(declared) || estimate.n === 0 ? undefined : errorsAt(of, declared);
  // A constant far outside the bracket may put a lens where it makes no image.
  const known = used?.every(Number.isFinite) ? used : undefined;
  return [
    estimated(about, 'constant', estimate, about.unit),
    counted('count_weak_power', weak),
    counted('count_refused', refused),
    ...(Number.isNaN(declared)
      ? []
      : [rowAbout(about, estimate, { statistic: 'constant_used', value: declared, unit: about.unit })]),
    ...(known ? errorRows(asked, known, 'used') : []),
    ...(leftOut ? errorRows(asked, leftOut, 'refitted') : []),
    ...(known && leftOut ? [gain(asked, known, leftOut)] : []),
  ];
}

/**
 * For every lens and every formula that the audit computes: the constant that makes the mean error zero, and the errors
 * with the constant used beside those with the constant that the other patients lead to.
 */
export function lensConstantRows(derived: Derived, { all }: Groups, plan: Plan): readonly ResultRow[] {
  return recomputedFormulas(plan, derived.tables.formulas).flatMap(({ formula }) => {
    const asked = askerOf(derived, formulaNamed(formula), plan.statistics.confidence);
    return lensesOf(derived, all).flatMap((lens) => constantRows(asked(lens)));
  });
}
