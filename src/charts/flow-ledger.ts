import { frame, lineHeight } from './frame.js';
import { cohortKey } from './key.js';
import { boxes, type Label, type Layer, labels, segments, symbols } from './marks.js';
import type { ChartSetting } from './setting.js';
import { textWidth, wrapped } from './text-width.js';
import { type Artwork, ink } from './theme.js';

/** A label and its count in every column. */
export interface FlowLine {
  label: string;
  counts: readonly string[];
}

/** A box that eyes come to, or a reason for which some leave on the way to the next box. */
export interface FlowEntry {
  kind: 'box' | 'reason';
  /** The first line of a box is set in bold. */
  lines: readonly FlowLine[];
}

/** Lengths of the ledger, points; y downwards from the top of the picture. */
interface Layout {
  artwork: Artwork;
  width: number;
  /** Right ends of the columns. */
  columns: readonly number[];
  /** Where labels end. */
  room: number;
  /** Of the heads; none where symbols stand for them. */
  lines: number | undefined;
  top: number;
}

/** One entry with its place. */
interface Placed {
  entry: FlowEntry;
  y: number;
  height: number;
  /** Labels broken to the room they have, one list a line. */
  texts: readonly (readonly string[])[];
}

/**
 * A flow as a ledger: boxes over the whole width with their counts in columns, and between two boxes, on the arrow from
 * one to the next, the reasons with theirs. Takes any number of columns and long reasons without a box growing wild.
 *
 * @param heads  of the columns: the cohorts and all eyes, or all eyes alone
 */
export function flowLedger(
  setting: ChartSetting,
  heads: readonly string[],
  entries: readonly FlowEntry[],
  foot: readonly string[],
): object {
  const { artwork } = setting;
  const layout = layoutOf(artwork, heads);
  const placed = placedIn(layout, entries);
  const last = placed.at(-1) as Placed;
  const layers = [
    ...headLayers(setting, layout, heads),
    ...arrows(layout, placed),
    ...placed.flatMap((one) => entryLayers(layout, one)),
  ];
  return frame(artwork, {
    columns: 1,
    panel: { width: artwork.width, height: last.y + last.height },
    margin: { left: 0, right: 0, top: 0, bottom: lineHeight(artwork) / 2 },
    gap: { column: 0, row: 0 },
    panels: [layers],
    foot,
  });
}

/** Room for labels that leaves nearly all of them on one line. */
const easyRoom = 34;

function layoutOf(artwork: Artwork, heads: readonly string[]): Layout {
  const { type } = artwork;
  const { widths, lines } = columnWidths(artwork, heads);
  const all = widths.reduce((total, one) => total + one, 0);
  const whole = Math.min(artwork.width, easyRoom * type + all);
  let end = whole - type - all;
  const room = end;
  const columns = widths.map((width) => {
    end += width;
    return end;
  });
  return {
    artwork,
    width: whole,
    columns,
    room,
    lines,
    top: ((lines ?? heads.length + 2) + 0.4) * lineHeight(artwork),
  };
}

/**
 * Widths of the columns with the space before them: heads on one line where there is room for that, else on two,
 * broken at spaces and hyphens.
 *
 * @returns no `lines` where even that is too wide and symbols have to stand for the cohorts
 */
function columnWidths(
  artwork: Artwork,
  heads: readonly string[],
): { widths: readonly number[]; lines: number | undefined } {
  const { type, width } = artwork;
  const wide = (texts: readonly string[]): number =>
    type + Math.max(...['00,000', ...texts].map((text) => textWidth(text.trimEnd(), type, true)));
  const whole = heads.map((head) => wide([head]));
  const broken = heads.map((head) => wide(head.split(/(?<=[ -])/)));
  const sum = (widths: readonly number[]): number => widths.reduce((total, one) => total + one, 0);
  if (sum(whole) <= width - easyRoom * type) return { widths: whole, lines: 1 };
  const isTwoLines = heads.every((head, i) => wrapped(head, headRoom(broken[i] ?? 0, artwork), type).length <= 2);
  if (isTwoLines && sum(broken) <= 0.6 * width) return { widths: broken, lines: 2 };
  return { widths: heads.map(() => wide([])), lines: undefined };
}

/** Width that a head may have in its column, as text is measured: bold letters are wider. */
const headRoom = (column: number, { type }: Artwork): number => (column - type) / 1.1 + 0.01;

/** Where labels start: in boxes, and behind the elbow of a reason. */
const indentOf = ({ kind }: FlowEntry, { type }: Artwork): number => (kind === 'box' ? type : 2.75 * type);

