import { count, fixed } from '../format/number.js';
import { type HeadlineError, headlineError } from '../tables/headline-error.js';
import { valueText } from '../tables/value-text.js';
import type { Cohort } from './cohorts.js';
import { frame, lineHeight, panelWidth } from './frame.js';
import { type Bin, barsOf, binsOf, extentOf, isOpen, shareAxis } from './histogram.js';
import { headingText } from './key.js';
import { dashesOf, type Label, type Layer, labels, segments, stroked } from './marks.js';
import { legendEnd, sampleText, visitLines } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';
import { textWidth, wrapped } from './text-width.js';
import { type Artwork, ink } from './theme.js';

/** Limits that have a bracket above the bars, the inner one below the outer. */
const bracketed = ['1.00', '0.50'] as const;

/** What all panels share. */
interface Scales {
  measure: HeadlineError;
  /** Dioptres at the ends of the axis. */
  from: number;
  to: number;
  top: number;
  ticks: readonly number[];
  width: number;
  height: number;
}

/**
 * How far refractions ended from the plan: a histogram in bins of 0.25 D centred on 0, one panel a cohort, with the
 * shares within ±0.50 and ±1.00 D above it.
 */
export function predictionError(setting: ChartSetting): Drawing | undefined {
  const measure = headlineError(setting.results);
  if (measure === undefined) return undefined;
  const { artwork, cohorts, words } = setting;
  const line = lineHeight(artwork);
  const columns = artwork.width < 300 ? 1 : Math.min(2, cohorts.length);
  const sides = { left: leftOf(artwork), right: artwork.type / 2 };
  const gap = sides.left + artwork.type;
  const width = panelWidth(artwork, columns, sides, gap);
  const heads = cohorts.map((cohort) => headTexts(setting, measure, cohort, width));
  const margin = {
    ...sides,
    top: (3 + Math.max(...heads.map(({ length }) => length))) * line,
    bottom: (isOneLine(setting, measure, width) ? 2.75 : 3.75) * line,
  };
  const scales = scalesOf(setting, measure, width, Math.round(width * (columns > 1 ? 0.55 : 0.42)));
  const error = words.charts.errors[measure];
  return {
    spec: frame(artwork, {
      columns,
      panel: { width, height: scales.height },
      margin,
      gap: { column: gap, row: margin.top + 2 * line },
      panels: cohorts.map((cohort, index) => [
        ...panel(setting, scales, cohort),
        ...labels(heading(artwork, heads[index] ?? [])),
        ...labels(index + columns >= cohorts.length ? axisTitle(setting, scales) : []),
      ]),
      foot: visitLines(setting, 'refraction'),
    }),
    title: words.charts.predictionError.title(error.name),
    legend: `${words.charts.predictionError.legend(error.name, error.reference)} ${legendEnd(setting, [{ measure }])}`,
    alt:
      words.charts.predictionError.altLead(error.name) +
      cohorts.map((cohort) => told(setting, measure, cohort)).join(' '),
  };
}

/** One axis for all cohorts: open bins are part of it only where some cohort has eyes in them. */
function scalesOf({ results, cohorts }: ChartSetting, measure: HeadlineError, width: number, height: number): Scales {
  const bins = cohorts.flatMap(({ group }) => binsOf(results, measure, group));
  const shown = bins.filter((bin) => !isOpen(bin) || bin.row.value);
  const ends = shown.flatMap(extentOf);
  const tallest = Math.max(0, ...barsOf(bins).map(({ share }) => share));
  return { measure, from: Math.min(...ends), to: Math.max(...ends), ...shareAxis(tallest), width, height };
}

function panel(setting: ChartSetting, scales: Scales, cohort: Cohort): readonly Layer[] {
  const { artwork, words } = setting;
  const bins = binsOf(setting.results, scales.measure, cohort.group);
  const share = { x: -leftOf(artwork), y: -lineHeight(artwork), text: words.charts.predictionError.share };
  return [
    ...brackets(setting, scales, cohort),
    bars(setting, scales, cohort, bins),
    ...labels([share, ...beyond(setting, scales, bins)]),
  ];
}

/** Room for the numbers of the axis. */
const leftOf = ({ type }: Artwork): number => 3 * type;

