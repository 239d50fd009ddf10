import { isRatio } from '../comparison/compared.js';
import type { ComparedOutcome } from '../tables/compared-outcomes.js';
import { intervalText, valueText } from '../tables/value-text.js';
import type { DrawnPair, ForestGroup, ForestRow } from './forest-rows.js';
import { along, type ForestScale, linearScale, logScale } from './forest-scale.js';
import { lineHeight } from './frame.js';
import {
  boxes,
  dashesOf,
  type Label,
  type Layer,
  labels,
  place,
  type Segment,
  segments,
  stroked,
  symbol,
} from './marks.js';
import type { ChartSetting } from './setting.js';
import { textWidth, wrapped } from './text-width.js';
import { type Artwork, ink } from './theme.js';

/** What all panels have in common, points. */
export interface ForestColumns {
  /** Of the labels, left of the plot. */
  left: number;
  width: number;
  /** Of the numbers, right of the plot. */
  right: number;
  /** Whether rows of one outcome stand under its name, since their labels are too long for a line. */
  isNarrow: boolean;
}

/** One row with its place. */
interface PlacedRow {
  row: ForestRow;
  /** Name of the outcome in a line of its own, above the row. */
  heading: string;
  texts: readonly string[];
  indent: number;
  top: number;
  height: number;
  /** Middle of the line of each comparison. */
  lines: readonly number[];
}

/** A panel ready to be drawn. */
export interface ForestPanel {
  group: ForestGroup;
  scale: ForestScale;
  placed: readonly PlacedRow[];
  height: number;
}

/** An estimate as it is written beside its line. */
export function estimateText({ words }: Pick<ChartSetting, 'words'>, { row }: ComparedOutcome): string {
  const limits = intervalText(row, words);
  return limits === undefined ? valueText(row, words) : `${valueText(row, words)} (${limits})`;
}

/** Shares are drawn in percentage points, as they are written. */
const factorOf = ({ unit }: Pick<ForestGroup, 'unit'>): number => (unit === 'share' ? 100 : 1);

/** Edges of the margin on the scale of the panel; undefined where none is declared. */
function marginOf(outcome: ComparedOutcome, group: ForestGroup): readonly [number, number] | undefined {
  const { margin, one } = outcome;
  if (margin === undefined) return undefined;
  if (isRatio(one)) return [1 / margin, margin];
  const none = group.kind === 'effect' ? 0.5 : 0;
  return [none - factorOf(group) * margin, none + factorOf(group) * margin];
}

/** A group with its scale and the place of every row. */
export function forestPanel({ artwork }: ChartSetting, group: ForestGroup, columns: ForestColumns): ForestPanel {
  const line = lineHeight(artwork);
  let top = 0;
  const placed = group.rows.map((row, index): PlacedRow => {
    const { heading, label, indent } = labelOf(artwork, group.rows, index, columns);
    const setting = { size: artwork.type, weight: row.isPrimary ? 'bold' : 'normal' } as const;
    const texts = wrapped(label, columns.left - artwork.type - indent, setting);
    const height = (Math.max(texts.length, row.outcomes.length) + 0.25) * line;
    top += heading === '' ? 0 : (index === 0 ? 1 : 1.2) * line;
    const middle = top + height / 2;
    const lines = row.outcomes.map((_, i) => middle + (i - (row.outcomes.length - 1) / 2) * line);
    const one = { row, heading, texts, indent, top, height, lines };
    top += height;
    return one;
  });
  return { group, scale: scaleOf(artwork, group, columns.width), placed, height: top };
}

/** In narrow columns, rows of one outcome in sequence stand under its name. */
function labelOf(
  { type }: Artwork,
  rows: readonly ForestRow[],
  index: number,
  { isNarrow }: ForestColumns,
): { heading: string; label: string; indent: number } {
  const { name, part } = rows[index] as ForestRow;
  const isSame = (other: number): boolean => rows[other]?.name === name;
  if (!isNarrow || !(isSame(index - 1) || isSame(index + 1))) return { heading: '', label: name + part, indent: 0 };
  return { heading: isSame(index - 1) ? '' : name, label: part.replace(/^[, ]+/, ''), indent: type };
}

