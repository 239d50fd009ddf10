import { lineHeight } from './frame.js';
import { cohortKey } from './key.js';
import { type Label, type Layer, labels, symbols } from './marks.js';
import type { ChartSetting } from './setting.js';
import { textWidth, wrapped } from './text-width.js';
import type { Artwork } from './theme.js';

/** Lengths of the ledger, points; y downwards from the top of the picture. */
export interface LedgerLayout {
  artwork: Artwork;
  width: number;
  /** Right ends of the columns. */
  columns: readonly number[];
  /** Names of the columns, broken to them. */
  heads: readonly (readonly string[])[];
  /** Whether symbols stand for the cohorts, whose names have no room. */
  hasKey: boolean;
  /** Where labels end. */
  room: number;
  top: number;
}

/** Room for labels that leaves nearly all of them on one line, in type sizes. */
const easyRoom = 34;

/** The columns of a ledger with these heads: the cohorts and all eyes, or all eyes alone. */
export function ledgerLayout(artwork: Artwork, heads: readonly string[]): LedgerLayout {
  const { type } = artwork;
  const widths = columnWidths(artwork, heads);
  const all = sum(widths);
  const width = Math.min(artwork.width, easyRoom * type + all);
  const room = width - type - all;
  const columns = widths.map((_, i) => room + sum(widths.slice(0, i + 1)));
  const broken = heads.map((head, i) => headLines(artwork, head, widths[i] as number));
  const hasKey = broken.some(({ length }) => length > mostLines);
  const lines = hasKey ? heads.length + 2 : Math.max(...broken.map(({ length }) => length));
  return { artwork, width, columns, heads: broken, hasKey, room, top: (lines + 0.4) * lineHeight(artwork) };
}

const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);

/** Lines that the name of a column may have. */
const mostLines = 2;

/** Widths of the columns, each with the space before it: names on one line where there is room, else on two. */
function columnWidths(artwork: Artwork, heads: readonly string[]): readonly number[] {
  const { type, width } = artwork;
  const holding = (texts: readonly string[]): number =>
    type + Math.max(...['00,000', ...texts].map((text) => textWidth(text.trimEnd(), type, 'bold')));
  const whole = heads.map((head) => holding([head]));
  if (sum(whole) <= Math.max(0.3 * width, width - easyRoom * type)) return whole;
  const broken = heads.map((head) => holding(head.split(/(?<=[ -])/)));
  const isLegible = heads.every((head, i) => headLines(artwork, head, broken[i] as number).length <= mostLines);
  return isLegible && sum(broken) <= 0.6 * width ? broken : heads.map(() => holding([]));
}

function headLines({ type }: Artwork, head: string, column: number): readonly string[] {
  return wrapped(head, column - type + 0.01, { size: type, weight: 'bold' });
}

/** Names of the columns; where they are too long, symbols with a key above them. */
export function headLayers(setting: ChartSetting, { columns, heads, hasKey, top }: LedgerLayout): readonly Layer[] {
  const { artwork, cohorts } = setting;
  const line = lineHeight(artwork);
  const bottom = top - 0.8 * line;
  const named = heads.map((texts, index) =>
    texts.map((text, i): Label => {
      const y = bottom - (texts.length - 1 - i) * line;
      return { x: columns[index] as number, y, text, align: 'right', weight: 'bold' };
    }),
  );
  if (!hasKey) return labels(named.flat());
  const marks = cohorts.map(({ accent }, index) => {
    return symbols([{ x: (columns[index] as number) - artwork.type / 2, y: bottom }], accent, artwork);
  });
  return [...cohortKey(setting, { x: 0, y: 0 }, () => ''), ...marks, ...labels(named.at(-1) ?? [])];
}
