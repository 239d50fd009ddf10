import { type Label, type Layer, labels } from './marks.js';
import { type Artwork, chartConfig, ink } from './theme.js';

/** Panels of one size in rows and columns; all lengths in points. */
export interface Grid {
  columns: number;
  panel: { width: number; height: number };
  /** Of each panel, where they differ; else all have that of `panel`. */
  heights?: readonly number[];
  /** What stands outside the plots of the outermost panels: axes, headings. */
  margin: { left: number; top: number; right: number; bottom: number };
  /** Between the plots of neighbouring panels. */
  gap: { column: number; row: number };
  panels: readonly (readonly Layer[])[];
  /** Lines under the picture: visit and eyes. */
  foot: readonly string[];
}

/** Distance from one line of text to the next, points. */
export function lineHeight({ type }: Artwork): number {
  return Math.round(type * 1.4 * 4) / 4;
}

/**
 * Width of one panel's plot when so many columns fill the artwork; whole points, as vega takes up panels in whole pixels.
 *
 * @example panelWidth(artwork, 2, { left: 20, right: 5 }, 30)
 */
export function panelWidth(
  artwork: Artwork,
  columns: number,
  margin: { left: number; right: number },
  gap: number,
): number {
  return Math.floor((artwork.width - margin.left - margin.right - (columns - 1) * gap) / columns);
}

/**
 * A specification of exactly the artwork's width. The size is stated and nothing is fitted: vega sees no text metrics
 * where a specification is opened elsewhere, and a journal's column is a fixed width.
 */
export function frame(artwork: Artwork, grid: Grid): object {
  const { columns, panel, margin, gap, panels, foot } = grid;
  const heights = grid.heights ?? panels.map(() => panel.height);
  const height = heightOf(heights, grid);
  const line = lineHeight(artwork);
  const footHeight = foot.length === 0 ? 0 : foot.length * line + line / 4;
  const under = (text: string, index: number): Label => {
    return { x: -margin.left, y: height + margin.bottom + (index + 0.75) * line, text, colour: ink.soft };
  };
  const withFoot = (layers: readonly Layer[], index: number): readonly Layer[] => {
    return index === 0 ? [...layers, ...labels(foot.map(under))] : layers;
  };
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    config: chartConfig(artwork),
    autosize: 'none',
    padding: { ...margin, bottom: margin.bottom + footHeight },
    params: [
      { name: 'width', value: artwork.width - margin.left - margin.right },
      { name: 'height', value: height },
    ],
    columns,
    bounds: 'flush',
    spacing: { column: gap.column, row: gap.row },
    concat: panels.map((layers, index) => {
      return { width: panel.width, height: heights[index], layer: withFoot(layers, index) };
    }),
  };
}

/** From the top of the first row of panels to the bottom of the last. */
function heightOf(heights: readonly number[], { columns, gap }: Pick<Grid, 'columns' | 'gap'>): number {
  const rows = Math.ceil(heights.length / columns);
  const tallest = Array.from({ length: rows }, (_, row) => {
    return Math.max(...heights.slice(row * columns, (row + 1) * columns));
  });
  return tallest.reduce((sum, height) => sum + height, 0) + (rows - 1) * gap.row;
}
