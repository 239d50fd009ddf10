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
  /** All text has this size; a journal prints nothing below 7 pt. */
  type: number;
  /** Guides; axes and intervals; curves and regions. */
  strokes: { hair: number; line: number; bold: number };
  /** Of pixel formats. */
  dpi: number;
}

const points = (millimetres: number): number => Math.round((millimetres * 7200) / 25.4) / 100;

/** Column widths of journals from `outputs.artwork`; 129 mm is one and a half columns. */
export const artworks: Readonly<Record<string, Artwork>> = {
  'journal-single': { width: points(84), type: 7.5, strokes: { hair: 0.5, line: 0.8, bold: 1.2 }, dpi: 300 },
  'journal-middle': { width: points(129), type: 7.5, strokes: { hair: 0.5, line: 0.8, bold: 1.2 }, dpi: 300 },
  'journal-double': { width: points(174), type: 8, strokes: { hair: 0.5, line: 0.8, bold: 1.4 }, dpi: 300 },
  slide: { width: 720, type: 14, strokes: { hair: 0.75, line: 1.5, bold: 2.5 }, dpi: 150 },
};

/** Arimo has the widths of Arial: the same layout on machines that lack it. */
const fontFamily = 'Arimo, Arial, Helvetica, sans-serif';

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
