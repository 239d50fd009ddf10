import { count, shortest } from '../format/number.js';
import type { ResultRow } from '../records/result.js';
import { groupPairs, valueLabel } from '../tables/groups.js';
import { levelText } from '../tables/level.js';
import { monitoredName, seriesOf } from '../tables/monitored.js';
import { valueText } from '../tables/value-text.js';
import { allEyes } from './cohorts.js';
import { frame, lineHeight, panelWidth } from './frame.js';
import { type Layer, labels, stroked } from './marks.js';
import { generalRemarks } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';
import { wrapped } from './text-width.js';
import { artworks, ink } from './theme.js';

/** One strip of the picture: the running share of a group, or its cumulative sum. */
interface Strip {
  group: string;
  kind: 'share' | 'sum';
  points: readonly { at: number; row: ResultRow }[];
}

/** Groups that one picture shows, all eyes among them; results.csv has every operator. */
const mostGroups = 6;

/** A group's running share over the series of operations, and beside it its cumulative sum where that is declared. */
export function monitoring(given: ChartSetting): Drawing | undefined {
  const measure = seriesOf(given.results, 'monitoring:');
  if (measure === undefined) return undefined;
  const strips = stripsOf(given, measure);
  if (strips.length === 0) return undefined;
  const setting = withRoom(given, strips);
  const { plan, words } = setting;
  const text = words.charts.standing.monitoring;
  const name = monitoredName(measure, words);
  return {
    spec: specification(setting, measure, strips),
    title: text.title(name),
    legend: [text.legend(name, levelText(plan)), sumText(setting, strips), ...generalRemarks(setting)].join(' '),
    alt: text.altLead + strips.map((strip) => told(setting, measure, strip)).join(' '),
  };
}

const hasSums = (strips: readonly Strip[]): boolean => strips.some(({ kind }) => kind === 'sum');

/** What is said of cumulative sums: how they are made, why there are none, or where they are. */
function sumText({ plan, words }: ChartSetting, strips: readonly Strip[]): string {
  const text = words.charts.standing.monitoring;
  if (!plan.monitoring) return text.noSum;
  return hasSums(strips) ? text.sumLegend(shortest(100 * plan.monitoring.false_alarm)) : text.sumInternal;
}

/** Shares and sums side by side take both columns of a journal. */
function withRoom(setting: ChartSetting, strips: readonly Strip[]): ChartSetting {
  const { 'journal-single': single, 'journal-double': double } = artworks;
  return double && setting.artwork === single && hasSums(strips) ? { ...setting, artwork: double } : setting;
}

function specification(setting: ChartSetting, measure: string, strips: readonly Strip[]): object {
  const { artwork, words } = setting;
  const { type } = artwork;
  const line = lineHeight(artwork);
  const margin = { left: 3.5 * type, right: 1.5 * type, top: 2.9 * line, bottom: 2.5 * line };
  const columns = hasSums(strips) && artwork.width > 300 ? 2 : 1;
  const column = 5.5 * type;
  const width = panelWidth(artwork, columns, margin, column);
  const height = Math.round(6.5 * type);
  const last = Math.max(...strips.flatMap(({ points }) => points.map(({ at }) => at)));
  const layout = { left: margin.left, width, height, last };
  return frame(artwork, {
    columns,
    panel: { width, height },
    margin,
    gap: { column, row: 4.4 * line },
    panels: strips.map((strip, i) =>
      panel(setting, measure, strip, { ...layout, isLast: i >= strips.length - columns }),
    ),
    foot: wrapped(words.charts.standing.monitoring.foot, artwork.width, { size: type }),
  });
}

function stripsOf({ results }: ChartSetting, measure: string): readonly Strip[] {
  const groups = [...new Set(results.rows.filter((row) => row.measure === measure).map(({ group }) => group))];
  const shown = groups.filter((group) => group === 'all' || group.startsWith('surgeon=')).slice(0, mostGroups);
  const kinds = { share: 'share_running_to_', sum: 'sum_at_' } as const;
  const strip = (group: string, kind: Strip['kind']): Strip => ({
    group,
    kind,
    points: results.rows
      .filter((row) => row.measure === measure && row.group === group && row.statistic.startsWith(kinds[kind]))
      .map(({ statistic }) => ({
        at: Number(statistic.slice(kinds[kind].length)),
        row: results.get(measure, group, statistic),
      }))
      .filter(({ row }) => row.value !== undefined),
  });
  return shown
    .map((group) => [strip(group, 'share'), strip(group, 'sum')] as const)
    .filter(([share]) => share.points.length > 1)
    .flatMap(([share, sum]) => (sum.points.length > 1 ? [share, sum] : [share]));
}

function nameOf({ group }: Strip, { words }: ChartSetting): string {
  return group === 'all' ? words.tables.allEyes : valueLabel(groupPairs(group)[0]?.[1] ?? '', words);
}

