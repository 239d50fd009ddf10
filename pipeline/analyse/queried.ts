import { hasColumn, integersOf, statesOf } from '../../src/columns/table.js';
import { examColumns } from '../../src/eligibility/lookup.js';
import { primaryFormula } from '../../src/predictions/primary.js';
import { type Kind, kinds } from '../../src/records/canonical.js';
import type { Derived } from '../../src/records/derived.js';
import type { Plan } from '../../src/records/plan.js';
import { rowsAt } from '../../src/visits/assemble.js';

const queried = 1;

/** The measurement table behind an input such as `sphere@outcome`, `corrected.day@outcome`. */
function kindOf(input: string): Kind {
  const [first = ''] = input.split(/[@.]/);
  const names = Object.keys(kinds) as Kind[];
  const found =
    examColumns[first]?.kind ??
    names.find((kind) => kind === first || (kinds[kind] as readonly string[]).includes(first));
  if (!found) throw new RangeError(`queriedEyes: no measurement holds ${input}`);
  return found;
}

function markExam(input: string, { assembly, tables }: Derived, marks: Uint8Array): void {
  const kind = kindOf(input);
  const rows = rowsAt(input.split('@')[1], kind, assembly);
  const states = statesOf(tables.measurements[kind]);
  rows.forEach((row, eye) => {
    if (states[row] === queried) marks[eye] = 1;
  });
}

function markPredictions(formula: string | undefined, { tables }: Derived, marks: Uint8Array): void {
  const code = formula === undefined ? -1 : tables.formulas.indexOf(formula);
  const formulas = integersOf(tables.predictions, 'formula');
  const eyes = integersOf(tables.predictions, 'eye');
  statesOf(tables.predictions).forEach((state, row) => {
    if (state === queried && formulas[row] === code) marks[eyes[row] as number] = 1;
  });
}

function markField(field: string, { tables }: Derived, marks: Uint8Array): void {
  const column = `${field}.state`;
  if (!hasColumn(tables.eyes, column)) return;
  statesOf(tables.eyes, column).forEach((state, eye) => {
    if (state === queried) marks[eye] = 1;
  });
}

/**
 * Eyes with a query on any value that enters a measure: on the examination, the prediction or the field of the eye
 * that it is made from. What is made of a group, such as its mean, is not the eye's own.
 *
 * @param name  of the registry
 */
export function queriedEyes(name: string, derived: Derived, plan: Plan): Uint8Array {
  const marks = new Uint8Array(derived.eyes.numRows());
  const byName = new Map(derived.registry.map((measure) => [measure.name, measure]));
  const primary = primaryFormula(derived.tables.formulas, plan.predictions.primary_formula);
  const mark = (input: string, of: string): void => {
    const measure = input === of ? undefined : byName.get(input);
    if (measure) for (const one of measure.inputs) mark(one, input);
    else if (input.includes('@')) markExam(input, derived, marks);
    else if (input.startsWith('predicted_se')) {
      markPredictions(input.slice('predicted_se:'.length) || primary, derived, marks);
    } else markField(input, derived, marks);
  };
  mark(name, '');
  return marks;
}
