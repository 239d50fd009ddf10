import type { ResultRow } from '../records/result.js';
import { type HeadlineError, headlineError } from '../tables/headline-error.js';
import { levelText } from '../tables/level.js';
import { intervalText, valueText } from '../tables/value-text.js';
import type { Cohort } from './cohorts.js';
import { frame, lineHeight } from './frame.js';
import { cohortKey } from './key.js';
import { dashesOf, type Label, type Layer, labels, place, stroked, symbol } from './marks.js';
import { legendEnd, sampleText, visitLines } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';
import { textWidth } from './text-width.js';
import { type Artwork, ink } from './theme.js';

const limits = ['0.25', '0.50', '0.75', '1.00', '1.50', '2.00'] as const;

/** One cohort at one limit. */
interface Line {
  cohort: Cohort;
  row: ResultRow;
  /** Points from the top of the plot. */
  y: number;
}

interface Layout {
  measure: HeadlineError;
  lines: readonly Line[];
  width: number;
  height: number;
  left: number;
  right: number;
  top: number;
}

/** Cumulative shares within each limit with their intervals, cohorts below one another, each number beside its mark. */
export function accuracyShares(setting: ChartSetting): Drawing | undefined {
  const measure = headlineError(setting.results);
  if (measure === undefined) return undefined;
  const { artwork, cohorts, plan, words } = setting;
  const layout = layoutOf(setting, measure);
  const { width, height, left, right, top } = layout;
  const error = words.charts.errors[measure];
  const { title, legend, altLead } = words.charts.accuracyShares;
  return {
    spec: frame(artwork, {
      columns: 1,
      panel: { width, height },
      margin: { left, right, top, bottom: 2.75 * lineHeight(artwork) },
      gap: { column: 0, row: 0 },
      panels: [panel(setting, layout)],
      foot: visitLines(setting, 'refraction'),
    }),
    title: title(error.name),
    legend: `${legend(error.name, error.reference, levelText(plan))} ${legendEnd(setting, [{ measure }])}`,
    alt: altLead(error.name) + cohorts.map((cohort) => told(setting, layout, cohort)).join(' '),
  };
}

function layoutOf({ results, artwork, cohorts, words }: ChartSetting, measure: HeadlineError): Layout {
  const { type } = artwork;
  const line = lineHeight(artwork);
  const block = (cohorts.length + 0.6) * line;
  const lines = limits.flatMap((limit, i) =>
    cohorts.map((cohort, j) => {
      const row = results.get(measure, cohort.group, `share_within_${limit}`);
      return { cohort, row, y: (i + 0.5) * block + (j - (cohorts.length - 1) / 2) * line };
    }),
  );
  const left = textWidth(words.charts.accuracyShares.limit('0.00'), type) + type / 2;
  const right = type + textWidth('100.0 (100.0 to 100.0)', type);
  const top = (cohorts.length + 1.75) * line;
  return { measure, lines, left, right, top, width: artwork.width - left - right, height: limits.length * block };
}

function panel(setting: ChartSetting, layout: Layout): readonly Layer[] {
  const corner = { x: -layout.left, y: -layout.top };
  return [
    ...setting.cohorts.flatMap((cohort) => marks(setting, layout, cohort)),
    ...labels([...texts(setting, layout), ...heads(setting, layout)]),
    ...cohortKey(setting, corner, (cohort) => sampleText(setting, layout.measure, cohort)),
  ];
}

/** Intervals, the curve through the shares, and the shares, of one cohort. */
function marks({ artwork }: ChartSetting, layout: Layout, cohort: Cohort): readonly Layer[] {
  const { accent } = cohort;
  const { strokes } = artwork;
  const own = layout.lines.filter((line) => line.cohort === cohort && line.row.value !== undefined);
  const values = own.map(({ row, y }) => ({ share: row.value, low: row.ci_low, high: row.ci_high, y }));
  const bounded = values.filter(({ low, high }) => low !== undefined && high !== undefined);
  const y = place('y');
  const x = { field: 'share', type: 'quantitative', scale: { domain: [0, 1] }, axis: shareTicks };
  const interval = { type: 'rule', ...stroked({ colour: accent.colour, width: strokes.bold }) };
  const curve = {
    type: 'line',
    ...stroked({ colour: accent.colour, width: strokes.hair, dash: dashesOf(accent.dash, artwork) }),
  };
  return [
    { data: { values }, mark: curve, encoding: { x, y, order: { field: 'y' } } },
    { data: { values: bounded }, mark: interval, encoding: { x: { ...x, field: 'low' }, x2: { field: 'high' }, y } },
    { data: { values }, mark: { type: 'point', opacity: 1, ...symbol(accent, artwork) }, encoding: { x, y } },
  ];
}

const shareTicks = {
  title: null,
  values: [0, 0.25, 0.5, 0.75, 1],
  grid: true,
  labelExpr: 'round(100 * datum.value)',
} as const;

/** Where the percentages end, so that their decimals stand below one another. */
const valueEnd = (width: number, { type }: Artwork): number => width + type + textWidth('100.0', type);

/** The limits on the left, the numbers on the right. */
function texts({ artwork, cohorts, words }: ChartSetting, { lines, left, width }: Layout): readonly Label[] {
  const { type } = artwork;
  const value = valueEnd(width, artwork);
  const named = lines.filter((_, index) => index % cohorts.length === 0);
  const step = ((cohorts.length - 1) / 2) * lineHeight(artwork);
  return [
    ...named.map(({ y }, i) => ({
      x: -left,
      y: y + step,
      text: words.charts.accuracyShares.limit(limits[i] as string),
    })),
    ...lines.flatMap(({ row, y }): readonly Label[] => {
      if (row.value === undefined) return [{ x: width + type, y, text: valueText(row, words), colour: ink.soft }];
      const bounds = intervalText(row, words);
      return [
        { x: value, y, text: valueText(row, words), align: 'right' },
        bounds === undefined
          ? { x: value + type / 3, y, text: words.charts.noInterval, colour: ink.soft }
          : { x: value + type / 3, y, text: `(${bounds})` },
      ];
    }),
  ];
}

function heads({ artwork, plan, words }: ChartSetting, { measure, left, width, height }: Layout): readonly Label[] {
  const line = lineHeight(artwork);
  const { within, shareHead, axis } = words.charts.accuracyShares;
  const y = -line / 2;
  return [
    { x: -left, y, text: within(words.charts.errors[measure].name) },
    { x: valueEnd(width, artwork), y, text: words.tables.percent, align: 'right' },
    { x: valueEnd(width, artwork) + artwork.type / 3, y, text: shareHead(levelText(plan)) },
    { x: width / 2, y: height + 2.25 * line, text: axis, align: 'center' },
  ];
}

/** One cohort in words, for readers who do not see the picture. */
function told(setting: ChartSetting, { measure, lines }: Layout, cohort: Cohort): string {
  const { told: group } = setting.words.charts;
  const { altShare } = setting.words.charts.accuracyShares;
  const own = lines.filter((line) => line.cohort === cohort);
  const shares = own.flatMap(({ row }, i) => {
    return row.value === undefined ? [] : [altShare(limits[i] as string, valueText(row, setting.words))];
  });
  return group(cohort.label, [sampleText(setting, measure, cohort), ...shares].join('; '));
}