function bars({ artwork }: ChartSetting, scales: Scales, { accent }: Cohort, bins: readonly Bin[]): Layer {
  const signed = "datum.value > 0 ? '+' + datum.label : datum.label";
  return {
    data: { values: barsOf(bins) },
    mark: {
      type: 'rect',
      fill: accent.filled ? accent.colour : accent.tint,
      ...stroked({ colour: accent.colour, width: artwork.strokes.hair }),
    },
    encoding: {
      x: {
        field: 'x',
        type: 'quantitative',
        scale: { domain: [scales.from, scales.to], nice: false, zero: false },
        axis: { title: null, values: [-2, -1, 0, 1, 2], labelExpr: signed },
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

/** Position of an error on the axis, points. */
const across = ({ from, to, width }: Scales, dioptres: number): number => ((dioptres - from) / (to - from)) * width;

function brackets({ results, words, artwork }: ChartSetting, scales: Scales, cohort: Cohort): readonly Layer[] {
  const { strokes, type } = artwork;
  const line = lineHeight(artwork);
  const drop = type / 2.5;
  const all = bracketed.map((limit, index) => {
    const [x, x2] = [across(scales, -Number(limit)), across(scales, Number(limit))];
    const y = -(bracketed.length - 1 - index) * 1.25 * line - line / 2;
    const share = results.get(scales.measure, cohort.group, `share_within_${limit}`);
    const text = share.value === undefined ? '' : words.charts.predictionError.within(valueText(share, words), limit);
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

/** Above a panel: which eyes, how many, where they lie. */
function headTexts(setting: ChartSetting, measure: HeadlineError, cohort: Cohort, width: number): readonly string[] {
  const { artwork } = setting;
  const room = width + leftOf(artwork);
  const eyes = `${sampleText(setting, measure, cohort)}; ${centreText(setting, measure, cohort)}`;
  return [headingText(cohort.label, room, artwork.type), ...wrapped(eyes, room, artwork.type)];
}

function heading(artwork: Artwork, texts: readonly string[]): readonly Label[] {
  const line = lineHeight(artwork);
  return texts.map((text, i) => {
    const y = -(2.5 + texts.length - i) * line;
    return { x: -leftOf(artwork), y, text, weight: i === 0 ? 'bold' : 'normal' };
  });
}

function centreText({ results, words }: ChartSetting, measure: HeadlineError, { group }: Cohort): string {
  const text = (statistic: string): string => valueText(results.get(measure, group, statistic), words);
  return words.charts.predictionError.centre(text('mean'), text('sd'));
}

/** Eyes of the open bins, said above their bars: they have no place on the axis. */
function beyond({ artwork, words }: ChartSetting, scales: Scales, bins: readonly Bin[]): readonly Label[] {
  const { below, above } = words.charts.predictionError;
  return bins.flatMap(({ from, to, row }) => {
    if (!row.value || !isOpen({ from, to })) return [];
    const eyes = words.charts.eyes(count(row.value));
    const y = scales.height * (1 - row.value / row.n / scales.top) - lineHeight(artwork) / 2;
    return from === -Infinity
      ? [{ x: 0, y, text: below(eyes, fixed(to, 3)) }]
      : [{ x: scales.width, y, text: above(eyes, fixed(from, 3)), align: 'right' as const }];
  });
}

/** The quantity under the axis, and beside it, or below where it is too narrow, what its sign means. */
function axisTitle(setting: ChartSetting, { measure, width, height }: Scales): readonly Label[] {
  const { artwork, words } = setting;
  const { axis, myopic, hyperopic } = words.charts.predictionError;
  const line = lineHeight(artwork);
  const y = height + 2.25 * line;
  const side = isOneLine(setting, measure, width) ? y : y + line;
  return [
    { x: 0, y: side, text: myopic, colour: ink.soft },
    { x: width / 2, y, text: axis(words.charts.errors[measure].name), align: 'center' },
    { x: width, y: side, text: hyperopic, align: 'right', colour: ink.soft },
  ];
}

function isOneLine({ artwork, words }: ChartSetting, measure: HeadlineError, width: number): boolean {
  const { axis, myopic, hyperopic } = words.charts.predictionError;
  const wide = (text: string): number => textWidth(text, artwork.type);
  const side = Math.max(wide(myopic), wide(hyperopic));
  return wide(axis(words.charts.errors[measure].name)) / 2 + side + artwork.type <= width / 2;
}

/** One cohort in words, for readers who do not see the picture. */
function told(setting: ChartSetting, measure: HeadlineError, cohort: Cohort): string {
  const { results, words } = setting;
  const shares = bracketed.flatMap((limit) => {
    const row = results.get(measure, cohort.group, `share_within_${limit}`);
    return row.value === undefined ? [] : [words.charts.predictionError.within(valueText(row, words), limit)];
  });
  const parts = [sampleText(setting, measure, cohort), centreText(setting, measure, cohort), ...shares];
  return words.charts.predictionError.alt(cohort.label, parts.join('; '));
}