function scaleOf({ type }: Artwork, group: ForestGroup, width: number): ForestScale {
  const factor = factorOf(group);
  const outcomes = group.rows.flatMap(({ outcomes: own }) => own.flatMap((outcome) => outcome ?? []));
  const values = outcomes.flatMap((outcome) => {
    const { value, ci_low: low, ci_high: high } = outcome.row;
    const drawn = [value, low, high].flatMap((one) => (one === undefined ? [] : [factor * one]));
    return [...drawn, ...(marginOf(outcome, group) ?? [])];
  });
  const most = Math.max(3, Math.floor(width / (3.2 * type)));
  if (group.kind === 'ratio')
    return logScale(
      values.filter((value) => value > 0),
      most,
    );
  return linearScale(values, group.kind === 'effect' ? 0.5 : 0, most);
}

/** The layers of one panel: margins, the line of no difference, intervals, texts. */
export function panelLayers(
  setting: ChartSetting,
  panel: ForestPanel,
  columns: ForestColumns,
  pairs: readonly DrawnPair[],
): readonly Layer[] {
  const { artwork } = setting;
  return [
    ...marginLayers(artwork, panel, columns),
    noneLayer(artwork, panel, columns),
    ...pairs.flatMap((pair, index) => pairLayers(artwork, panel, pair, index)),
    ...labels([...rowTexts(setting, panel, columns), ...endTexts(setting, panel, columns, pairs)]),
  ];
}

/** Bands of declared margins, each as high as its row. */
function marginLayers(
  artwork: Artwork,
  { group, scale, placed }: ForestPanel,
  { width }: ForestColumns,
): readonly Layer[] {
  const bands = placed.flatMap(({ row, top, height }): readonly Segment[] => {
    const [outcome] = row.outcomes.flatMap((one) => one ?? []);
    const margin = outcome && marginOf(outcome, group);
    if (!margin) return [];
    const [x, x2] = margin.map((edge) => width * along(scale, edge)) as [number, number];
    return [{ x, x2, y: top + 1, y2: top + height - 1 }];
  });
  if (bands.length === 0) return [];
  const edges = bands.flatMap(({ x, x2, y, y2 }) => [x, x2].map((edge) => ({ x: edge, x2: edge, y, y2 })));
  const dash = dashesOf([2, 1.5], artwork);
  return [boxes(bands, ink.wash), segments(edges, { colour: ink.soft, width: artwork.strokes.hair, dash })];
}

function noneLayer(artwork: Artwork, { scale, height }: ForestPanel, { width }: ForestColumns): Layer {
  const x = width * along(scale, scale.none);
  return segments([{ x, x2: x, y: 0, y2: height }], { colour: ink.soft, width: artwork.strokes.line });
}