function headOf(setting: ChartSetting, measure: string, strip: Strip): string {
  const { results, words } = setting;
  const eyes = words.charts.eyes(count(results.get(measure, strip.group, 'count').value ?? 0));
  const text = words.charts.standing.monitoring;
  return `${nameOf(strip, setting)}: ${strip.kind === 'share' ? text.running(eyes) : text.sum(signalText(setting, measure, strip))}`;
}

/** 'no signal', '1 signal, at eye 212'. */
function signalText({ results, words }: ChartSetting, measure: string, { group }: Strip): string {
  const { signals } = words.charts.standing.monitoring;
  const number = results.get(measure, group, 'count_signals').value ?? 0;
  const at = Array.from({ length: number }, (_, i) => count(results.get(measure, group, `signal_${i + 1}`).value ?? 0));
  return signals(number, at.join(', '));
}

interface Layout {
  left: number;
  width: number;
  height: number;
  last: number;
  /** Whether the axis of its column is named below it. */
  isLast: boolean;
}

function panel(setting: ChartSetting, measure: string, strip: Strip, layout: Layout): readonly Layer[] {
  const { artwork, words } = setting;
  const line = lineHeight(artwork);
  const text = words.charts.standing;
  const head = { x: -layout.left, y: -2.25 * line, text: headOf(setting, measure, strip), weight: 'bold' as const };
  const unit = {
    x: -layout.left,
    y: -1.15 * line,
    text: strip.kind === 'share' ? text.share : text.monitoring.sumAxis,
  };
  const axis = {
    x: layout.width / 2,
    y: layout.height + 2 * line,
    text: text.monitoring.axis,
    align: 'center' as const,
  };
  const layers =
    strip.kind === 'share' ? shareLayers(setting, strip, layout) : sumLayers(setting, measure, strip, layout);
  return [...layers, ...labels(layout.isLast ? [head, unit, axis] : [head, unit])];
}

const across = ({ last }: Layout): object => ({
  field: 'at',
  type: 'quantitative',
  scale: { domain: [0, last], nice: false },
  axis: { title: null, tickCount: 5 },
});

function shareLayers({ artwork, plan, words }: ChartSetting, { points }: Strip, layout: Layout): readonly Layer[] {
  const { strokes } = artwork;
  const { accent } = allEyes(words);
  const values = points.map(({ at, row }) => ({ at, share: row.value, low: row.ci_low, high: row.ci_high }));
  const axis = { title: null, values: [0, 0.5, 1], labelExpr: 'round(100 * datum.value)', grid: true };
  const y = { field: 'share', type: 'quantitative', scale: { domain: [0, 1] }, axis };
  const x = across(layout);
  const bounded = values.filter(({ low, high }) => low !== undefined && high !== undefined);
  const line = plan.monitoring && [{ share: plan.monitoring.acceptable }];
  return [
    {
      data: { values: bounded },
      mark: { type: 'area', fill: accent.tint },
      encoding: { x, y: { ...y, field: 'low' }, y2: { field: 'high' } },
    },
    ...(line
      ? [
          {
            data: { values: line },
            mark: { type: 'rule', ...stroked({ colour: ink.full, width: strokes.line, dash: [4, 2.5] }) },
            encoding: { y },
          },
        ]
      : []),
    {
      data: { values },
      mark: { type: 'line', ...stroked({ colour: accent.colour, width: strokes.bold }) },
      encoding: { x, y },
    },
  ];
}

function sumLayers(
  { results, artwork }: ChartSetting,
  measure: string,
  { group, points }: Strip,
  layout: Layout,
): readonly Layer[] {
  const { strokes } = artwork;
  const limit = results.get(measure, group, 'sum_limit').value ?? 0;
  const values = points.map(({ at, row }) => ({ at, sum: row.value }));
  const top = 1.1 * Math.max(limit, ...values.map(({ sum }) => sum ?? 0));
  const y = {
    field: 'sum',
    type: 'quantitative',
    scale: { domain: [0, top], nice: false },
    axis: { title: null, tickCount: 3 },
  };
  return [
    {
      data: { values: [{ sum: limit }] },
      mark: { type: 'rule', ...stroked({ colour: ink.full, width: strokes.line, dash: [4, 2.5] }) },
      encoding: { y },
    },
    {
      data: { values },
      mark: { type: 'line', ...stroked({ colour: ink.full, width: strokes.line }) },
      encoding: { x: across(layout), y },
    },
  ];
}

function told(setting: ChartSetting, measure: string, strip: Strip): string {
  const { words } = setting;
  if (strip.kind === 'sum') return words.charts.told(nameOf(strip, setting), signalText(setting, measure, strip));
  const [first, last] = [strip.points[0]?.row as ResultRow, strip.points.at(-1)?.row as ResultRow];
  const text = words.charts.standing.monitoring.altShare(valueText(first, words), valueText(last, words));
  return words.charts.told(nameOf(strip, setting), text);
}
