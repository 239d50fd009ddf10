import { round } from '../format/round.js';

/** Where the line of no difference stands, and which way a scale runs. */
export interface ForestScale {
  kind: 'linear' | 'log';
  /** No difference. */
  none: number;
  from: number;
  to: number;
  ticks: readonly number[];
}

/** Room beside the outermost interval, as a part of the whole. */
const room = 0.06;

/**
 * A linear scale that holds all values and the line of no difference, with ticks at 1, 2 or 5 times a power of ten.
 *
 * @param values  limits of intervals and edges of margins
 * @param none    no difference: 0, of a relative effect 0.5
 * @param most    ticks that have room
 * @example linearScale([-3, 18], 0, 5).ticks // [0, 5, 10, 15]
 */
export function linearScale(values: readonly number[], none: number, most: number): ForestScale {
  const [low, high] = extent([...values, none]);
  const span = high - low || 1;
  const [from, to] = [low - room * span, high + room * span];
  const ticks = steps(to - from).map((step) => multiplesOf(step, from, to));
  return { kind: 'linear', none, from, to, ticks: ticks.find((set) => set.length <= most) ?? [none] };
}

/** Steps of 1, 2 or 5 times a power of ten, from less than a hundredth of a span up to it. */
function steps(span: number): readonly number[] {
  const power = Math.floor(Math.log10(span)) - 2;
  return [0, 1, 2, 3].flatMap((more) => [1, 2, 5].map((times) => times * 10 ** (power + more)));
}

function multiplesOf(step: number, from: number, to: number): readonly number[] {
  const first = Math.ceil(from / step);
  return Array.from({ length: Math.max(0, Math.floor(to / step) - first + 1) }, (_, i) => round((first + i) * step, 9));
}

/** Ratios over a wide range; each has its inverse beside it. */
const wide = [
  [1, 1.25, 1.5, 2, 3],
  [1, 1.25, 2],
  [1, 1.5],
  [1, 2, 5, 10, 20, 50, 100],
  [1, 10, 100],
] as const;

/**
 * A logarithmic scale around a ratio of 1, with the densest ticks that have room: round ratios in even steps where the
 * range is small, else 1, 2, 5 and 10 with their inverses.
 *
 * @param values  limits of intervals and edges of margins, above 0
 * @param most    ticks that would have room at even distances
 * @example logScale([0.62, 0.87], 4).ticks // [0.6, 0.8, 1]
 */
export function logScale(values: readonly number[], most: number): ForestScale {
  const [low, high] = extent([...values, 1]);
  const span = Math.log(high / low) || 1;
  const [from, to] = [low * Math.exp(-room * span), high * Math.exp(room * span)];
  const bare: ForestScale = { kind: 'log', none: 1, from, to, ticks: [1] };
  const even = to / from < 2 ? steps(1).map((step) => multiplesOf(step, from, to)) : [];
  const sets = [...even, ...wide.map((set) => withInverses(set, from, to))];
  const fits = (ticks: readonly number[]): boolean => {
    const places = ticks.map((tick) => along(bare, tick));
    return ticks.length > 1 && places.every((place, i) => i === 0 || place - (places[i - 1] as number) >= 1 / most);
  };
  return { ...bare, ticks: sets.find(fits) ?? [1] };
}

function withInverses(set: readonly number[], from: number, to: number): readonly number[] {
  const all = new Set([...set.map((ratio) => round(1 / ratio, 2)), ...set]);
  return [...all].filter((ratio) => ratio >= from && ratio <= to).sort((a, b) => a - b);
}

function extent(values: readonly number[]): readonly [low: number, high: number] {
  return [Math.min(...values), Math.max(...values)];
}

/** Position on a scale as a part of its length, from the left. */
export function along({ kind, from, to }: ForestScale, value: number): number {
  if (kind === 'log') return Math.log(value / from) / Math.log(to / from);
  return (value - from) / (to - from);
}
