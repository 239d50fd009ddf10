import { entersMeans, lowVisionNames } from '../../src/acuity/low-vision.js';
import { categoriesOf, fitNumbersOf, hasColumn, integersOf, numbersOf } from '../../src/columns/table.js';
import { examColumns, eyeNumbers } from '../../src/eligibility/lookup.js';
import { recomputedPrediction } from '../../src/measures/recomputed.js';
import type { FormulaName } from '../../src/optics/formulas/formula.js';
import { predictedBy } from '../../src/predictions/predicted.js';
import { primaryFormula } from '../../src/predictions/primary.js';
import { declaredConstants, type Recomputed, recomputedFormulas } from '../../src/predictions/recomputed.js';
import { type CanonicalTables, type Kind, kinds, noDay } from '../../src/records/canonical.js';
import type { Plan } from '../../src/records/plan.js';
import { type Assembly, rowsAt } from '../../src/visits/assemble.js';
import { lensInput } from './lens-axes.js';
import { planInput } from './plan-inputs.js';
import { spheresOf } from './spheres.js';

/** A column of the eye-level table by the name a measure gives it: `sphere@outcome`, `predicted_se`, `age`. */
export type InputColumn = (name: string) => Float64Array;

function gathered(values: ArrayLike<number>, rows: Int32Array): Float64Array {
  return Float64Array.from(rows, (row) => (row < 0 ? Number.NaN : (values[row] as number)));
}

/** `cdva@before`, `flat@before`, `corrected.day@outcome`: a column of the examination chosen for each eye. */
function examInput(name: string, tables: CanonicalTables, assembly: Assembly): Float64Array {
  const [what = '', at] = name.split('@');
  const rowsOf = (kind: Kind): Int32Array => rowsAt(at, kind, assembly);
  const [first = '', second] = what.split('.');
  if (second === 'word') return wordInput(first, rowsOf, tables);
  if (second === 'day') {
    const kind = first as Kind;
    return gathered(integersOf(tables.measurements[kind], 'day'), rowsOf(kind)).map(labelledIsMissing);
  }
  const known = examColumns[first] ?? ownColumn(first);
  const table = tables.measurements[known.kind];
  const values = fitNumbersOf(table, known.column);
  return gathered(
    known.column === 'logMAR' ? withRanks(values, numbersOf(table, 'lowVision')) : values,
    rowsOf(known.kind),
  );
}

/** Light perception and its absence are ranks worse than every acuity: they enter medians and shares, never a mean. */
function withRanks(values: Float64Array, lowVision: Float64Array): Float64Array {
  return values.map((value, row) => {
    const word = lowVisionNames[(lowVision[row] as number) - 1];
    return word === undefined || entersMeans(word) ? value : Number.POSITIVE_INFINITY;
  });
}

/** `cdva.word@before`: 1 where the acuity is a low-vision word, 0 where it was measured. */
function wordInput(field: string, rowsOf: (kind: Kind) => Int32Array, tables: CanonicalTables): Float64Array {
  const kind = examColumns[field]?.kind;
  if (!kind) throw new RangeError(`derive: ${field} is no acuity`);
  const words = numbersOf(tables.measurements[kind], 'lowVision');
  return gathered(words, rowsOf(kind)).map((code) => (Number.isNaN(code) ? code : Math.sign(code)));
}

const labelledIsMissing = (day: number): number => (day === noDay ? Number.NaN : day);

/** The table that has a column of its own name. */
function ownColumn(column: string): { kind: Kind; column: string } {
  const kind = (Object.keys(kinds) as Kind[]).find((one) => (kinds[one] as readonly string[]).includes(column));
  if (!kind) throw new RangeError(`derive: no measurement has a column ${column}`);
  return { kind, column };
}

function eyeInput(name: string, tables: CanonicalTables): Float64Array {
  const { eyes } = tables;
  if (!hasColumn(eyes, name)) return new Float64Array(eyes.numRows()).fill(Number.NaN);
  const column: unknown = eyes.column(name);
  if (column instanceof Float64Array) return eyeNumbers(eyes, name) as Float64Array;
  if (column instanceof Int32Array) return Float64Array.from(column);
  return Float64Array.from(categoriesOf(eyes, name).codes, (code) => code || Number.NaN);
}

const constantInput = 'lens_constant:';

/** Where the primary prediction is one that the audit computes. */
function recomputedColumn(recomputed: Recomputed, input: InputColumn): Float64Array {
  const { inputs, of } = recomputedPrediction(recomputed);
  const columns = inputs.map(input);
  return (columns[0] as Float64Array).map((_, eye) => of(...columns.map((column) => column[eye] as number)));
}

/** Depth from the front of the cornea: where the export gives it from the back, the corneal thickness is added. */
function frontChamberDepth(tables: CanonicalTables, assembly: Assembly, plan: Plan): Float64Array {
  const depth = eyeInput('acd', tables);
  const columns = plan.sources.flatMap(({ blocks }) => blocks.flatMap((block) => block.columns));
  if (!columns.some(({ field, from }) => field === 'acd' && from === 'back')) return depth;
  const thickness = examInput('cct@before', tables, assembly);
  return depth.map((mm, eye) => mm + (thickness[eye] as number) / 1000);
}

/**
 * What the measures start from, gathered once an eye. A field that no export has is missing everywhere.
 */
export function inputColumns(tables: CanonicalTables, assembly: Assembly, plan: Plan): InputColumn {
  const primary = primaryFormula(tables.formulas, plan.predictions.primary_formula);
  const own = recomputedFormulas(plan, tables.formulas).find(({ label }) => label === primary);
  const input: InputColumn = (name) => {
    const ofPlan = planInput(name, tables, plan) ?? lensInput(name, tables, assembly);
    if (ofPlan) return ofPlan;
    if (name === 'predicted_se') return own ? recomputedColumn(own, input) : predictedBy(primary, tables);
    if (name.startsWith(constantInput))
      return declaredConstants(name.slice(constantInput.length) as FormulaName, tables, plan);
    if (name === 'acd@front') return frontChamberDepth(tables, assembly, plan);
    if (name.startsWith('sphere@'))
      return gathered(spheresOf(tables, plan), rowsAt(name.split('@')[1], 'refractions', assembly));
    if (name.startsWith('predicted_se:')) return predictedBy(name.slice('predicted_se:'.length), tables);
    if (name === 'vertex@outcome')
      return examInput(name, tables, assembly).map((mm) => (Number.isNaN(mm) ? plan.policies.vertex_mm : mm));
    return name.includes('@') ? examInput(name, tables, assembly) : eyeInput(name, tables);
  };
  return input;
}
