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
  /** Panels of each column, from top to bottom, where columns are filled one after the other; else rows are. */
  stacks?: readonly number[];
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
  const { panel, margin, panels, foot } = grid;
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
    bounds: 'flush',
    ...arranged(
      grid,
      panels.map((layers, index) => {
        return { width: panel.width, height: heights[index], layer: withFoot(layers, index) };
      }),
    ),
  };
}

/** Panels in rows, or in columns of their own heights. */
function arranged({ columns, panel, gap, stacks }: Grid, drawn: readonly object[]): object {
  if (!stacks) return { columns, spacing: { column: gap.column, row: gap.row }, concat: drawn };
  return {
    // A column of panels has no width of its own for vega, which places the next one from where it begins.
    spacing: panel.width + gap.column,
    hconcat: columnsOf(drawn, stacks).map((vconcat) => ({ bounds: 'flush', spacing: gap.row, vconcat })),
  };
}

function columnsOf<T>(all: readonly T[], stacks: readonly number[]): readonly (readonly T[])[] {
  const starts = stacks.map((_, i) => stacks.slice(0, i).reduce((sum, one) => sum + one, 0));
  return stacks.map((size, i) => all.slice(starts[i], (starts[i] as number) + size));
}

/** From the top of the first panels to the bottom of the last. */
function heightOf(
  heights: readonly number[],
  { columns, gap, stacks }: Pick<Grid, 'columns' | 'gap' | 'stacks'>,
): number {
  const together = (own: readonly number[]): number => own.reduce((sum, one) => sum + one, (own.length - 1) * gap.row);
  if (stacks) return Math.max(...columnsOf(heights, stacks).map(together));
  const rows = Math.ceil(heights.length / columns);
  const tallest = Array.from({ length: rows }, (_, row) => {
    return Math.max(...heights.slice(row * columns, (row + 1) * columns));
  });
  return together(tallest);
}
