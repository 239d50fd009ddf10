import { count } from '../format/number.js';
import type { Cohort } from './cohorts.js';
import { brackets, type Scales, type SignedQuantity, scalesOf } from './error-panel.js';
import { cellRemarks, type EyeMarks, marksOf } from './eye-marks.js';
import { frame, lineHeight, panelWidth } from './frame.js';
import { axisTitle, centreText, isOneLine, toldQuantity } from './histogram-figure.js';
import { headingText } from './key.js';
import { type Label, type Layer, labels } from './marks.js';
import { withRoom } from './room.js';
import { type Axes, axesLayer, axisAround, eyesLayer } from './scatter.js';
import { generalLegend, legendSample, sampleText, visitLines } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';
import { wrapped } from './text-width.js';
import { ink } from './theme.js';
import { stripHeight, turnStrip } from './turn-strip.js';

const figure = 'toric-rotation';

/** Where lenses went, and where they stand; where they were put is told by the table. */
const turns = ['lens_rotation', 'lens_misalignment'] as const;
type Turn = (typeof turns)[number];

/** One turn of one cohort. */
interface Panel {
  turn: Turn;
  quantity: SignedQuantity;
  cohort: Cohort;
  marks: EyeMarks;
  heads: readonly string[];
}

/**
 * Signed turns of toric lenses: the cylinder left over each, above it the turns in bins, and the shares within ±5 and
 * ±10 degrees. Rotation and misalignment side by side, a row a cohort, as far as the data allow.
 */
export function toricRotation(given: ChartSetting): Drawing | undefined {
  const shown = turns.filter((turn) => given.results.find(turn, 'all', 'n')?.value);
  if (shown.length === 0) return undefined;
  const setting = withRoom(given, shown.length * given.cohorts.length);
  const { artwork, cohorts, words } = setting;
  const { type } = artwork;
  const columns = artwork.width < 300 ? 1 : shown.length > 1 ? shown.length : Math.min(2, cohorts.length);
  const sides = { left: 3 * type, right: type };
  const gap = sides.left + 1.5 * type;
  const width = panelWidth(artwork, columns, sides, gap);
  const panels = cohorts.flatMap((cohort) =>
    shown.flatMap((turn) => panelOf(setting, turn, cohort, width + sides.left)),
  );
  const { title, legend, altLead, names } = words.charts.toricRotation;
  const labelOf = ({ cohort, turn }: Panel) => words.charts.within(cohort.label, names[turn]);
  const told = (panel: Panel) => toldQuantity(setting, panel.quantity, { ...panel.cohort, label: labelOf(panel) });
  return {
    spec: specification(setting, panels, { width, columns, sides, gap }),
    title,
    legend: [
      legend,
      ...cellRemarks(
        setting,
        panels.map(({ marks }) => marks),
      ),
      ...panels.map((panel) => legendSample(setting, panel.turn, panel.cohort, labelOf(panel))),
      ...generalLegend(setting),
    ].join(' '),
    alt: altLead + panels.map(told).join(' '),
  };
}

/** One panel; none where no eye of the cohort has the turn. */
function panelOf(setting: ChartSetting, turn: Turn, cohort: Cohort, room: number): readonly Panel[] {
  const { results, points, words, artwork, cohorts } = setting;
  if (results.find(turn, cohort.group, 'mean') === undefined) return [];
  const quantity: SignedQuantity = {
    measure: turn,
    family: 'astigmatism',
    bin: 5,
    tick: 5,
    least: 12.5,
    limits: ['10.00', '5.00'],
    words: words.charts.signedQuantities[turn],
  };
  const { turns: named, withCylinder } = words.charts.toricRotation;
  const known = results.get(turn, cohort.group, 'count_with_cylinder_after').n;
  const texts = [
    sampleText(setting, turn, cohort),
    centreText(setting, quantity, cohort),
    withCylinder(words.charts.eyes(count(known))),
  ];
  const heads = [
    ...(cohorts.length > 1 ? [headingText(cohort.label, room, artwork.type)] : []),
    headingText(named[turn], room, artwork.type),
    ...wrapped(texts.join('; '), room, { size: artwork.type }),
  ];
  return [{ turn, quantity, cohort, marks: marksOf(points, figure, turn, cohort), heads }];
}

interface Place {
  width: number;
  columns: number;
  sides: { left: number; right: number };
  gap: number;
}

function specification(setting: ChartSetting, panels: readonly Panel[], { width, columns, sides, gap }: Place): object {
  const { artwork, cohorts } = setting;
  const line = lineHeight(artwork);
  const height = Math.round(Math.min(width * 0.6, 14 * artwork.type));
  const scales = panels.map((panel) => scalesFor(setting, panels, panel, width, height));
  const up = axisAround(0, Math.max(0.5, ...panels.map(({ marks }) => marks.y.reduce((a, b) => Math.max(a, b), 0))), 5);
  const bold = cohorts.length > 1 ? 2 : 1;
  const lift = stripHeight(artwork);
  const most = Math.max(...panels.map(({ heads }) => heads.length));
  const top = lift + (3.1 + most) * line;
  const isLow = panels.some(({ quantity }) => !isOneLine(artwork, quantity, width));
  const bottom = (isLow ? 3.75 : 2.75) * line;
  return frame(artwork, {
    columns,
    panel: { width, height },
    margin: { ...sides, top, bottom },
    gap: { column: gap, row: top + bottom + 0.5 * line },
    panels: panels.map((panel, index) => {
      const scale = scales[index] as Scales;
      const heads = panel.heads.map((text, i): Label => {
        return { x: -sides.left, y: (i + 0.5) * line - top, text, weight: i < bold ? 'bold' : 'normal' };
      });
      const left = { x: -sides.left, y: -lift - line, text: setting.words.charts.toricRotation.left, halo: artwork.type / 4 };
      return [
        ...brackets(setting, scale, panel.cohort, lift),
        ...turnStrip(setting, scale, panel.cohort),
        ...eyes(setting, { x: across(scale), y: up, width, height }, panel),
        ...labels([...heads, left, ...axisTitle(setting, scale)]),
      ];
    }),
    foot: visitLines(setting, 'astigmatism'),
  });
}

/** One axis for all panels: around every turn. */
function scalesFor(
  setting: ChartSetting,
  panels: readonly Panel[],
  panel: Panel,
  width: number,
  height: number,
): Scales {
  const all = panels.map(({ quantity }) => scalesOf(setting, quantity, width, height).to);
  const farthest = panels.map(({ marks }) => marks.x.reduce((a, b) => Math.max(a, Math.abs(b)), 0));
  const reach = Math.max(...all, ...farthest);
  return { ...scalesOf(setting, panel.quantity, width, height), from: -reach, to: reach };
}

/** Numbers every 5 degrees, farther apart where many would crowd. */
function across({ from, to }: Scales): Axes['x'] {
  const step = [5, 10, 15, 30].find((one) => to / one <= 4) ?? 45;
  const steps = Math.floor(to / step + 1e-9);
  return { from, to, ticks: Array.from({ length: 2 * steps + 1 }, (_, i) => (i - steps) * step) };
}

/** The axes, a line where the lens did not turn, and the eyes. */
function eyes(setting: ChartSetting, axes: Axes, { cohort, marks }: Panel): readonly Layer[] {
  const { strokes } = setting.artwork;
  const upright = [
    [0, axes.y.from],
    [0, axes.y.to],
  ] as const;
  return [axesLayer(axes, upright, { colour: ink.hair, width: strokes.hair }), eyesLayer(setting, axes, cohort, marks)];
}