function placedIn({ artwork, room, top }: Layout, entries: readonly FlowEntry[]): readonly Placed[] {
  const line = lineHeight(artwork);
  const space = (entry: FlowEntry, before: FlowEntry | undefined): number => {
    if (!before) return 0;
    return entry.kind === 'box' ? line : before.kind === 'box' ? line * 0.4 : 0;
  };
  let y = top;
  return entries.map((entry, index) => {
    const texts = entry.lines.map(({ label }) => wrapped(label, room - indentOf(entry, artwork), artwork.type));
    const height = (texts.flat().length + (entry.kind === 'box' ? 0.5 : 0)) * line;
    y += space(entry, entries[index - 1]);
    const placed = { entry, y, height, texts };
    y += height;
    return placed;
  });
}

/** Names of the columns; where they are too long, symbols with a key above them. */
function headLayers(setting: ChartSetting, layout: Layout, heads: readonly string[]): readonly Layer[] {
  const { artwork, cohorts } = setting;
  const { columns, top, lines } = layout;
  const line = lineHeight(artwork);
  const bottom = top - 0.8 * line;
  const named = (texts: readonly string[], index: number): readonly Label[] =>
    texts.map((text, i) => {
      const y = bottom - (texts.length - 1 - i) * line;
      return { x: columns[index] as number, y, text, align: 'right', weight: 'bold' };
    });
  if (lines !== undefined) return labels(heads.flatMap((head, i) => named(headTexts(layout, head, i), i)));
  const marks = cohorts.map(({ accent }, index) => {
    return symbols([{ x: (columns[index] as number) - artwork.type / 2, y: bottom }], accent, artwork);
  });
  const last = heads.length - 1;
  return [
    ...cohortKey(setting, { x: 0, y: 0 }, () => ''),
    ...marks,
    ...labels(named(headTexts(layout, heads[last] ?? '', last), last)),
  ];
}

/** A head broken to its column. */
function headTexts({ artwork, columns, room }: Layout, head: string, index: number): readonly string[] {
  const column = (columns[index] as number) - (columns[index - 1] ?? room);
  return wrapped(head, headRoom(column, artwork), artwork.type, 2);
}

/** The way from box to box, with an elbow to every reason. */
function arrows({ artwork }: Layout, placed: readonly Placed[]): readonly Layer[] {
  const { type, strokes } = artwork;
  const line = lineHeight(artwork);
  const x = 1.5 * type;
  const tip = type * 0.55;
  const isBox = ({ entry }: Placed): boolean => entry.kind === 'box';
  const found = placed.filter(isBox);
  const ways = found.slice(1).map((box, i) => {
    const from = found[i] as Placed;
    return { x, x2: x, y: from.y + from.height, y2: box.y - tip / 2 };
  });
  const elbows = placed
    .filter((one) => !isBox(one))
    .map((one) => {
      return { x, x2: 2.4 * type, y: one.y + line / 2, y2: one.y + line / 2 };
    });
  return [
    segments([...ways, ...elbows], { colour: ink.full, width: strokes.line }),
    tips(
      ways.map(({ y2 }) => ({ x, y: y2 })),
      tip,
    ),
  ];
}

function tips(values: readonly { x: number; y: number }[], size: number): Layer {
  const place = (field: string): object => ({ field, type: 'quantitative', scale: null, axis: null });
  const mark = { type: 'point', shape: 'triangle-down', size: size * size, fill: ink.full, strokeWidth: 0, opacity: 1 };
  return { data: { values }, mark, encoding: { x: place('x'), y: place('y') } };
}

function entryLayers({ artwork, columns, width }: Layout, { entry, y, height, texts }: Placed): readonly Layer[] {
  const line = lineHeight(artwork);
  const half = artwork.strokes.line / 2;
  const inset = entry.kind === 'box' ? 0.25 * line : 0;
  let at = y + inset + line / 2;
  const rows = entry.lines.flatMap(({ counts }, index) => {
    const lines = texts[index] as readonly string[];
    const style = { weight: entry.kind === 'box' && index === 0 ? 'bold' : 'normal' } as const;
    const label = lines.map((text, i): Label => ({ x: indentOf(entry, artwork), y: at + i * line, text, ...style }));
    const numbers = counts.map((text, i): Label => {
      return { x: columns[i] as number, y: at, text, align: 'right', ...style };
    });
    at += lines.length * line;
    return [...label, ...numbers];
  });
  const outline = { x: half, x2: width - half, y, y2: y + height };
  const stroke = { colour: ink.full, width: artwork.strokes.line };
  return [...(entry.kind === 'box' ? [boxes([outline], ink.wash, stroke)] : []), ...labels(rows)];
}
