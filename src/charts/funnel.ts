import { count } from '../format/number.js';
import type { ResultRow } from '../records/result.js';
import { groupPairs, valueLabel } from '../tables/groups.js';
import { noteCodes } from '../tables/marks.js';
import { monitoredName, seriesOf } from '../tables/monitored.js';
import { valueText } from '../tables/value-text.js';
import { allEyes } from './cohorts.js';
import { frame, lineHeight } from './frame.js';
import { dashesOf, type Label, type Layer, labels, stroked, symbol } from './marks.js';
import { generalRemarks } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';
import { textWidth, wrapped } from './text-width.js';
import { ink } from './theme.js';

const levels = ['95', '99.8'] as const;

/** Operators and sites by the number of their eyes, between exact limits around one share. */
export function funnel(setting: ChartSetting): Drawing | undefined {
  const { results, artwork, words } = setting;
  const measure = seriesOf(results, 'funnel:');
  if (measure === undefined) return undefined;
  const operators = results.rows
    .filter((row) => row.measure === measure && row.statistic === 'share')
    .map(({ group }) => results.get(measure, group, 'share'))
    .filter(({ value }) => value !== undefined);
  if (operators.length < 2) return undefined;
  const { type } = artwork;
  const line = lineHeight(artwork);
  const { title, legend, foot, altLead } = words.charts.standing.funnel;
  const name = monitoredName(measure, words);
  const width = Math.floor(artwork.width - 3.5 * type - 2 * type);
  const target = results.get(measure, 'all', 'share_target');
  const room = { size: type };
  return {
    spec: frame(artwork, {
      columns: 1,
      panel: { width, height: Math.round(Math.min(width * 0.7, 24 * type)) },
      margin: { left: 3.5 * type, right: 2 * type, top: 1.75 * line, bottom: 2.5 * line },
      gap: { column: 0, row: 0 },
      panels: [panel(setting, measure, operators, target, width)],
      foot: wrapped(foot, artwork.width, room),
    }),
    title: title(name),
    legend: [
      legend(name, valueText(target, words), target.method === 'declared', count(operators.length)),
      ...generalRemarks(setting),
    ].join(' '),
    alt: altLead + operators.map((row) => told(row, setting)).join(' '),
  };
}

/** What an operator is called: the code as the clinic writes it. */
function nameOf({ group }: ResultRow, { words }: ChartSetting): string {
  return valueLabel(groupPairs(group)[0]?.[1] ?? '', words);
}

function told(row: ResultRow, setting: ChartSetting): string {
  const { words } = setting;
  const code = noteCodes(row).find((note) => note.startsWith('beyond:'));
  const place =
    code === undefined ? words.charts.standing.funnel.inside : words.charts.standing.funnel.beyond(code.slice(7));
  return words.charts.told(
    nameOf(row, setting),
    `${words.charts.eyes(count(row.n))}, ${valueText(row, words)} %, ${place}`,
  );
}

interface Point {
  eyes: number;
  share: number;
  name: string;
}

/**
 * Points whose names stand above them: away from the line in the middle, but on its other side where a neighbour further
 * from the line has that place.
 */
function namedAbove(
  points: readonly Point[],
  target: number,
  across: (eyes: number) => number,
  type: number,
): ReadonlySet<Point> {
  const sides = { above: new Set<Point>(), below: new Set<Point>() };
  const meets = (one: Point, others: ReadonlySet<Point>): boolean =>
    [...others].some((other) => {
      const room = (textWidth(one.name, type) + textWidth(other.name, type)) / 2 + type / 2;
      return Math.abs(across(one.eyes) - across(other.eyes)) < room;
    });
  for (const point of [...points].sort((a, b) => Math.abs(b.share - target) - Math.abs(a.share - target))) {
    const [own, other] = point.share >= target ? [sides.above, sides.below] : [sides.below, sides.above];
    (meets(point, own) ? other : own).add(point);
  }
  return sides.above;
}

function panel(
  setting: ChartSetting,
  measure: string,
  operators: readonly ResultRow[],
  target: ResultRow,
  width: number,
): readonly Layer[] {
  const { results, artwork, words } = setting;
  const { strokes, type } = artwork;
  const line = lineHeight(artwork);
  const limit = (statistic: string) =>
    results.rows
      .filter((row) => row.measure === measure && row.statistic === statistic)
      .map(({ group, n }) => ({ eyes: n, share: results.get(measure, group, statistic).value }));
  const curves = levels.flatMap((level, i) =>
    ['low', 'high'].map((side) => ({ values: limit(`share_limit_${side}_${level}`), broken: i === 1 })),
  );
  const shares = [
    ...curves.flatMap(({ values }) => values.map(({ share }) => share ?? 0)),
    ...operators.map(({ value }) => value ?? 0),
  ];
  const floor = Math.floor(10 * Math.min(...shares)) / 10;
  const most = Math.max(...curves.flatMap(({ values }) => values.map(({ eyes }) => eyes)));
  const x = {
    field: 'eyes',
    type: 'quantitative',
    scale: { domain: [0, most], nice: false },
    axis: { title: null, tickCount: 5 },
  };
  const y = {
    field: 'share',
    type: 'quantitative',
    scale: { domain: [floor, 1], nice: false },
    axis: { title: null, tickCount: 5, labelExpr: 'round(100 * datum.value)' },
  };
  const points = operators.map((row) => ({ eyes: row.n, share: row.value as number, name: nameOf(row, setting) }));
  const above = namedAbove(points, target.value as number, (eyes) => (width * eyes) / most, type);
  const { accent } = allEyes(words);
  const named = (side: 0 | 1): Layer => ({
    data: { values: points.filter((point) => above.has(point) === (side === 0)) },
    mark: { type: 'text', baseline: 'middle', dy: (side === 0 ? -1 : 1.1) * type, fill: ink.full },
    encoding: { x, y, text: { field: 'name' } },
  });
  const heads: readonly Label[] = [
    { x: -3.5 * type, y: -line, text: words.charts.standing.share },
    {
      x: width / 2,
      y: Math.round(Math.min(width * 0.7, 24 * type)) + 2 * line,
      text: words.charts.standing.funnel.axis,
      align: 'center',
    },
  ];
  return [
    ...curves.map(({ values, broken }) => ({
      data: { values },
      mark: {
        type: 'line',
        ...stroked({ colour: ink.soft, width: strokes.line, dash: broken ? dashesOf([4, 2.5], artwork) : [] }),
      },
      encoding: { x, y, order: { field: 'eyes' } },
    })),
    {
      data: { values: [{ share: target.value }] },
      mark: { type: 'rule', ...stroked({ colour: ink.full, width: strokes.line }) },
      encoding: { y },
    },
    { data: { values: points }, mark: { type: 'point', opacity: 1, ...symbol(accent, artwork) }, encoding: { x, y } },
    named(0),
    named(1),
    ...labels(heads),
  ];
}
