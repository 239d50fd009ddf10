import { levelText } from '../tables/level.js';
import { intervalText, valueText } from '../tables/value-text.js';
import type { Cohort } from './cohorts.js';
import { type EyeMarks, marksOf } from './eye-marks.js';
import { frame, lineHeight, panelWidth } from './frame.js';
import { headingText } from './key.js';
import { dashesOf, type Label, type Layer, labels } from './marks.js';
import { type Axes, axesLayer, axisAround, cellRemarks, eyesLayer, lineLayer } from './scatter.js';
import { legendEnd, sampleText, visitLines } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';
import { wrapped } from './text-width.js';
import { ink } from './theme.js';

const figure = 'planned-achieved';
const measure = 'achieved_change';

/** One cohort: its eyes, and what stands above them. */
interface Panel {
  cohort: Cohort;
  marks: EyeMarks;
  heads: readonly string[];
}

/**
 * Achieved over planned change of the spherical equivalent, a panel a cohort: eyes, the line of no error with ±0.50 and
 * ±1.00 D beside it, and the regression.
 */
export function plannedAchieved(setting: ChartSetting): Drawing | undefined {
  const { results, artwork, cohorts, plan, words } = setting;
  if (!results.find(measure, 'all', 'n')?.value) return undefined;
  const { type, width } = artwork;
  const line = lineHeight(artwork);
  const columns = width < 300 ? 1 : Math.min(2, cohorts.length);
  const sides = { left: 3.5 * type, right: type };
  const gap = sides.left + 1.5 * type;
  const size = Math.min(panelWidth(artwork, columns, sides, gap), Math.round(24 * type));
  const panels = cohorts.map((cohort): Panel => {
    const heads = [
      headingText(cohort.label, size + sides.left, type),
      ...[sampleText(setting, measure, cohort), fitText(setting, cohort)].flatMap((text) =>
        wrapped(text, size + sides.left, { size: type }),
      ),
    ];
    return { cohort, marks: marksOf(setting.points, figure, 'changes', cohort), heads };
  });
  const axes = axesOf(panels, size);
  const top = (Math.max(...panels.map(({ heads }) => heads.length)) + 1.75) * line;
  const text = words.charts.plannedAchieved;
  const marks = panels.map((panel) => panel.marks);
  return {
    spec: frame(artwork, {
      columns,
      panel: { width: size, height: size },
      margin: { ...sides, top, bottom: 2.75 * line, right: width - sides.left - columns * size - (columns - 1) * gap },
      gap: { column: gap, row: top + 3.25 * line },
      panels: panels.map((panel) => panelLayers(setting, axes, panel, { left: sides.left, top })),
      foot: visitLines(setting, 'refraction'),
    }),
    title: text.title,
    legend: [text.legend(levelText(plan)), ...cellRemarks(setting, marks), legendEnd(setting, [{ measure }])].join(' '),
    alt: text.altLead + panels.map(({ cohort }) => told(setting, cohort)).join(' '),
  };
}

/** Both axes alike, around every eye of every panel. */
function axesOf(panels: readonly Panel[], size: number): Axes {
  const values = panels.flatMap(({ marks }) => [...marks.x, ...marks.y]);
  const range = axisAround(
    values.reduce((a, b) => Math.min(a, b), 0),
    values.reduce((a, b) => Math.max(a, b), 0),
    7,
  );
  return { x: range, y: range, width: size, height: size };
}

function panelLayers(
  setting: ChartSetting,
  axes: Axes,
  { cohort, marks, heads }: Panel,
  { left, top }: { left: number; top: number },
): readonly Layer[] {
  const { artwork, words } = setting;
  const { strokes } = artwork;
  const { planned, achieved } = words.charts.plannedAchieved;
  const line = lineHeight(artwork);
  const { from, to } = axes.x;
  const beside = (dioptres: number, dash: readonly number[]): Layer =>
    lineLayer(
      axes,
      [
        [from, from + dioptres],
        [to, to + dioptres],
      ],
      {
        colour: ink.soft,
        width: strokes.hair,
        dash: dashesOf(dash, artwork),
      },
    );
  const titles: readonly Label[] = [
    { x: -left, y: -line, text: achieved },
    { x: axes.width / 2, y: axes.height + 2.25 * line, text: planned, align: 'center' },
    ...heads.map((text, i): Label => {
      return { x: -left, y: (i + 0.5) * line - top, text, weight: i === 0 ? 'bold' : 'normal' };
    }),
  ];
  return [
    ...[-1, 1].map((dioptres) => beside(dioptres, [1, 2])),
    ...[-0.5, 0.5].map((dioptres) => beside(dioptres, [3, 2])),
    axesLayer(
      axes,
      [
        [from, from],
        [to, to],
      ],
      { colour: ink.full, width: strokes.hair },
    ),
    eyesLayer(setting, axes, cohort, marks),
    ...regressionLayer(setting, axes, cohort, marks),
    ...labels(titles),
  ];
}

/** The line of the regression from the first eye to the last, where there is one. */
function regressionLayer(
  { results, artwork }: ChartSetting,
  axes: Axes,
  { group, accent }: Cohort,
  { x }: EyeMarks,
): readonly Layer[] {
  const [slope, intercept] = ['slope', 'intercept'].map((name) => results.find(measure, group, name)?.value);
  if (slope === undefined || intercept === undefined) return [];
  const ends = [x.reduce((a, b) => Math.min(a, b)), x.reduce((a, b) => Math.max(a, b))];
  const line = ends.map((end): readonly [number, number] => [end, intercept + slope * end]);
  return [lineLayer(axes, line, { colour: accent.colour, width: artwork.strokes.bold })];
}

/** 'slope 0.98 (95 % CI 0.96 to 1.00), r² 0.97', as far as there is a line. */
function fitText({ results, plan, words }: ChartSetting, { group }: Cohort): string {
  const text = words.charts.plannedAchieved;
  const [slope, rSquared] = ['slope', 'r_squared'].map((name) => results.find(measure, group, name));
  if (!slope) return text.noLine;
  const limits = intervalText(slope, words);
  const told = valueText(slope, words);
  return [
    limits === undefined ? text.slopeAlone(told) : text.slope(told, levelText(plan), limits),
    ...(rSquared ? [text.rSquared(valueText(rSquared, words))] : []),
  ].join(', ');
}

/** One cohort in words, for readers who do not see the picture. */
function told(setting: ChartSetting, cohort: Cohort): string {
  return setting.words.charts.told(
    cohort.label,
    [sampleText(setting, measure, cohort), fitText(setting, cohort)].join('; '),
  );
}
