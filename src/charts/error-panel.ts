import { count, signed } from '../format/number.js';
import type { OutcomeFamily } from '../tables/follow-up.js';
import { valueText } from '../tables/value-text.js';
import type { Words } from '../words/index.js';
import type { Cohort } from './cohorts.js';
import { lineHeight } from './frame.js';
import { type Bar, type Bin, barsOf, binsOf, extentOf, isOpen, shareAxis } from './histogram.js';
import { dashesOf, type Label, type Layer, labels, segments, stroked } from './marks.js';
import type { ChartSetting } from './setting.js';
import { textWidth } from './text-width.js';
import { type Artwork, ink } from './theme.js';

/** A signed quantity that a histogram shows. */
export interface SignedQuantity {
  measure: string;
  /** The eyes whose follow-up is told. */
  family: OutcomeFamily;
  /** Between the edges of a bin, between two ticks, and how far the axis reaches at least, in the unit of the measure. */
  bin: number;
  tick: number;
  least: number;
  /** Limits that have a bracket above the bars, the outer one first, as statistics name them. */
  limits: readonly [outer: string, inner: string];
  words: Words['charts']['signedQuantities'][keyof Words['charts']['signedQuantities']];
}

/** What all panels share. */
export interface Scales {
  quantity: SignedQuantity;
  /** At the ends of the axis. */
  from: number;
  to: number;
  top: number;
  ticks: readonly number[];
  width: number;
  height: number;
}

/** One axis for all cohorts, as far to both sides: it reaches farther than it must only where some cohort has eyes. */
export function scalesOf(
  { results, cohorts }: ChartSetting,
  quantity: SignedQuantity,
  width: number,
  height: number,
): Scales {
  const { measure, bin: binWidth, least } = quantity;
  const bins = cohorts.flatMap(({ group }) => binsOf(results, measure, group));
  const ends = bins.filter(({ row }) => row.value).flatMap((bin) => extentOf(bin, binWidth));
  const reach = Math.max(least, ...ends.map(Math.abs));
  const tallest = Math.max(0, ...barsOf(bins, binWidth).map(({ share }) => share));
  return { quantity, from: -reach, to: reach, ...shareAxis(tallest), width, height };
}

/** Room for the numbers of the axis. */
export const leftOf = ({ type }: Artwork): number => 3 * type;

/** One cohort's bars with the brackets above them. */
export function errorPanel(setting: ChartSetting, scales: Scales, cohort: Cohort): readonly Layer[] {
  const { artwork, words } = setting;
  const bins = binsOf(setting.results, scales.quantity.measure, cohort.group);
  const share = { x: -leftOf(artwork), y: -lineHeight(artwork), text: words.charts.histogram.share };
  return [
    ...brackets(setting, scales, cohort),
    bars(setting, scales, cohort, bins),
    ...labels([share, ...beyond(setting, scales, bins)]),
  ];
}

function bars({ artwork }: ChartSetting, scales: Scales, { accent }: Cohort, bins: readonly Bin[]): Layer {
  return {
    data: { values: barsOf(bins, scales.quantity.bin) },
    mark: {
      type: 'rect',
      fill: accent.filled ? accent.colour : accent.tint,
      ...stroked({ colour: accent.colour, width: artwork.strokes.hair }),
    },
    encoding: {
      x: {
        field: 'x',
        type: 'quantitative',
        ...signedAxis(scales),
      },
      x2: { field: 'x2' },
      y: {
        field: 'share',
        type: 'quantitative',
        scale: { domain: [0, scales.top], nice: false },
        axis: { title: null, values: scales.ticks, labelExpr: 'round(100 * datum.value)' },
      },
      y2: { datum: 0 },
    },
  };
}

/** The axis of the quantity, with its signs. */
function signedAxis({ from, to, quantity: { tick } }: Scales): object {
  const steps = Math.floor(to / tick + 1e-9);
  return {
    scale: { domain: [from, to], nice: false, zero: false },
    axis: {
      title: null,
      values: Array.from({ length: 2 * steps + 1 }, (_, i) => (i - steps) * tick),
      labelExpr: "datum.value > 0 ? '+' + datum.label : datum.label",
    },
  };
}

/** Position of a value on the axis, points. */
export const across = ({ from, to, width }: Scales, value: number): number => ((value - from) / (to - from)) * width;

/**
 * Brackets above a panel, each with its share, and guides from them down through the panel.
 *
 * @param lift  points between the panel and the lower bracket, beside the usual
 */
export function brackets(
  { results, words, artwork }: ChartSetting,
  scales: Scales,
  cohort: Cohort,
  lift = 0,
): readonly Layer[] {
  const { strokes, type } = artwork;
  const { limits, measure, words: own } = scales.quantity;
  const line = lineHeight(artwork);
  const drop = type / 2.5;
  const all = limits.map((limit, index) => {
    const [x, x2] = [across(scales, -Number(limit)), across(scales, Number(limit))];
    const y = -(limits.length - 1 - index) * 1.25 * line - line / 2 - lift;
    const share = results.get(measure, cohort.group, `share_within_${limit}`);
    const text = share.value === undefined ? '' : own.within(valueText(share, words), limit);
    return { x, x2, y, label: { x: (x + x2) / 2, y: y - line * 0.6, text, align: 'center' } as const };
  });
  const shown = all.filter(({ label }) => label.text !== '');
  const sides = ({ x, x2, y }: (typeof all)[number]) => [x, x2].map((side) => ({ x: side, y, x2: side, y2: y + drop }));
  const guides = shown.flatMap(({ x, x2, y }) =>
    [x, x2].map((side) => ({ x: side, y: y + drop, x2: side, y2: scales.height })),
  );
  return [
    segments(guides, { colour: ink.soft, width: strokes.hair, dash: dashesOf([1, 2], artwork) }),
    segments(
      shown.flatMap((bracket) => [{ ...bracket, y2: bracket.y }, ...sides(bracket)]),
      {
        colour: ink.full,
        width: strokes.line,
      },
    ),
    ...labels(shown.map(({ label }) => label)),
  ];
}

/** Eyes of the open bins, said above their bars: they have no place on the axis. */
function beyond({ artwork, words }: ChartSetting, scales: Scales, bins: readonly Bin[]): readonly Label[] {
  const { quantity } = scales;
  const { below, above } = quantity.words;
  const bars = barsOf(bins, quantity.bin);
  const decimals = quantity.bin < 1 ? 3 : 1;
  return bins.flatMap((bin): readonly Label[] => {
    const { from, to, row } = bin;
    if (!row.value || !isOpen(bin)) return [];
    const isLow = from === -Infinity;
    const eyes = words.charts.eyes(count(row.value));
    const edge = isLow ? below(signed(to, decimals)) : above(signed(from, decimals));
    const width = Math.max(textWidth(eyes, artwork.type), textWidth(edge, artwork.type));
    const y = clearOf(bars, scales, isLow ? [0, width] : [scales.width - width, scales.width]);
    const line = lineHeight(artwork);
    const place = isLow ? ({ x: artwork.type / 2 } as const) : ({ x: scales.width, align: 'right' } as const);
    return [
      { ...place, y: y - 1.6 * line, text: eyes },
      { ...place, y: y - 0.6 * line, text: edge },
    ];
  });
}

/** Top of the tallest bar between two places, points. */
function clearOf(bars: readonly Bar[], scales: Scales, [from, to]: readonly [from: number, to: number]): number {
  const met = bars.filter(({ x, x2 }) => across(scales, x2) > from && across(scales, x) < to);
  return scales.height * (1 - Math.max(0, ...met.map(({ share }) => share)) / scales.top);
}
