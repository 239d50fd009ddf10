import { type TrendField, trendFields, trendName } from '../predictions/trends.js';
import type { ResultRow } from '../records/result.js';
import { formulaOf } from '../tables/formula-measures.js';
import { levelText } from '../tables/level.js';
import { intervalText, valueText } from '../tables/value-text.js';
import { allEyes } from './cohorts.js';
import { type EyeMarks, marksOf } from './eye-marks.js';
import { frame, lineHeight, panelWidth } from './frame.js';
import { headingText } from './key.js';
import { type Label, type Layer, labels } from './marks.js';
import { type Axes, axesLayer, axisAround, bandLayer, cellRemarks, eyesLayer, lineLayer } from './scatter.js';
import { legendEnd, sampleText, visitLines } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';
import { wrapped } from './text-width.js';
import { artworks, ink } from './theme.js';

const figure = 'error-trend';

/** One error over one measure of the eye before surgery. */
interface Panel {
  name: string;
  field: TrendField;
  /** Prediction error, or that of which formula. */
  error: string;
  marks: EyeMarks;
}

/**
 * Errors over axial length and over keratometry, a row of panels an error: eyes, the curve through them with its band,
 * and the slope of a straight line. All eyes together: what is looked for belongs to a formula, not to a cohort.
 */
export function errorTrend(given: ChartSetting): Drawing | undefined {
  const setting = { ...withRoom(given), cohorts: [allEyes(given.words)] };
  const { artwork, plan, words } = setting;
  const errors = errorsOf(setting);
  const panels = errors.flatMap((error) => trendFields.map((field) => panelOf(setting, error, field)));
  const shown = trendFields.filter((field) =>
    panels.some((panel) => panel.field === field && panel.marks.x.length > 0),
  );
  if (shown.length === 0) return undefined;
  const { type } = artwork;
  const line = lineHeight(artwork);
  const sides = { left: 3.2 * type, right: type };
  const gap = sides.left + 1.5 * type;
  const size = { width: panelWidth(artwork, shown.length, sides, gap), height: Math.round(9.5 * type) };
  const kept = panels.filter(({ field }) => shown.includes(field));
  const axes = (panel: Panel): Axes => ({ ...size, ...rangesOf(kept, panel.field) });
  const top = 3.75 * line;
  const text = words.charts.errorTrend;
  const samples = kept.map(({ name, field, error }) => ({
    measure: name,
    label: text.over(errorName(setting, error), text.fields[field.field].name),
  }));
  return {
    spec: frame(artwork, {
      columns: shown.length,
      panel: size,
      margin: { ...sides, top, bottom: 2.75 * line },
      gap: { column: gap, row: top + 1.75 * line },
      panels: kept.map((panel, index) => [
        ...panelLayers(setting, axes(panel), panel),
        ...labels(headLabels(setting, panel, { left: sides.left, top, width: size.width })),
        ...labels(index + shown.length >= kept.length ? [axisTitle(setting, axes(panel), panel)] : []),
      ]),
      foot: visitLines(setting, 'refraction'),
    }),
    title: text.title,
    legend: [
      text.legend(levelText(plan)),
      ...(kept.some(({ marks }) => marks.y.some((error) => Math.abs(error) === edge)) ? [text.edge(String(edge))] : []),
      ...cellRemarks(
        setting,
        kept.map(({ marks }) => marks),
      ),
      legendEnd(setting, samples),
    ].join(' '),
    alt: text.altLead + kept.map((panel) => told(setting, panel)).join(' '),
  };
}

/** Two panels beside one another are too small to be read in a single column. */
function withRoom(setting: ChartSetting): ChartSetting {
  const { 'journal-single': single, 'journal-double': double } = artworks;
  return double && setting.artwork === single ? { ...setting, artwork: double } : setting;
}

/** The errors whose trend is told, in the order of the results. */
function errorsOf({ results }: ChartSetting): readonly string[] {
  const prefix = trendName(trendFields[0], '');
  return results.rows.flatMap(({ measure, statistic, n }) =>
    statistic === 'n' && n > 0 && measure.startsWith(prefix) ? [measure.slice(prefix.length)] : [],
  );
}

function panelOf(setting: ChartSetting, error: string, field: TrendField): Panel {
  const name = trendName(field, error);
  const { x, y, eye } = marksOf(setting.points, figure, name, allEyes(setting.words));
  return { name, field, error, marks: { x, y: y.map(heldBack), eye } };
}

/** Errors beyond this stand at the edge of the panel, so that one blunder does not flatten every curve; dioptres. */
const edge = 3;
const heldBack = (error: number): number => Math.min(edge, Math.max(-edge, error));

