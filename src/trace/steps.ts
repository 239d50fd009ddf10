import { numbersOf } from '../columns/table.js';
import { type Family, families, type Measure } from '../records/measure.js';
import type { TraceBlock, TraceLine } from '../screens/trace.js';
import { reasonText } from '../tables/follow-up.js';
import { groupsOfEye } from './groups.js';
import { inputLabel, measureLabel, plainNumber, valueWithUnit, vectorText } from './number-text.js';
import type { Traced } from './traced.js';
import { working } from './working.js';

/** The value of a measure, or of what one is made from, for the eye. */
function valueIn({ derived, eye }: Traced, name: string): number {
  return numbersOf(derived.eyes, name)[eye] as number;
}

/** What a missing value lacks; nothing where it has all and is missing by its own rule. */
function lacking(measures: readonly Measure[], traced: Traced): readonly string[] {
  const { trace } = traced.words;
  const inputs = new Set(measures.flatMap((measure) => measure.inputs));
  const unknown = [...inputs].filter((input) => Number.isNaN(valueOfInput(traced, input)));
  const labels = new Set(unknown.map((input) => inputLabel(input.replace(/_[xy]$/, ''), trace)));
  return labels.size === 0 ? [] : [trace.not([...labels].join('; '))];
}

/** An input of any type: numbers as they are, categories by their code. */
function valueOfInput(traced: Traced, input: string): number {
  const column: unknown = traced.derived.eyes.column(input);
  return column instanceof Float64Array ? (column[traced.eye] as number) : 0;
}

/** The measure's formula with the numbers of the eye in it; without a working, the inputs with their numbers. */
function numbersIn(measure: Measure, traced: Traced): string | undefined {
  const { trace } = traced.words;
  const numbers = measure.inputs.map((input) => valueOfInput(traced, input));
  const text = (value: number): string => plainNumber(value, trace);
  const worked = working(measure, numbers, text);
  if (worked !== undefined) return worked;
  const isNumber = (input: string): boolean => traced.derived.eyes.column(input) instanceof Float64Array;
  const named = measure.inputs.flatMap((input, i) =>
    isNumber(input) && input !== measure.name ? [`${inputLabel(input, trace)} ${text(numbers[i] as number)}`] : [],
  );
  return named.length === 0 ? undefined : trace.from(named.join('; '));
}

function scalarLine(measure: Measure, traced: Traced): TraceLine {
  const { trace } = traced.words;
  const value = valueIn(traced, measure.name);
  const label = measureLabel(measure.name);
  if (Number.isNaN(value)) {
    const why = lacking([measure], traced);
    return { label, value: trace.missing, notes: why.length > 0 ? why : [measure.formula] };
  }
  const numbers = numbersIn(measure, traced);
  const shown = numbers !== undefined && measure.worked !== undefined ? trace.worked(numbers) : numbers;
  return {
    label,
    value: valueWithUnit(value, measure, trace),
    notes: shown === undefined ? [measure.formula] : [measure.formula, shown],
  };
}

/** Both components of a vector in one line: magnitude at its meridian, then each with its numbers. */
function vectorLine(x: Measure, y: Measure, traced: Traced): TraceLine {
  const { trace } = traced.words;
  const label = measureLabel(x.vector?.name ?? x.name);
  const [vx, vy] = [valueIn(traced, x.name), valueIn(traced, y.name)];
  if (Number.isNaN(vx) || Number.isNaN(vy)) {
    const why = lacking([x, y], traced);
    return { label, value: trace.missing, notes: why.length > 0 ? why : [x.formula] };
  }
  const component = (measure: Measure, value: number): string => {
    const [numbers, shown] = [numbersIn(measure, traced), plainNumber(value, trace)];
    const isTaken = numbers === undefined || numbers === shown;
    return trace.component(measure.vector?.component ?? '', isTaken ? undefined : numbers, shown);
  };
  const formulas = [...new Set([x.formula, y.formula])].join('; ');
  return {
    label,
    value: vectorText(x, vx, vy, trace),
    notes: [formulas, component(x, vx), component(y, vy)],
  };
}

/** Every measure of one family for the eye, in the order of the registry. */
export function familySteps(family: Family, traced: Traced): TraceBlock {
  const { registry } = traced.derived;
  const lines = registry.flatMap((measure, i): readonly TraceLine[] => {
    if (measure.family !== family || measure.vector?.component === 'y') return [];
    if (!measure.vector) return [scalarLine(measure, traced)];
    return [vectorLine(measure, registry[i + 1] as Measure, traced)];
  });
  return { title: traced.words.trace.families[family], lines };
}

/** Where the eye is counted, and why not elsewhere. */
export function familyStanding(traced: Traced): TraceBlock {
  const { trace } = traced.words;
  const lines = families.map((family): TraceLine => {
    const { steps, code } = traced.derived.membership[family];
    const step = steps[code[traced.eye] as number] as string;
    const label = trace.families[family];
    if (step === 'analysed') return { label, value: trace.enters, notes: [] };
    return { label, value: trace.staysOut, notes: [reasonText(step, traced.words)] };
  });
  return {
    title: trace.standing,
    lines: [...lines, { label: trace.groups, value: '', notes: [groupsOfEye(traced).join(', ')] }],
  };
}
