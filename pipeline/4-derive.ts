import { type ColumnTable, table } from 'arquero';
import { categoriesOf, hasColumn, integersOf } from '../src/columns/table.js';
import { eyeNumbers } from '../src/eligibility/lookup.js';
import { analysedIn, distanceTarget, membershipOf } from '../src/eligibility/membership.js';
import { astigmatismStrata } from '../src/groups/astigmatism.js';
import { groupMeans } from '../src/measures/centring.js';
import { measureRegistry } from '../src/measures/index.js';
import { complicationPrefix } from '../src/measures/safety.js';
import { primaryFormula } from '../src/predictions/primary.js';
import { lensField, recomputedFormulas } from '../src/predictions/recomputed.js';
import type { CanonicalTables } from '../src/records/canonical.js';
import type { Derived, Membership } from '../src/records/derived.js';
import type { Measure } from '../src/records/measure.js';
import type { Plan } from '../src/records/plan.js';
import { assembleVisits } from '../src/visits/assemble.js';
import { cohortsOf, resourceStrata, subgroupsOf } from './derive/cohorts.js';
import { countsOf } from './derive/counts.js';
import { eyeVisitsOf } from './derive/eye-visits.js';
import { type InputColumn, inputColumns } from './derive/inputs.js';
import { pointsOf } from './derive/points.js';
import { scatterPoints } from './derive/scatter-points.js';

/** Columns of the eyes computed so far, by name. */
type Computed = Map<string, Float64Array>;

/** One measure over all eyes: the registry's function, looped. */
function computeMeasure(measure: Measure, computed: Computed, input: InputColumn, eyes: number): Float64Array {
  const columns = measure.inputs.map((name) => {
    const column = computed.get(name) ?? input(name);
    computed.set(name, column);
    return column;
  });
  const values = new Float64Array(eyes);
  const arguments_ = new Array<number>(columns.length);
  for (let eye = 0; eye < eyes; eye++) {
    columns.forEach((column, i) => {
      arguments_[i] = column[eye] as number;
    });
    values[eye] = measure.of(...arguments_);
  }
  return values;
}

/** Group means of the prediction error, over the eyes analysed for it, all cohorts together. */
function addGroupMeans(computed: Computed, tables: CanonicalTables, membership: Membership): void {
  const analysed = analysedIn(membership.refraction);
  const errors = computed.get('prediction_error') as Float64Array;
  const field = lensField(tables);
  const group = field ? categoriesOf(tables.eyes, field).codes : new Uint8Array(errors.length).fill(1);
  const used = errors.map((error, eye) => (analysed[eye] ? error : Number.NaN));
  const { mean, leftOut } = groupMeans(used, group, integersOf(tables.eyes, 'patient'));
  computed.set('prediction_error.group_mean', mean);
  computed.set('prediction_error.group_mean_left_out', leftOut);
}

/** Whether the target of a treatment is the predicted residual: where every toric eye analysed has one. Else it is 0. */
function addTarget(computed: Computed, input: InputColumn, membership: Membership): void {
  const analysed = analysedIn(membership.astigmatism);
  const predicted = computed.get('predicted_residual_x') as Float64Array;
  const lens = input('lens_cylinder');
  const toric = [...analysed.keys()].filter((eye) => analysed[eye] && (lens[eye] as number) > 0);
  const all = toric.length > 0 && toric.every((eye) => !Number.isNaN(predicted[eye] as number));
  computed.set('treatment.target_is_predicted', new Float64Array(predicted.length).fill(all ? 1 : 0));
}

/** 1 where an eye has something to compare its refraction with. */
function referenceOf(input: InputColumn): Uint8Array {
  const target = input('target_se');
  return Uint8Array.from(input('predicted_se'), (predicted, eye) =>
    Number.isNaN(predicted) && Number.isNaN(target[eye] as number) ? 0 : 1,
  );
}

/**
 * Stage 4 · derive: what is known of each eye?
 *
 * in       canonical tables whose states qualify has set
 * out      one row an eye with every measure of the registry; who is analysed in which family; points for charts
 * promise  operated = analysed + reasons, per family (asserted); every measure comes from the registry
 */
export function derive(tables: CanonicalTables, plan: Plan): Derived {
  const eyes = tables.eyes.numRows();
  const assembly = assembleVisits(tables, plan);
  const input = inputColumns(tables, assembly, plan);
  const primary = primaryFormula(tables.formulas, plan.predictions.primary_formula);
  const supplied = tables.formulas.filter((formula) => formula !== primary);
  const known = measureRegistry(supplied, recomputedFormulas(plan, tables.formulas), primary, complicationsIn(tables));
  const registry = known.filter((measure) => !measure.whereRecorded || isRecorded(measure, input));
  const distance = distanceTarget(input('target_se'), plan.acuity.distance_target);
  const membership = membershipOf(tables, assembly, referenceOf(input), distance, plan);
  assertFlow(membership, eyes);

  const computed: Computed = new Map();
  const compute = (measure: Measure): void => {
    computed.set(measure.name, computeMeasure(measure, computed, input, eyes));
  };
  registry.filter((measure) => !measure.second).forEach(compute);
  addGroupMeans(computed, tables, membership);
  addTarget(computed, input, membership);
  registry.filter((measure) => measure.second).forEach(compute);

  const isMeasure = new Set(registry.map(({ name }) => name));
  const numbers = (name: string) => (isMeasure.has(name) ? computed.get(name) : numbersIfAny(tables, name));
  const cohorts = cohortsOf(tables, assembly, numbers, plan);
  const strata = [
    ...astigmatismStrata((name) => computed.get(name) ?? input(name)),
    ...resourceStrata(tables, numbers, plan),
  ];
  return {
    eyes: withMeasures(tables, computed, isMeasure),
    eyeVisits: eyeVisitsOf(tables, assembly, plan),
    assembly,
    membership,
    registry,
    cohorts,
    subgroups: subgroupsOf(tables, numbers, plan),
    strata,
    points: [
      ...pointsOf({ columns: computed, membership, cohorts, strata }),
      ...scatterPoints(computed, registry, membership, cohorts),
    ],
    counts: countsOf(tables, assembly, membership, input('target_se')),
    tables,
  };
}

/** The eyes with every measure and what it was made of; a field that is no measure stays what it was. */
function withMeasures(tables: CanonicalTables, computed: Computed, isMeasure: ReadonlySet<string>): ColumnTable {
  const added = [...computed].filter(([name]) => isMeasure.has(name) || !hasColumn(tables.eyes, name));
  return tables.eyes.assign(table(Object.fromEntries(added)));
}

/** Names of the complications that harmonise found columns for. */
function complicationsIn({ eyes }: CanonicalTables): readonly string[] {
  return eyes
    .columnNames()
    .filter((name) => name.startsWith(complicationPrefix))
    .map((name) => name.slice(complicationPrefix.length));
}

/** Whether any eye has what the measure starts from. */
function isRecorded({ inputs }: Measure, input: InputColumn): boolean {
  return input(inputs[0] as string).some((value) => !Number.isNaN(value));
}

function numbersIfAny(tables: CanonicalTables, name: string): Float64Array | undefined {
  const column: unknown = tables.eyes.column(name);
  return column instanceof Float64Array ? eyeNumbers(tables.eyes, name) : undefined;
}

function assertFlow(membership: Membership, eyes: number): void {
  for (const { family, steps, code } of Object.values(membership)) {
    if (code.length !== eyes || code.some((step) => step >= steps.length)) {
      throw new RangeError(`derive: flow of ${family} does not hold every operated eye exactly once`);
    }
  }
}