/** One axis of errors for all panels, one of the field for its column. */
function rangesOf(panels: readonly Panel[], field: TrendField): Pick<Axes, 'x' | 'y'> {
  const around = (values: readonly number[], most: number) =>
    axisAround(
      values.reduce((a, b) => Math.min(a, b), Infinity),
      values.reduce((a, b) => Math.max(a, b), -Infinity),
      most,
    );
  const errors = panels.flatMap(({ marks }) => marks.y);
  return {
    x: around(
      panels.filter((panel) => panel.field === field).flatMap(({ marks }) => marks.x),
      8,
    ),
    y: around([-1, 1, ...errors], 5),
  };
}

function panelLayers(setting: ChartSetting, axes: Axes, { name, marks }: Panel): readonly Layer[] {
  const { artwork, words } = setting;
  const { strokes } = artwork;
  const eyes = allEyes(words);
  const curve = curveOf(setting, name);
  const band = curve.flatMap(({ x, row: { ci_low: low, ci_high: high } }) =>
    low === undefined || high === undefined ? [] : [{ x, low, high }],
  );
  return [
    axesLayer(
      axes,
      [
        [axes.x.from, 0],
        [axes.x.to, 0],
      ],
      { colour: ink.soft, width: strokes.hair },
    ),
    eyesLayer(setting, axes, { ...eyes, accent: { ...eyes.accent, colour: ink.soft, tint: ink.wash } }, marks),
    ...(band.length > 0 ? [bandLayer(axes, band, eyes.accent.tint)] : []),
    lineLayer(
      axes,
      curve.map(({ x, row }) => [x, row.value as number]),
      { colour: eyes.accent.colour, width: strokes.bold },
    ),
  ];
}

const place = 'smooth_at_';

/** The places of a curve, from end to end. */
function curveOf({ results }: ChartSetting, name: string): readonly { x: number; row: ResultRow }[] {
  return results.rows.flatMap(({ measure, group, statistic, value }) => {
    if (measure !== name || value === undefined || !statistic.startsWith(place)) return [];
    return [{ x: Number(statistic.slice(place.length)), row: results.get(measure, group, statistic) }];
  });
}

/** 'Prediction error', or of which formula. */
function errorName({ words }: ChartSetting, error: string): string {
  const formula = formulaOf(error);
  return formula === undefined
    ? words.charts.errors[error === 'target_error' ? error : 'prediction_error'].name
    : words.tables.formulaOutcome(formula).name;
}

/** Above a panel: which error, in the first of a row; how many eyes, and the slope of a straight line. */
function headLabels(
  setting: ChartSetting,
  panel: Panel,
  { left, top, width }: { left: number; top: number; width: number },
): readonly Label[] {
  const { artwork, words } = setting;
  const { type } = artwork;
  const line = lineHeight(artwork);
  const room = width + left;
  const name = headingText(errorName(setting, panel.error), room, type);
  const texts = [
    panel.field === trendFields[0] ? name : '',
    wrapped(sampleText(setting, panel.name, allEyes(words)), room, { size: type, lines: 1 })[0] as string,
    wrapped(slopeText(setting, panel), room, { size: type, lines: 1 })[0] as string,
  ];
  return texts.map((text, i) => ({ x: -left, y: (i + 0.5) * line - top, text, weight: i === 0 ? 'bold' : 'normal' }));
}

function axisTitle({ artwork, words }: ChartSetting, { width, height }: Axes, { field }: Panel): Label {
  const y = height + 2.25 * lineHeight(artwork);
  return { x: width / 2, y, text: words.charts.errorTrend.fields[field.field].axis, align: 'center' };
}

/** 'slope −0.07 D/mm (95 % CI −0.09 to −0.05)', or that no line can be drawn. */
function slopeText({ results, plan, words }: ChartSetting, { name, field }: Panel): string {
  const text = words.charts.errorTrend;
  const slope = results.find(name, 'all', 'slope');
  if (slope?.value === undefined) return text.noLine;
  const limits = intervalText(slope, words);
  const value = text.perUnit(valueText(slope, words), field.unit);
  return limits === undefined ? text.slopeAlone(value) : text.slope(value, levelText(plan), limits);
}

/** One panel in words, for readers who do not see the picture. */
function told(setting: ChartSetting, panel: Panel): string {
  const { charts } = setting.words;
  const name = charts.errorTrend.over(
    errorName(setting, panel.error),
    charts.errorTrend.fields[panel.field.field].name,
  );
  const sample = sampleText(setting, panel.name, allEyes(setting.words));
  return charts.told(name, [sample, slopeText(setting, panel)].join('; '));
}
