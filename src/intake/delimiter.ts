/** What stands between the cells of a file, by the names that audit.yaml and the manifest use. */
export type Delimiter = 'comma' | 'semicolon' | 'tab' | 'pipe';

/** The character of each delimiter. */
export const delimiterCharacters: Readonly<Record<Delimiter, string>> = {
  comma: ',',
  semicolon: ';',
  tab: '\t',
  pipe: '|',
};

const names = Object.keys(delimiterCharacters) as Delimiter[];
const linesLookedAt = 50;

/** The delimiter, and whether the first line is a spreadsheet's `sep=;` that is no row of the table. */
export interface DelimiterJudgement {
  /** Undefined: no line has any of the four, or two fit equally well. */
  delimiter: Delimiter | undefined;
  separatorLine: boolean;
}

/**
 * Judges the delimiter from the first lines of a file. Delimiters inside quotes do not count, and a quoted line break
 * does not end a line. The header decides, the first line with any of the four: the delimiter is the one that it has
 * and that most rows have as often as it, so that decimal commas and commas in text do not win.
 *
 * @param text       the beginning of the file, decoded; an unfinished last line is passed over
 * @param headerRow  1 where the header is the first row (after a `sep=` line)
 * @source RFC 4180 for quotes; `sep=` is common practice, no source
 * @example judgeDelimiter('sph;cyl\n1,25;0,50\n').delimiter // 'semicolon'
 */
export function judgeDelimiter(text: string, headerRow = 1): DelimiterJudgement {
  const declared = /^"?sep=([,;\t|])"?(?:\r\n|\r|\n)/i.exec(text)?.[1];
  if (declared) {
    return { delimiter: names.find((name) => delimiterCharacters[name] === declared), separatorLine: true };
  }
  const lines = countedLines(text).slice(headerRow - 1);
  return { delimiter: best(lines), separatorLine: false };
}

type Counts = Record<Delimiter, number>;

/**
 * How many cells most of the first rows below the header have, blank ones at the end among them; 0 where there are no
 * rows. A row with fewer has lost a delimiter, or what a delimiter behind its last cell would add.
 *
 * @param text       the beginning of the file, decoded
 * @param delimiter  what stands between its cells
 * @param headerRow  1 where the header is the first row
 * @example usualCells('a;b;\n1;2;\n3;4;\n', 'semicolon') // 3
 */
export function usualCells(text: string, delimiter: Delimiter, headerRow = 1): number {
  const times = new Map<number, number>();
  for (const line of countedLines(text).slice(headerRow)) {
    const cells = line[delimiter] + 1;
    times.set(cells, (times.get(cells) ?? 0) + 1);
  }
  const [most] = [...times].sort(([a, often], [b, oftener]) => oftener - often || b - a);
  return most?.[0] ?? 0;
}

function best(lines: readonly Counts[]): Delimiter | undefined {
  // A title above the header has none of the four; where it ends is another question.
  const top = lines.findIndex((line) => names.some((name) => line[name] > 0));
  const header = lines[top];
  if (!header) return undefined;
  const rows = lines.slice(top + 1);
  const scored = names
    .filter((name) => header[name] > 0)
    .map((name) => ({ name, alike: rows.filter((row) => row[name] === header[name]).length, cells: header[name] }))
    .sort((a, b) => b.alike - a.alike || b.cells - a.cells);
  const [first, second] = scored;
  const tied = first && second && first.alike === second.alike && first.cells === second.cells;
  return tied ? undefined : first?.name;
}

/** How often each delimiter stands outside quotes, for the first lines that are not blank. */
function countedLines(text: string): Counts[] {
  const lines: Counts[] = [];
  let line: Counts | undefined;
  let quoted = false;
  for (const character of text) {
    if (character === '"') quoted = !quoted;
    if (!quoted && (character === '\n' || character === '\r')) {
      if (line) lines.push(line);
      if (lines.length === linesLookedAt) return lines;
      line = undefined;
      continue;
    }
    line ??= { comma: 0, semicolon: 0, tab: 0, pipe: 0 };
    const name = quoted ? undefined : names.find((one) => delimiterCharacters[one] === character);
    if (name) line[name] += 1;
  }
  return line && lines.length === 0 ? [line] : lines;
}
