import { round } from '../format/round.js';

/**
 * The look of every chart: one neutral ink, one accent a cohort. Accents differ in hue, in lightness and in shape, so
 * that they are told apart by colour-blind readers and in greyscale print; text is never set in an accent.
 */
export const ink = {
  /** Text, axes, and what belongs to no cohort. */
  full: '#1d2730',
  /** Second-rank text; 6:1 against paper. */
  soft: '#56626d',
  /** Guide lines. */
  hair: '#c3cad0',
  /** Grounds of boxes and bands. */
  wash: '#eef1f3',
  paper: '#ffffff',
} as const;

/** How one cohort is drawn, everywhere. */
export interface Accent {
  colour: string;
  /** The colour thinned with paper, for areas inside an outline. */
  tint: string;
  /** Name of a vega symbol. */
  shape: 'circle' | 'square' | 'triangle-up' | 'diamond';
  filled: boolean;
  /** Lengths of dashes and gaps, points where type is 7.5 pt; empty: a full line. */
  dash: readonly number[];
}

/** In the order of the cohorts. Lightness (CIE L*) 27, 48, 62 and 73; checked in test/charts/theme.test.ts. */
export const accents: readonly Accent[] = [
  { colour: '#28398a', tint: '#bfc4dc', shape: 'circle', filled: true, dash: [] },
  { colour: '#bd4f1f', tint: '#ebcabc', shape: 'square', filled: false, dash: [5, 2] },
  { colour: '#3aa892', tint: '#c4e5de', shape: 'triangle-up', filled: true, dash: [1.5, 1.5] },
  { colour: '#d8ae35', tint: '#f3e7c2', shape: 'diamond', filled: false, dash: [6, 2, 1.5, 2] },
];

/** Where the artwork is shown: sizes in points (1 px of the specification is 1 pt). */
export interface Artwork {
  width: number;
  /** All text has this size, letters of panels a larger one; a journal prints nothing below 7 pt. */
  type: number;
  /** Guides; axes and intervals; curves and regions. */
  strokes: { hair: number; line: number; bold: number };
  /** Of PNG. */
  dpi: number;
  /** Of TIFF: what journals ask of line work. @source Elsevier's artwork pages: 1000 dpi for line art */
  tiffDpi: number;
  /** The theme's own, a published set for colour-blind readers, or greys as light as the theme's. */
  colours: 'colour' | 'okabe-ito' | 'grey';
}

/** Millimetres in points, to a hundredth. */
export function points(millimetres: number): number {
  return round((millimetres * 72) / 25.4, 2);
}

/** Lines that go with a size of type. */
export function strokesFor(type: number): Artwork['strokes'] {
  const times = Math.max(1, type / 7.5);
  return { hair: round(0.5 * times, 2), line: round(0.8 * times, 2), bold: round(1.2 * times, 2) };
}

const journal = { dpi: 300, tiffDpi: 1000, colours: 'colour' } as const;
const screen = { dpi: 150, tiffDpi: 150, colours: 'colour' } as const;
const printed = { hair: 0.5, line: 0.8, bold: 1.2 };

/** What `outputs.artwork` knows by itself: column widths of journals, 129 mm one and a half of them; slide and web page. */
export const artworks: Readonly<Record<string, Artwork>> = {
  'journal-single': { width: points(84), type: 7.5, strokes: printed, ...journal },
  'journal-middle': { width: points(129), type: 7.5, strokes: printed, ...journal },
  'journal-double': { width: points(174), type: 8, strokes: { ...printed, bold: 1.4 }, ...journal },
  slide: { width: 720, type: 14, strokes: { hair: 0.75, line: 1.5, bold: 2.5 }, ...screen },
  web: { width: 640, type: 12, strokes: { hair: 0.75, line: 1.25, bold: 2 }, ...screen },
};

/** Least width in which every chart can be read, in times its size of type; a single column of a journal has 31. */
export const leastWidth = 29;

/** Whether panels have to stand below one another: a single column, and what is no wider for its letters. */
export function isNarrow({ width, type }: Artwork): boolean {
  return width / type < 40;
}

/** Arimo has the widths of Arial: the same layout on machines that lack it. */
export const fontFamily = 'Arimo, Arial, Helvetica, sans-serif';

/** vega-lite configuration: text, axes and marks as the artwork wants them; nothing is announced but eyes. */
export function chartConfig({ type, strokes }: Artwork): object {
  const text = { labelFontSize: type, titleFontSize: type, labelColor: ink.full, titleColor: ink.full };
  return {
    font: fontFamily,
    background: ink.paper,
    view: { stroke: null },
    mark: { aria: false },
    text: { fontSize: type, fill: ink.full },
    axis: {
      ...text,
      aria: false,
      titleFontWeight: 'normal',
      grid: false,
      domainColor: ink.full,
      tickColor: ink.full,
      domainWidth: strokes.line,
      tickWidth: strokes.line,
      labelFlush: false,
      gridColor: ink.hair,
      gridWidth: strokes.hair,
      tickSize: type / 2.5,
      labelPadding: type / 3,
      translate: 0,
    },
  };
}
