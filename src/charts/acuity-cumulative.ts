import { acuityLines } from '../measures/profiles.js';
import type { ResultRow } from '../records/result.js';
import { valueText } from '../tables/value-text.js';
import type { Cohort } from './cohorts.js';
import { frame, lineHeight, panelWidth } from './frame.js';
import { headingText } from './key.js';
import { dashesOf, type Label, type Layer, labels, segments, stroked, symbol, symbols } from './marks.js';
import { legendEnd, sampleText, shortSampleText, visitLines } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';
import { type Accent, accents, ink } from './theme.js';

const measures = ['cdva_before', 'udva', 'cdva'] as const;
type Acuity = (typeof measures)[number];

/** Of a plot, in type sizes: percentages side by side below nine lines. */
const leastWidth = 25;

interface Layout {
  shown: readonly Acuity[];
  width: number;
  height: number;
  left: number;
}

/**
 * Share of eyes that reach each line of the chart, one panel a cohort: corrected before, uncorrected and corrected
 * after. The numbers stand below the lines they belong to, in rows that are the key of the curves.
 */
export function acuityCumulative(setting: ChartSetting): Drawing | undefined {
  const { results, artwork, cohorts, words } = setting;
  const shown = measures.filter((measure) => results.find(measure, 'all', 'n')?.value);
  const after = shown.find((measure) => measure !== 'cdva_before');
  if (after === undefined) return undefined;
  const line = lineHeight(artwork);
  const { type } = artwork;
  const margin = { left: 3 * type, top: 2.75 * line, right: 1.5 * type, bottom: (2.75 + 2.1 * shown.length) * line };
  const gap = { column: 5.5 * type, row: margin.top + margin.bottom + 0.75 * line };
  const columns = cohorts.length > 1 && panelWidth(artwork, 2, margin, gap.column) >= leastWidth * type ? 2 : 1;
  const width = panelWidth(artwork, columns, margin, gap.column);
  const layout = { shown, width, height: Math.round(Math.min(width * 0.45, 16 * type)), left: margin.left };
  const { title, legend, altLead, series } = words.charts.acuityCumulative;
  const samples = shown.map((measure) => ({ measure, label: series[measure] }));
  return {
    spec: frame(artwork, {
      columns,
      panel: { width, height: layout.height },
      margin,
      gap,
      panels: cohorts.map((cohort) => panel(setting, layout, cohort)),
      foot: visitLines(setting, shown.includes('cdva') ? 'corrected' : 'uncorrected'),
    }),
    title,
    legend: `${legend} ${legendEnd(setting, samples)}`,
    alt: altLead + cohorts.flatMap((cohort) => shown.map((measure) => told(setting, measure, cohort))).join(' '),
  };
}

/** Before surgery is neutral and hollow, uncorrected hollow, corrected full: told apart without colour. */
function styleOf(measure: Acuity, { accent }: Cohort): Accent {
  const neutral = { ...(accents[0] as Accent), colour: ink.soft };
  if (measure === 'cdva_before') return { ...neutral, shape: 'diamond', filled: false, dash: [1.5, 1.5] };
  if (measure === 'udva') return { ...accent, shape: 'square', filled: false, dash: [5, 2] };
  return { ...accent, shape: 'circle', filled: true, dash: [] };
}

/** Place of a line of the acuity chart, from the best on the left. */
const across = (index: number, width: number): number => (index / (acuityLines.length - 1)) * width;

function rowsOf({ results }: ChartSetting, measure: Acuity, { group }: Cohort): readonly ResultRow[] {
  return acuityLines.map((line) => results.get(measure, group, `share_at_or_better_${line}`));
}

