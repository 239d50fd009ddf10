import { count } from '../format/number.js';
import type { Cohort } from './cohorts.js';
import { drawnAsCells, type EyeMarks } from './eye-marks.js';
import { type Layer, place, type Stroke, stroked } from './marks.js';
import { cellsOf, placesOf } from './places.js';
import type { ChartSetting } from './setting.js';

/** One axis: its ends, and where its numbers stand. */
export interface AxisRange {
  from: number;
  to: number;
  ticks: readonly number[];
}

/** A panel of two axes, and its size in points. */
export interface Axes {
  x: AxisRange;
  y: AxisRange;
  width: number;
  height: number;
}

const steps = [0.5, 1, 2, 5, 10, 20] as const;

/**
 * An axis around values, from step to step, with few enough numbers to be read.
 *
 * @param most  of steps
 * @example axisAround(20.7, 27.4, 6) // from 20 to 28, numbers every 2
 */
export function axisAround(low: number, high: number, most: number): AxisRange {
  const fits = (step: number): boolean => Math.ceil(high / step) - Math.floor(low / step) <= most;
  const step = steps.find(fits) ?? 50;
  const first = Math.floor(low / step);
  const last = Math.max(Math.ceil(high / step), first + 1);
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
  return { from: first * step, to: last * step, ticks };
}

/** Place of two values in the panel, points from the top left. */
export function pointAt({ x, y, width, height }: Axes, across: number, up: number): { x: number; y: number } {
  return {
    x: ((across - x.from) / (x.to - x.from)) * width,
    y: height - ((up - y.from) / (y.to - y.from)) * height,
  };
}

/** A line between two places given in values, which carries both axes. */
export function axesLayer({ x, y }: Axes, ends: readonly (readonly [x: number, y: number])[], stroke: Stroke): Layer {
  const axis = ({ from, to, ticks }: AxisRange) => ({
    type: 'quantitative',
    scale: { domain: [from, to], nice: false, zero: false },
    axis: { title: null, values: ticks },
  });
  return {
    data: { values: ends.map(([across, up]) => ({ x: across, y: up })) },
    mark: { type: 'line', clip: true, ...stroked(stroke) },
    encoding: { x: { field: 'x', ...axis(x) }, y: { field: 'y', ...axis(y) } },
  };
}

/** A line through places given in values, cut at the edges of the panel. */
export function lineLayer(axes: Axes, values: readonly (readonly [x: number, y: number])[], stroke: Stroke): Layer {
  return {
    data: { values: values.map(([across, up]) => pointAt(axes, across, up)) },
    mark: { type: 'line', clip: true, ...stroked(stroke) },
    encoding: { x: place('x'), y: place('y'), order: { field: 'x' } },
  };
}

/** The area between two lines, cut at the edges of the panel. */
export function bandLayer(
  axes: Axes,
  values: readonly { x: number; low: number; high: number }[],
  fill: string,
): Layer {
  const data = values.map(({ x, low, high }) => {
    return { ...pointAt(axes, x, low), y2: pointAt(axes, x, high).y };
  });
  return {
    data: { values: data },
    mark: { type: 'area', clip: true, fill, opacity: 0.7 },
    encoding: { x: place('x'), y: place('y'), y2: { field: 'y2' } },
  };
}

/** Eyes of a panel: by name on the internal page, else places without identity, or counts in cells. */
export function eyesLayer(setting: ChartSetting, axes: Axes, cohort: Cohort, marks: EyeMarks): Layer {
  if (drawnAsCells(setting, marks)) return cellsLayer(setting, axes, cohort, marks);
  const { mark, artwork } = setting;
  const area = (0.3 * artwork.type) ** 2;
  const shape = { type: 'point', shape: 'circle', fill: cohort.accent.tint, stroke: cohort.accent.colour };
  const look = { ...shape, strokeWidth: 0.5, opacity: 1 };
  if (mark) {
    const values = marks.x.map((x, i) => {
      return { ...pointAt(axes, x, marks.y[i] as number), eye: mark(marks.eye[i] as number) };
    });
    const description = { field: 'eye', type: 'nominal' };
    return {
      data: { values },
      mark: { ...look, size: area, aria: true },
      encoding: { x: place('x'), y: place('y'), description },
    };
  }
  const values = placesOf(marks.x, marks.y).map(({ x, y, eyes }) => ({ ...pointAt(axes, x, y), size: eyes * area }));
  return { data: { values }, mark: look, encoding: { x: place('x'), y: place('y'), size: sized } };
}

const sized = { field: 'size', type: 'quantitative', scale: null, legend: null };

/** Squares of cells: the more eyes the larger; areas grow more slowly, so that few eyes show. */
function cellsLayer({ plan, mark }: ChartSetting, axes: Axes, { accent }: Cohort, marks: EyeMarks): Layer {
  const { x, y, width, height } = axes;
  const hides = mark === undefined ? plan.outputs.small_cells : 0;
  // From −1 to 1 along both axes, as the cells of a plane are.
  const scaled = (values: readonly number[], { from, to }: AxisRange) =>
    values.map((value) => (2 * (value - from)) / (to - from) - 1);
  const { cells, size } = cellsOf(scaled(marks.x, x), scaled(marks.y, y), 1, Math.max(1, hides));
  const most = Math.max(1, ...cells.map(({ eyes }) => eyes));
  const full = ((size / 2) * Math.min(width, height)) ** 2;
  const values = cells.map((cell) => ({
    x: ((cell.x + 1) / 2) * width,
    y: ((1 - cell.y) / 2) * height,
    size: full * (cell.eyes / most) ** 0.65,
  }));
  const square = { type: 'point', shape: 'square', fill: accent.colour, strokeWidth: 0, opacity: 1 };
  return { data: { values }, mark: square, encoding: { x: place('x'), y: place('y'), size: sized } };
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
