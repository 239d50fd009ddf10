import { numbersOf } from '../columns/table.js';
import { axisText } from '../format/axis.js';
import { fixed } from '../format/number.js';
import { type Family, families, type Measure } from '../records/measure.js';
import { groupPair } from '../results/index.js';
import type { TraceBlock, TraceLine } from '../screens/trace.js';
import { reasonText } from '../tables/follow-up.js';
import type { Traced } from './cells.js';

const decimals: Readonly<Record<Measure['unit'], number>> = {
  D: 3,
  deg: 0,
  logMAR: 3,
  mm: 2,
  '%': 1,
  years: 0,
  months: 1,
  days: 0,
  min: 1,
  s: 1,
  'cells/mm²': 0,
  share: 0,
  '': 0,
};

/** A value with its unit; what has none says so. */
function valueText(value: number, unit: Measure['unit'], { words }: Traced): string {
  if (Number.isNaN(value)) return words.trace.missing;
  if (!Number.isFinite(value)) return words.trace.beyondChart;
  if (unit === 'deg') return `${axisText(value)}°`;
  const text = fixed(value, decimals[unit]);
  return unit === '' || unit === 'share' ? text : `${text} ${unit}`;
}

/** A turn has a sign and no half-circle; undefined for everything else. */
function turnText(value: number, { unit, better }: Measure, { words }: Traced): string | undefined {
  if (unit !== 'deg' || better !== 'nearer zero') return undefined;
  return Number.isNaN(value) ? words.trace.missing : `${fixed(value, 1)}°`;
}

/** The inputs that are measures themselves, by name, as `trace` has printed them above. */
function stepLine(measure: Measure, traced: Traced): TraceLine {
  const value = numbersOf(traced.derived.eyes, measure.name)[traced.eye] as number;
  const means = measure.inputs
    .filter((input) => input.includes('.group_mean'))
    .map((input) =>
      traced.words.trace.groupMean(
        valueText(numbersOf(traced.derived.eyes, input)[traced.eye] as number, measure.unit, traced),
      ),
    );
  return {
    label: measure.name,
    value: turnText(value, measure, traced) ?? valueText(value, measure.unit, traced),
    note: [measure.formula, ...means].join('; '),
  };
}

/** Every measure of one family for the eye, in the order of the registry. */
export function familySteps(family: Family, traced: Traced): TraceBlock {
  const measures = traced.derived.registry.filter((measure) => measure.family === family);
  return { title: traced.words.trace.families[family], lines: measures.map((measure) => stepLine(measure, traced)) };
}

/** The groups of results that the eye belongs to. */
function groupKeys({ derived, eye }: Traced): readonly string[] {
  const groupings = [...(derived.cohorts ? [derived.cohorts] : []), ...derived.subgroups];
  const keys = groupings.flatMap(({ field, names, code }) => {
    const name = names[(code[eye] as number) - 1];
    return name === undefined ? [] : [groupPair(field, name)];
  });
  return ['all', ...new Set(keys)];
}

/** Where the eye is counted, and why not elsewhere. */
export function familyStanding(traced: Traced): TraceBlock {
  const { trace } = traced.words;
  const lines = families.map((family): TraceLine => {
    const { steps, code } = traced.derived.membership[family];
    const step = steps[code[traced.eye] as number] as string;
    const label = trace.families[family];
    if (step === 'analysed') return { label, value: trace.enters, note: groupKeys(traced).join(', ') };
    return { label, value: trace.staysOut, note: reasonText(step, traced.words) };
  });
  return { title: trace.enters, lines };
}
