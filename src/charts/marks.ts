import { type Accent, type Artwork, ink } from './theme.js';

/** A layer of a vega-lite specification. */
export type Layer = Readonly<Record<string, unknown>>;

/** A position in points from the top left of its panel's plot. */
export const place = (field: string): object => ({ field, type: 'quantitative', scale: null, axis: null });

/** A line of text. */
export interface Label {
  /** Points from the top left of the panel's plot; y is the middle of the line. */
  x: number;
  y: number;
  text: string;
  align?: 'left' | 'center' | 'right';
  weight?: 'normal' | 'bold';
  colour?: string;
  /** Width of the paper around the letters, for text that stands on lines. */
  halo?: number;
}

/** Lines of text, as few layers as their styles need. */
export function labels(items: readonly Label[]): readonly Layer[] {
  const style = ({ align = 'left', weight = 'normal', colour = ink.full }: Label) => {
    return { type: 'text', align, baseline: 'middle', fontWeight: weight, fill: colour, clip: false };
  };
  const layersOf = (key: string): readonly Layer[] => {
    const own = items.filter((item) => item.text !== '' && keyOf(item) === key);
    const [first] = own;
    if (!first) return [];
    const values = own.map(({ x, y, text }) => ({ x, y, text }));
    const encoding = { x: place('x'), y: place('y'), text: { field: 'text' } };
    const layer = { data: { values }, mark: style(first), encoding };
    if (first.halo === undefined) return [layer];
    const halo = { stroke: ink.paper, strokeWidth: 2 * first.halo, strokeJoin: 'round' };
    return [{ ...layer, mark: { ...style(first), ...halo } }, layer];
  };
  const keyOf = (item: Label): string => JSON.stringify([style(item), item.halo]);
  return [...new Set(items.map(keyOf))].flatMap(layersOf);
}

/** A straight line. */
export interface Segment {
  x: number;
  y: number;
  x2: number;
  y2: number;
}

/** How lines are drawn. */
export interface Stroke {
  colour: string;
  width: number;
  dash?: readonly number[];
}

/** The dashes of an accent at the size of the artwork. */
export function dashesOf(dash: readonly number[], { type }: Artwork): readonly number[] {
  return dash.map((length) => (length * type) / 7.5);
}

/** Properties of a mark for a stroke; dashes are given in points. */
export function stroked({ colour, width, dash = [] }: Stroke): object {
  return { stroke: colour, strokeWidth: width, ...(dash.length > 0 ? { strokeDash: dash } : {}) };
}

/** Straight lines between positions of the panel. */
export function segments(values: readonly Segment[], stroke: Stroke): Layer {
  const encoding = { x: place('x'), y: place('y'), x2: { field: 'x2' }, y2: { field: 'y2' } };
  return { data: { values }, mark: { type: 'rule', ...stroked(stroke) }, encoding };
}

/** Filled rectangles between two corners. */
export function boxes(values: readonly Segment[], fill: string, stroke?: Stroke): Layer {
  const encoding = { x: place('x'), y: place('y'), x2: { field: 'x2' }, y2: { field: 'y2' } };
  return { data: { values }, mark: { type: 'rect', fill, ...(stroke ? stroked(stroke) : {}) }, encoding };
}

/** Areas at which the shapes look equally large, per square of their width. */
const symbolSize = { circle: 1, square: 0.8, 'triangle-up': 0.9, diamond: 0.95 } as const;

/**
 * A cohort's symbol: filled with its accent, or with paper inside an outline.
 *
 * @param scale  size against the usual one, which goes with the type
 */
export function symbol({ colour, shape, filled }: Accent, { type, strokes }: Artwork, scale = 1): object {
  const fill = filled ? colour : ink.paper;
  const size = symbolSize[shape] * (0.72 * scale * type) ** 2;
  return { shape, fill, stroke: colour, strokeWidth: strokes.bold * scale, size };
}

/** A cohort's symbol at positions of the panel. */
export function symbols(
  values: readonly { x: number; y: number }[],
  accent: Accent,
  artwork: Artwork,
  scale = 1,
): Layer {
  const mark = { type: 'point', opacity: 1, ...symbol(accent, artwork, scale) };
  return { data: { values }, mark, encoding: { x: place('x'), y: place('y') } };
}

/** A circle around a position of the panel. */
export function ring({ x, y }: { x: number; y: number }, radius: number, stroke: Stroke): Layer {
  // A vega circle of area s is √s points wide.
  const mark = { type: 'point', shape: 'circle', size: (2 * radius) ** 2, filled: false, opacity: 1 };
  const encoding = { x: place('x'), y: place('y') };
  return { data: { values: [{ x, y }] }, mark: { ...mark, ...stroked(stroke) }, encoding };
}
