import { vectorMagnitude } from '../optics/double-angle.js';
import type { VectorId } from '../tables/vectors.js';
import type { Cohort } from './cohorts.js';
import { ellipseOf, outlineOf } from './ellipse.js';
import { type EyeMarks, eyeLayers, markArea } from './eye-marks.js';
import { frame, lineHeight, panelWidth } from './frame.js';
import { headingText } from './key.js';
import { type Label, labels } from './marks.js';
import { labelTurnOf, type Plane, planeAround, planeGround, planeLabels, sideLabels } from './plane.js';
import { sampleText, visitLines } from './sentences.js';
import type { ChartSetting } from './setting.js';
import { wrapped } from './text-width.js';
import type { Artwork } from './theme.js';
import type { VectorFigure } from './vector-figures.js';
import { keyLayers, keyLines, regions, vectorLayers } from './vector-summary.js';

/** One plane: one vector of one cohort. */
export interface VectorPanel {
  id: VectorId;
  measure: string;
  /** Its group is that of the vector within the cohort. */
  cohort: Cohort;
  marks: EyeMarks;
  hollow: boolean;
}

/** Least width of a panel with its labels, in type sizes. */
const leastCell = 14;

/** Width of a panel with its labels where so many stand side by side, points. */
const cellWidth = (artwork: Artwork, columns: number): number =>
  panelWidth(artwork, columns, { left: 0, right: 0 }, artwork.type);

/**
 * Panels in rows: vectors of one cohort side by side, of three cohorts and more the cohorts of one vector; in a single
 * column one below the other.
 */
function arranged(
  { artwork, cohorts }: ChartSetting,
  panels: readonly VectorPanel[],
  shown: readonly VectorId[],
): { panels: readonly VectorPanel[]; columns: number } {
  const hasRoom = (columns: number): boolean => cellWidth(artwork, columns) >= leastCell * artwork.type;
  if (artwork.width < 300) return { panels, columns: 1 };
  if (shown.length === 1) {
    const most = [4, 3, 2].find((columns) => columns <= panels.length && hasRoom(columns)) ?? 1;
    return { panels, columns: panels.length === 4 && most === 3 ? 2 : most };
  }
  if (cohorts.length > 2 && hasRoom(cohorts.length)) {
    return { panels: shown.flatMap((id) => panels.filter((panel) => panel.id === id)), columns: cohorts.length };
  }
  return { panels, columns: shown.length };
}

/** The specification of a figure of planes. */
export function planesOf(
  setting: ChartSetting,
  figure: VectorFigure,
  unordered: readonly VectorPanel[],
  shown: readonly VectorId[],
): object {
  const { artwork } = setting;
  const { type } = artwork;
  const line = lineHeight(artwork);
  const { panels, columns } = arranged(setting, unordered, shown);
  const cell = cellWidth(artwork, columns);
  const heads = panels.map((panel) => headLabels(setting, panel, cell));
  const size = Math.floor(Math.min(cell - 5.8 * type, artwork.width < 300 ? 20 * type : 22 * type));
  const plane = planeAround(farthest(panels), size);
  const keys = panels.map((panel) => keyLines(setting, panel, figure.frame, cell));
  const keyHeight = Math.max(...keys.map((lines) => lines.flatMap(({ texts }) => texts).length)) * line;
  const above = (Math.max(...heads.map(({ length }) => length)) + 1.6) * line;
  const below = 1.75 * type + keyHeight + 0.5 * line;
  const side = (cell - size) / 2;
  const obstacles = panels.flatMap((panel) => [panel.marks, ...outlines(setting, panel)]);
  const eye = markArea(
    panels.map(({ marks }) => marks),
    size,
    type,
  );
  const place = { side, plane, eye, turn: labelTurnOf(plane, artwork, obstacles) };
  return frame(artwork, {
    columns,
    panel: { width: size, height: size },
    margin: { left: side, right: side, top: above, bottom: below },
    gap: { column: 2 * side + type, row: above + below + 0.75 * line },
    panels: panels.map((panel, index) => [
      ...onPlane(setting, figure, panel, place),
      ...labels((heads[index] ?? []).map((head, i) => ({ ...head, x: -side, y: (i + 0.5) * line - above }))),
      ...keyLayers(artwork, keys[index] ?? [], { x: -side, y: size + 1.75 * type + 0.25 * line }),
    ]),
    foot: visitLines(setting, 'astigmatism'),
  });
}

/** Rings, eyes, centroid and regions of one panel. */
function onPlane(
  setting: ChartSetting,
  figure: VectorFigure,
  panel: VectorPanel,
  { plane, side, eye, turn }: { plane: Plane; side: number; eye: number; turn: number },
) {
  const { artwork, words } = setting;
  return [
    ...planeGround(plane, artwork),
    ...planeLabels(plane, artwork, words, { frame: figure.frame, turn, marks: [panel.marks, ...outlines(setting, panel)] }),
    ...(figure.frame === 'incision' ? sideLabels(plane, artwork, words, side) : []),
    ...eyeLayers(setting, plane, panel, eye),
    ...vectorLayers(setting, plane, panel),
  ];
}

/** The outlines of the regions of a panel, as far as they are known. */
function outlines({ results }: ChartSetting, { measure, cohort }: VectorPanel) {
  return regions.map((name) => {
    const ellipse = ellipseOf(results, measure, cohort.group, name);
    const corners = ellipse ? outlineOf(ellipse) : [];
    return { x: corners.map(({ x }) => x), y: corners.map(({ y }) => y) };
  });
}

/** Distance of the farthest eye from the middle, over all panels, dioptres. */
function farthest(panels: readonly VectorPanel[]): number {
  let reach = 0;
  for (const { marks } of panels) {
    marks.x.forEach((x, i) => {
      reach = Math.max(reach, vectorMagnitude(x, marks.y[i] as number));
    });
  }
  return reach;
}

/** Lines above a plane: cohort where there are several, panel, eyes. */
function headLabels(
  setting: ChartSetting,
  { id, measure, cohort }: VectorPanel,
  width: number,
): readonly Omit<Label, 'x' | 'y'>[] {
  const { artwork, words, cohorts } = setting;
  const { type: size } = artwork;
  const bold = [
    ...(cohorts.length > 1 ? [headingText(cohort.label, width, size)] : []),
    ...wrapped(words.tables.vectors.named[id].panel, width, { size, weight: 'bold' }),
  ];
  const eyes = wrapped(sampleText(setting, measure, cohort), width, { size });
  return [...bold.map((text) => ({ text, weight: 'bold' as const })), ...eyes.map((text) => ({ text }))];
}