/** Intervals and estimates of one comparison; primaries bolder, and filled. */
function pairLayers(artwork: Artwork, panel: ForestPanel, { accent }: DrawnPair, index: number): readonly Layer[] {
  const { group, scale, placed } = panel;
  const factor = factorOf(group);
  const all = placed.flatMap(({ row, lines }) => {
    const found = row.outcomes[index]?.row;
    if (found?.value === undefined || found.ci_low === undefined || found.ci_high === undefined) return [];
    const [value, low, high] = [found.value, found.ci_low, found.ci_high].map((one) => factor * one);
    return [{ value, low, high, y: lines[index], isPrimary: row.isPrimary }];
  });
  const axis = { title: null, values: scale.ticks, ...(scale.kind === 'log' ? { format: '~g' } : {}) };
  const domain = { type: scale.kind, domain: [scale.from, scale.to], nice: false };
  const x = (field: string): object => ({ field, type: 'quantitative', scale: domain, axis });
  const y = place('y');
  return [true, false].flatMap((isPrimary) => {
    const values = all.filter((one) => one.isPrimary === isPrimary);
    if (values.length === 0) return [];
    const width = isPrimary ? artwork.strokes.bold * 1.5 : artwork.strokes.line;
    const interval = { type: 'rule', ...stroked({ colour: accent.colour, width }) };
    const point = symbol({ ...accent, filled: isPrimary }, artwork, isPrimary ? 1.15 : 0.8);
    return [
      { data: { values }, mark: interval, encoding: { x: x('low'), x2: { field: 'high' }, y } },
      { data: { values }, mark: { type: 'point', opacity: 1, ...point }, encoding: { x: x('value'), y } },
    ];
  });
}

/** Outcomes on the left, estimates on the right. */
function rowTexts(setting: ChartSetting, { placed }: ForestPanel, { left, width }: ForestColumns): readonly Label[] {
  const { artwork } = setting;
  const line = lineHeight(artwork);
  return placed.flatMap(({ row, heading, texts, indent, top, height, lines }) => {
    const weight = row.isPrimary ? 'bold' : 'normal';
    const first = top + height / 2 - ((texts.length - 1) / 2) * line;
    const x = width + artwork.type;
    return [
      { x: -left, y: top - line / 2, text: heading },
      ...texts.map((text, i): Label => ({ x: indent - left, y: first + i * line, text, weight })),
      ...row.outcomes.map((outcome, i): Label => {
        return { x, y: lines[i] as number, text: outcome ? estimateText(setting, outcome) : '', weight };
      }),
    ];
  });
}

/** Beside the numbers of the axis its unit; below them what lies to either side of the line. */
function endTexts(
  setting: ChartSetting,
  { group, scale, height }: ForestPanel,
  { left, width, right }: ForestColumns,
  pairs: readonly DrawnPair[],
): readonly Label[] {
  const { artwork, words } = setting;
  const { type } = artwork;
  const line = lineHeight(artwork);
  const text = words.charts.differences;
  const unit = group.kind === 'difference' ? (text.units[group.unit] ?? group.unit) : text[group.kind];
  const none = width * along(scale, scale.none);
  const [onLeft, onRight] = sidesOf(setting, group, pairs);
  const side = { y: height + 2.1 * line, colour: ink.soft } as const;
  return [
    { x: -left, y: height + 1.17 * type, text: unit, colour: ink.soft },
    { ...side, x: none - type / 2, text: sideText(onLeft, left + none - type / 2, type), align: 'right' },
    { ...side, x: none + type / 2, text: sideText(onRight, width - none + right - type, type) },
  ];
}

/** What is said of one side, and of which cohort. */
interface Side {
  cohort: string;
  say: (cohort: string) => string;
}

/** The name of a cohort is cut where it is too long; what is said of it stays. */
function sideText({ cohort, say }: Side, room: number, size: number): string {
  const name = room - textWidth(say(''), size);
  return say(wrapped(cohort, name, { size, lines: 1 })[0] as string);
}

function sidesOf({ words }: ChartSetting, { better }: ForestGroup, pairs: readonly DrawnPair[]): readonly [Side, Side] {
  const { betterLeft, betterRight, compared: others, higher, lower } = words.charts.differences;
  const [first] = pairs as [DrawnPair, ...DrawnPair[]];
  const reference = first.reference.label;
  const compared = pairs.length === 1 ? first.compared.label : others;
  if (better === undefined) {
    return [
      { cohort: compared, say: lower },
      { cohort: '', say: () => higher },
    ];
  }
  const [left, right] = better === 'higher' ? [reference, compared] : [compared, reference];
  return [
    { cohort: left, say: betterLeft },
    { cohort: right, say: betterRight },
  ];
}
