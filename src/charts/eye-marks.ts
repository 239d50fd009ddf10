import type { Cohort } from './cohorts.js';
import type { Layer } from './marks.js';
import { cellsOf, mostMarks, type Place, placesOf } from './places.js';
import { type Plane, planeScales } from './plane.js';
import type { ChartSetting } from './setting.js';

/** The eyes of one panel; parallel. */
export interface EyeMarks {
  x: readonly number[];
  y: readonly number[];
  eye: readonly number[];
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
export function eyeLayers(
  setting: ChartSetting,
  plane: Plane,
  cohort: Cohort,
  marks: EyeMarks,
  area: number,
): readonly Layer[] {
  if (drawnAsCells(setting, marks)) return [cellLayer(setting, plane, cohort, marks)];
  if (setting.mark) return [namedLayer(plane, cohort, marks, area, setting.mark)];
  return [placeLayer(plane, cohort, placesOf(marks.x, marks.y), area)];
}

/** Area of the mark of one eye: smaller where many eyes share a place, whose mark would bury its neighbours. */
export function markArea(panels: readonly EyeMarks[], { size }: Plane, type: number): number {
  const most = Math.max(1, ...panels.map(({ x, y }) => placesOf(x, y)[0]?.eyes ?? 0));
  const usual = Math.min(0.36 * type, size / 45);
  return Math.max((0.14 * type) ** 2, Math.min(usual ** 2, (size / 12) ** 2 / most));
}

/** Thin outlines, so that marks on one another are seen to be several. */
const markOf = ({ accent }: Cohort): object => {
  return { type: 'point', shape: 'circle', fill: accent.tint, stroke: accent.colour, strokeWidth: 0.5, opacity: 1 };
};

function placeLayer(plane: Plane, cohort: Cohort, places: readonly Place[], area: number): Layer {
  const values = places.map(({ x, y, eyes }) => ({ x, y, size: eyes * area }));
  const size = { field: 'size', type: 'quantitative', scale: null, legend: null };
  return { data: { values }, mark: markOf(cohort), encoding: { ...planeScales(plane), size } };
}

function namedLayer(
  plane: Plane,
  cohort: Cohort,
  { x, y, eye }: EyeMarks,
  area: number,
  mark: (eye: number) => string,
): Layer {
  const values = x.map((value, i) => ({ x: value, y: y[i], eye: mark(eye[i] as number) }));
  const description = { field: 'eye', type: 'nominal' };
  const named = { ...markOf(cohort), size: area, aria: true };
  return { data: { values }, mark: named, encoding: { ...planeScales(plane), description } };
}

/** Squares of cells: the more eyes the larger, up to the whole cell; areas grow more slowly, so that few eyes show. */
function cellLayer(setting: ChartSetting, plane: Plane, { accent }: Cohort, { x, y }: EyeMarks): Layer {
  const hides = setting.mark === undefined ? setting.plan.outputs.small_cells : 0;
  const { cells, size } = cellsOf(x, y, plane.radius, Math.max(1, hides));
  const most = Math.max(1, ...cells.map(({ eyes }) => eyes));
  const full = ((size / plane.radius) * (plane.size / 2)) ** 2;
  const values = cells.map((cell) => ({ x: cell.x, y: cell.y, size: full * (cell.eyes / most) ** 0.65 }));
  const mark = { type: 'point', shape: 'square', fill: accent.colour, strokeWidth: 0, opacity: 1 };
  const area = { field: 'size', type: 'quantitative', scale: null, legend: null };
  return { data: { values }, mark, encoding: { ...planeScales(plane), size: area } };
}
