import { reaching } from '../analysis/acuity.js';
import { numbersOf } from '../columns/table.js';
import { analysedIn } from '../eligibility/membership.js';
import { count } from '../format/number.js';
import { vectorMagnitude } from '../optics/double-angle.js';
import type { Measure } from '../records/measure.js';
import type { TypesetTable } from '../records/report.js';
import type { TraceBlock, TraceLine } from '../screens/trace.js';
import { isWithin } from '../statistics/within.js';
import { groupsOfEye } from './groups.js';
import { measureLabel, plainNumber, valueWithUnit, vectorText } from './number-text.js';
import type { Traced } from './traced.js';

/** The statistics of each measure and group that a table shows: measure → group → statistics. */
type Shown = ReadonlyMap<string, ReadonlyMap<string, readonly string[]>>;

function shownIn({ rows }: TypesetTable): Shown {
  const shown = new Map<string, Map<string, string[]>>();
  for (const key of new Set(rows.flatMap(({ cells }) => cells.flatMap(({ from }) => from)))) {
    const [first, last] = [key.indexOf('|'), key.lastIndexOf('|')];
    const [measure, group, statistic] = [key.slice(0, first), key.slice(first + 1, last), key.slice(last + 1)];
    const groups = shown.get(measure) ?? new Map<string, string[]>();
    shown.set(measure, groups);
    groups.set(group, [...(groups.get(group) ?? []), statistic]);
  }
  return shown;
}

/** One measure of the eye: its value, the size that absolute errors and shares take, and its second component. */
interface Own {
  measure: Measure;
  value: number;
  y: number;
  size: number;
}

function ownOf(measure: Measure, { derived, eye }: Traced): Own {
  const at = (name: string): number => numbersOf(derived.eyes, name)[eye] as number;
  const value = at(measure.name);
  const y = measure.vector ? at(`${measure.vector.name}_y`) : Number.NaN;
  const absolute = measure.absoluteFrom === undefined ? value : at(measure.absoluteFrom);
  return { measure, value, y, size: measure.vector ? vectorMagnitude(value, y) : Math.abs(absolute) };
}

/** Whether the eye counts in the numerator of a share; undefined for any other statistic. */
function countsIn({ measure, value, size }: Own, statistic: string): boolean | undefined {
  const [, kind = '', limit = ''] = /^share_(within|beyond|at_or_better)_(.+)$/.exec(statistic) ?? [];
  if (kind === 'within') return isWithin(size, Number(limit));
  if (kind === 'beyond') return !isWithin(size, Number(limit));
  if (kind === 'at_or_better') return reaching(limit)(value);
  return statistic === 'share' && measure.kind === 'share' ? value === 1 : undefined;
}

/** Shares that the eye is counted in, and those that it is not. */
function shareNotes(own: Own, statistics: readonly string[], { words }: Traced): readonly string[] {
  const { trace } = words;
  const unit = own.measure.unit === 'deg' ? '°' : ` ${own.measure.unit}`;
  const named = (wanted: boolean): readonly string[] =>
    statistics.filter((one) => countsIn(own, one) === wanted).map((one) => trace.shareName(one, unit));
  const [inside, outside] = [named(true), named(false)];
  return [
    ...(inside.length > 0 ? [trace.countedIn(inside.join(', '))] : []),
    ...(outside.length > 0 ? [trace.notCountedIn(outside.join(', '))] : []),
  ];
}

/** What the eye adds to one statistic of a group; undefined where a statistic is no sum and has no order to tell. */
function part(own: Own, group: string, statistic: string, { results, words }: Traced): string | undefined {
  const { trace } = words;
  const { value, n } = results.get(own.measure.vector?.name ?? own.measure.name, group, statistic);
  if (value === undefined) return undefined;
  const text = (number: number): string => plainNumber(number, trace);
  const adds = (number: number): string | undefined =>
    Number.isFinite(number)
      ? trace.adds(text(number), count(n), trace.statistics[statistic] ?? statistic, text(value))
      : undefined;
  const order = (number: number): string =>
    trace.beside(trace.order(Math.sign(number - value)), trace.statistics[statistic] ?? statistic, text(value));
  switch (statistic) {
    case 'mean':
      return adds(own.value);
    case 'mean_absolute':
    case 'mean_magnitude':
      return adds(own.size);
    case 'geometric_mean':
      return own.value > 0 ? adds(Math.log(own.value)) : undefined;
    case 'centroid_x':
    case 'centroid_magnitude':
      return centroidPart(own, group, { results, words });
    case 'median':
      return order(own.value);
    case 'median_absolute':
    case 'median_magnitude':
      return order(own.size);
    default:
      return undefined;
  }
}