function panel(setting: ChartSetting, layout: Layout, cohort: Cohort): readonly Layer[] {
  const line = lineHeight(setting.artwork);
  const { type } = setting.artwork;
  const { share, lines } = setting.words.charts.acuityCumulative;
  const { width, height, left, shown } = layout;
  return [
    ...shown.map((measure) => curve(setting, measure, cohort)),
    ...shown.map((measure) => points(setting, measure, cohort)),
    ...labels([
      { x: -left, y: -2.25 * line, text: headingText(cohort.label, width + left, type), weight: 'bold' },
      { x: -left, y: -line, text: share },
      { x: -left, y: height + 2 * line, text: lines },
    ]),
    ...shown.flatMap((measure, index) =>
      keyRow(setting, layout, measure, cohort, height + (3.25 + 2.1 * index) * line),
    ),
  ];
}

const lineTicks = {
  title: null,
  values: acuityLines.map((_, index) => index),
  labelExpr: `${JSON.stringify(acuityLines.map((name) => name.slice(3)))}[datum.value]`,
};
const shareTicks = { title: null, values: [0, 0.25, 0.5, 0.75, 1], labelExpr: 'round(100 * datum.value)' };
const encoding = {
  x: { field: 'line', type: 'quantitative', scale: { domain: [0, acuityLines.length - 1] }, axis: lineTicks },
  y: { field: 'share', type: 'quantitative', scale: { domain: [0, 1] }, axis: shareTicks },
};

function dataOf(setting: ChartSetting, measure: Acuity, cohort: Cohort): object {
  const rows = rowsOf(setting, measure, cohort);
  return { values: rows.flatMap(({ value }, line) => (value === undefined ? [] : [{ line, share: value }])) };
}

function curve(setting: ChartSetting, measure: Acuity, cohort: Cohort): Layer {
  const { colour, dash } = styleOf(measure, cohort);
  const { artwork } = setting;
  const stroke = { colour, dash: dashesOf(dash, artwork), width: artwork.strokes.line };
  const mark = { type: 'line', ...stroked(stroke) };
  return { data: dataOf(setting, measure, cohort), mark, encoding: { ...encoding, order: { field: 'line' } } };
}

function points(setting: ChartSetting, measure: Acuity, cohort: Cohort): Layer {
  const mark = { type: 'point', opacity: 1, ...symbol(styleOf(measure, cohort), setting.artwork, 0.85) };
  return { data: dataOf(setting, measure, cohort), mark, encoding };
}

/** Which curve it is, how many eyes, and the percentages below their lines. */
function keyRow(
  setting: ChartSetting,
  { width, left }: Layout,
  measure: Acuity,
  cohort: Cohort,
  y: number,
): readonly Layer[] {
  const { artwork, words } = setting;
  const { type, strokes } = artwork;
  const style = styleOf(measure, cohort);
  const text = `${words.charts.acuityCumulative.series[measure]}: ${shortSampleText(setting, measure, cohort)}`;
  const numbers = rowsOf(setting, measure, cohort).flatMap((row, index): readonly Label[] => {
    if (row.value === undefined) return [];
    return [{ x: across(index, width), y: y + lineHeight(artwork), text: valueText(row, words), align: 'center' }];
  });
  const sample = { x: -left, x2: -left + 2.5 * type, y, y2: y };
  return [
    segments([sample], { colour: style.colour, width: strokes.line, dash: dashesOf(style.dash, artwork) }),
    symbols([{ x: -left + 1.25 * type, y }], style, artwork, 0.85),
    ...labels([{ x: 0, y, text }, ...numbers]),
  ];
}

/** One curve in words, for readers who do not see the picture. */
function told(setting: ChartSetting, measure: Acuity, cohort: Cohort): string {
  const { told: group, within } = setting.words.charts;
  const { altShare, series } = setting.words.charts.acuityCumulative;
  const shares = rowsOf(setting, measure, cohort).flatMap((row, index) => {
    return row.value === undefined ? [] : [altShare(acuityLines[index] as string, valueText(row, setting.words))];
  });
  return group(within(cohort.label, series[measure]), [sampleText(setting, measure, cohort), ...shares].join('; '));
}
