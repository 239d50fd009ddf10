import type { Artwork } from '../charts/theme.js';
import type { CategoryColumn } from '../columns/category-column.js';

/** Marks that stand for eyes, of one figure. */
export interface Points {
  figure: string;
  panel: CategoryColumn;
  cohort: CategoryColumn;
  x: Float64Array;
  y: Float64Array;
  /** Eye index: for the internal page only. */
  eye: Int32Array;
}

/** One typeset cell, and the results rows its numbers were taken from: 'measure|group|statistic'. */
export interface Cell {
  text: string;
  from: readonly string[];
}

export interface TableRow {
  label: string;
  indent: 0 | 1;
  cells: readonly Cell[];
}

export interface TypesetTable {
  id: string;
  number: number;
  title: string;
  head: readonly { text: string; n?: number }[];
  rows: readonly TableRow[];
  footnotes: readonly string[];
  /** Short id that leads to the rows behind its numbers. */
  provenance?: string;
}

export interface Figure {
  id: string;
  number: number;
  /** A vega-lite specification with its data inline; none where the figure is made of panels. */
  spec: object;
  /** The profile it is drawn for, and which its files must keep to. */
  artwork: Artwork;
  /** Figures that stand in it with letters, so many side by side. */
  panels?: { figures: readonly Figure[]; columns: number };
  /** Figure title in a few words; the artwork itself bears none. */
  title: string;
  legend: string;
  alt: string;
  from: readonly string[];
  /** Short id that leads to them. */
  provenance?: string;
}
