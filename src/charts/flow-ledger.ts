import { headLayers, type LedgerLayout, ledgerLayout } from './flow-columns.js';
import { frame, lineHeight } from './frame.js';
import { boxes, type Label, type Layer, labels, place, segments } from './marks.js';
import type { ChartSetting } from './setting.js';
import { wrapped } from './text-width.js';
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
  const layout = ledgerLayout(artwork, heads);
  const placed = placedIn(layout, entries);
  const last = placed.at(-1) as Placed;
  const layers = [
    ...headLayers(setting, layout),
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

/** Where labels start: in boxes, and behind the elbow of a reason. */
const indentOf = ({ kind }: FlowEntry, { type }: Artwork): number => (kind === 'box' ? type : 2.75 * type);

function placedIn({ artwork, room, top }: LedgerLayout, entries: readonly FlowEntry[]): readonly Placed[] {
  const line = lineHeight(artwork);
  const space = (entry: FlowEntry, before: FlowEntry | undefined): number => {
    if (!before) return 0;
    return entry.kind === 'box' ? line : before.kind === 'box' ? line * 0.4 : 0;
  };
  let y = top;
  return entries.map((entry, index) => {
    const texts = entry.lines.map(({ label }, i) => {
      const weight = weightOf(entry, i);
      return wrapped(label, room - indentOf(entry, artwork), { size: artwork.type, weight });
    });
    const height = (texts.flat().length + (entry.kind === 'box' ? 0.5 : 0)) * line;
    y += space(entry, entries[index - 1]);
    const placed = { entry, y, height, texts };
    y += height;
    return placed;
  });
}

/** The first line of a box is what it is about. */
const weightOf = ({ kind }: FlowEntry, line: number): 'bold' | 'normal' =>
  kind === 'box' && line === 0 ? 'bold' : 'normal';

/** The way from box to box, with an elbow to every reason. */
function arrows({ artwork }: LedgerLayout, placed: readonly Placed[]): readonly Layer[] {
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
  const mark = { type: 'point', shape: 'triangle-down', size: size * size, fill: ink.full, strokeWidth: 0, opacity: 1 };
  return { data: { values }, mark, encoding: { x: place('x'), y: place('y') } };
}

function entryLayers({ artwork, columns, width }: LedgerLayout, { entry, y, height, texts }: Placed): readonly Layer[] {
  const line = lineHeight(artwork);
  const half = artwork.strokes.line / 2;
  const inset = entry.kind === 'box' ? 0.25 * line : 0;
  let at = y + inset + line / 2;
  const rows = entry.lines.flatMap(({ counts }, index) => {
    const lines = texts[index] as readonly string[];
    const style = { weight: weightOf(entry, index) };
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