function centroidPart(own: Own, group: string, { results, words }: Pick<Traced, 'results' | 'words'>): string {
  const text = (number: number): string => plainNumber(number, words.trace);
  const name = own.measure.vector?.name as string;
  const [x, y] = ['centroid_x', 'centroid_y'].map((statistic) => results.get(name, group, statistic));
  const pair = (one: number, other: number): string => `(${text(one)}, ${text(other)})`;
  return words.trace.adds(
    pair(own.value, own.y),
    count(x?.n ?? 0),
    words.trace.statistics.centroid_x as string,
    pair(x?.value ?? Number.NaN, y?.value ?? Number.NaN),
  );
}

/** One group of a table: how many eyes, and what this one adds to each sum. */
function groupNote(own: Own, group: string, statistics: readonly string[], traced: Traced): string {
  const { trace } = traced.words;
  const { n } = traced.results.get(own.measure.vector?.name ?? own.measure.name, group, 'n');
  const parts = statistics.flatMap((statistic) => part(own, group, statistic, traced) ?? []);
  return trace.groupPart(group, count(n), [...new Set(parts)].join('; '));
}

/** What one measure of the eye adds to one table; undefined where the eye is in no group of it. */
function measureLine(
  measure: Measure,
  groups: ReadonlyMap<string, readonly string[]>,
  traced: Traced,
): TraceLine | undefined {
  const { derived, eye, results, words } = traced;
  const name = measure.vector?.name ?? measure.name;
  const belongs = new Set(groupsOfEye(traced));
  const isHere = (group: string): boolean => group.split(';').every((pair) => belongs.has(pair));
  const here = [...groups].filter(([group]) => isHere(group) && results.find(name, group, 'n') !== undefined);
  if (here.length === 0 || !analysedIn(derived.membership[measure.family])[eye]) return undefined;
  const label = measureLabel(name);
  const own = ownOf(measure, traced);
  if (Number.isNaN(own.value)) {
    return {
      label,
      value: words.trace.missing,
      notes: [words.trace.amongMissing(here.map(([group]) => group).join(', '))],
    };
  }
  const statistics = [...new Set(here.flatMap(([, of]) => of))];
  return {
    label,
    value: measure.vector
      ? vectorText(measure, own.value, own.y, words.trace)
      : valueWithUnit(own.value, measure, words.trace),
    notes: [
      ...here.map(([group, of]) => groupNote(own, group, of, traced)),
      ...shareNotes(own, statistics, traced),
      ...(measure.per === 'patient' ? [words.trace.perPatient] : []),
    ],
  };
}

/** The steps of the eye flow that the eye is counted under. */
function flowLines(shown: Shown, { derived, eye, words }: Traced): readonly TraceLine[] {
  return Object.values(derived.membership)
    .filter(({ family }) => shown.has(`flow:${family}`))
    .map(({ family, steps, code }) => ({
      label: words.trace.families[family],
      value: words.trace.under(words.trace.step(steps[code[eye] as number] as string)),
      notes: [],
    }));
}

/** Differences between cohorts that the eye takes part in, by measure. */
function differenceLines(shown: Shown, { derived, eye, words }: Traced): readonly TraceLine[] {
  const cohort = derived.cohorts?.names[(derived.cohorts.code[eye] as number) - 1];
  const compared = derived.registry.filter((measure) => {
    const groups = shown.get(measure.vector?.name ?? measure.name);
    const isThere = [...(groups?.keys() ?? [])].some((group) => group.includes(' vs '));
    const value = numbersOf(derived.eyes, measure.name)[eye] as number;
    return isThere && measure.vector?.component !== 'y' && !Number.isNaN(value) && isAnalysed(measure, derived, eye);
  });
  if (cohort === undefined || compared.length === 0) return [];
  const names = compared.map((measure) => measureLabel(measure.vector?.name ?? measure.name));
  return [{ label: words.trace.inDifferences(cohort), value: '', notes: [names.join(', ')] }];
}

function isAnalysed({ family }: Measure, { membership }: Traced['derived'], eye: number): boolean {
  return analysedIn(membership[family])[eye] === 1;
}

/** What the eye adds to each table of the report: one block a table, in their order. */
export function contributions(traced: Traced): readonly TraceBlock[] {
  const { derived, tables, words } = traced;
  return tables.map((table) => {
    const shown = shownIn(table);
    const lines = derived.registry.flatMap((measure) => {
      const groups = measure.vector?.component === 'y' ? undefined : shown.get(measure.vector?.name ?? measure.name);
      return (groups && measureLine(measure, groups, traced)) ?? [];
    });
    const all = [...flowLines(shown, traced), ...lines, ...differenceLines(shown, traced)];
    return {
      title: words.trace.table(String(table.number), table.id.replaceAll('-', ' ')),
      lines: all.length > 0 ? all : [{ label: words.trace.addsNothing, value: '', notes: [] }],
    };
  });
}
