import { count } from '../format/number.js';
import type { Points } from '../records/report.js';
import type { Cohort } from './cohorts.js';
import type { Layer } from './marks.js';
import { cellsOf, mostMarks, placesOf } from './places.js';
import { type Plane, planeScales } from './plane.js';
import type { ChartSetting } from './setting.js';
import { type Accent, ink } from './theme.js';

/** The eyes of one panel; parallel. */
export interface EyeMarks {
  x: readonly number[];
  y: readonly number[];
  eye: readonly number[];
}

/** How the eyes of one panel are drawn. */
export interface MarkedEyes {
  cohort: Cohort;
  marks: EyeMarks;
  hollow: boolean;
}

/** The points of one panel of a figure. */
export function marksOf(all: readonly Points[], figure: string, name: string, { name: group }: Cohort): EyeMarks {
  const marks = { x: [] as number[], y: [] as number[], eye: [] as number[] };
  for (const points of all) {
    if (points.figure !== figure) continue;
    for (let row = 0; row < points.x.length; row += 1) {
      if (points.panel.at(row) !== name || (group !== undefined && points.cohort.at(row) !== group)) continue;
      marks.x.push(points.x[row] as number);
      marks.y.push(points.y[row] as number);
      marks.eye.push(points.eye[row] as number);
    }
  }
  return marks;
}

/** Whether a panel shows counts in cells: too many marks to tell apart, or small counts that must not be seen. */
export function drawnAsCells({ plan, mark }: ChartSetting, { x }: EyeMarks): boolean {
  return x.length > mostMarks || (mark === undefined && plan.outputs.small_cells > 0);
}

/**
 * The eyes of one panel: each by name on the internal page, else places without identity, or counts in cells.
 *
 * @param area  of the mark of one eye, square points
 */
export function eyeLayers(setting: ChartSetting, plane: Plane, eyes: MarkedEyes, area: number): readonly Layer[] {
  if (drawnAsCells(setting, eyes.marks)) return [cellLayer(setting, plane, eyes)];
  if (setting.mark) return [namedLayer(plane, eyes, area, setting.mark)];
  return [placeLayer(plane, eyes, area)];
}

/**
 * Area of the mark of one eye: smaller where many eyes share a place, whose mark would bury its neighbours.
 *
 * @param size  of the shorter side of a panel, points
 */
export function markArea(panels: readonly EyeMarks[], size: number, type: number): number {
  const most = Math.max(1, ...panels.map(({ x, y }) => placesOf(x, y)[0]?.eyes ?? 0));
  const usual = Math.min(0.36 * type, size / 45);
  return Math.max((0.14 * type) ** 2, Math.min(usual ** 2, (size / 12) ** 2 / most));
}

/** Outlined, so that marks on one another are seen to be several: with their colour, or where they have it, with paper. */
export function eyeMark({ colour }: Accent, hollow: boolean): object {
  const [fill, stroke] = hollow ? [ink.paper, colour] : [colour, ink.paper];
  return { type: 'point', shape: 'circle', fill, stroke, strokeWidth: hollow ? 0.6 : 0.4, opacity: 1 };
}

/** A rim of paper takes from a filled mark what a rim of colour adds to a hollow one. */
const areaOf = (hollow: boolean, area: number): number => (hollow ? area : 1.3 * area);

function placeLayer(plane: Plane, { cohort, marks, hollow }: MarkedEyes, area: number): Layer {
  const values = placesOf(marks.x, marks.y).map(({ x, y, eyes }) => ({ x, y, size: eyes * areaOf(hollow, area) }));
  const size = { field: 'size', type: 'quantitative', scale: null, legend: null };
  return { data: { values }, mark: eyeMark(cohort.accent, hollow), encoding: { ...planeScales(plane), size } };
}

function namedLayer(
  plane: Plane,
  { cohort, marks, hollow }: MarkedEyes,
  area: number,
  mark: (eye: number) => string,
): Layer {
  const { x, y, eye } = marks;
  const values = x.map((value, i) => ({ x: value, y: y[i], eye: mark(eye[i] as number) }));
  const description = { field: 'eye', type: 'nominal' };
  const named = { ...eyeMark(cohort.accent, hollow), size: areaOf(hollow, area), aria: true };
  return { data: { values }, mark: named, encoding: { ...planeScales(plane), description } };
}

/** Squares of cells: the more eyes the larger, up to the whole cell; areas grow more slowly, so that few eyes show. */
function cellLayer(setting: ChartSetting, plane: Plane, { cohort, marks }: MarkedEyes): Layer {
  const { x, y } = marks;
  const hides = setting.mark === undefined ? setting.plan.outputs.small_cells : 0;
  const { cells, size } = cellsOf(x, y, plane.radius, Math.max(1, hides));
  const most = Math.max(1, ...cells.map(({ eyes }) => eyes));
  const full = ((size / plane.radius) * (plane.size / 2)) ** 2;
  const values = cells.map((cell) => ({ x: cell.x, y: cell.y, size: full * (cell.eyes / most) ** 0.65 }));
  const mark = { type: 'point', shape: 'square', fill: cohort.accent.colour, strokeWidth: 0, opacity: 1 };
  const area = { field: 'size', type: 'quantitative', scale: null, legend: null };
  return { data: { values }, mark, encoding: { ...planeScales(plane), size: area } };
}

/** What a legend says where eyes are drawn as counts in cells. */
export function cellRemarks(setting: ChartSetting, panels: readonly EyeMarks[]): readonly string[] {
  const { plan, words, mark } = setting;
  const { cells, cellsHidden } = words.charts.doubleAngle;
  const least = mark === undefined ? plan.outputs.small_cells : 0;
  return [
    ...(panels.some((marks) => drawnAsCells(setting, marks)) ? [cells] : []),
    ...(least > 0 ? [cellsHidden(count(least))] : []),
  ];
}
