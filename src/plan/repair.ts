/** A mistake in the writing of a line that has one likely meaning. */
type Slip = 'tabs' | 'colon' | 'sign' | 'no-blank';

export interface Repair {
  slip: Slip;
  /** Line counted from 1, column of the mistake. */
  line: number;
  column: number;
  /** Column behind what was mended: further slips of the line lie there. */
  end: number;
  lines: readonly string[];
}

/** What the yaml parser complains of: its code and where. */
export interface Complaint {
  code: string;
  line: number;
  column: number;
}

/** Values that need quotation marks: a colon inside, or in front a sign that means something to yaml. */
const hints = { colon: /:(\s|$)/, sign: /^[*&!|>"'@%`]/ } as const;

/** Whether the column stands inside braces or brackets that this line has opened. */
function insideBraces(line: string, column: number): boolean {
  const before = line.slice(0, column - 1).replace(/"[^"]*"|'[^']*'/g, '');
  const count = (pattern: RegExp): number => before.match(pattern)?.length ?? 0;
  return count(/[{[]/g) > count(/[}\]]/g);
}

/** Puts quotation marks around a text, so that yaml takes it as it stands. */
export function quoted(text: string): string {
  return /["\\]/.test(text) ? `'${text.replaceAll("'", "''")}'` : `"${text}"`;
}

/** The part of the line that is one value: where it starts and ends, counted from 0. */
function valueSpan(line: string, column: number): readonly [number, number] | undefined {
  if (insideBraces(line, column)) {
    const key = /^[^:,{}[\]]+:\s+(?=[^:,{}[\]]*: )/.exec(line.slice(column - 1))?.[0] ?? '';
    const start = column - 1 + key.length;
    const value = /^[^,}\]]*/.exec(line.slice(start))?.[0].trimEnd() ?? '';
    return [start, start + value.length];
  }
  const match = /^(\s*(?:- +)*(?:[^\s"'{[#-][^:]*:\s+)?)(.*?)(?:\s+#.*|\s*)$/.exec(line);
  return match ? [match[1]?.length ?? 0, (match[1]?.length ?? 0) + (match[2]?.length ?? 0)] : undefined;
}

/**
 * The line with the value at this column in quotation marks.
 *
 * @param line    one line of audit.yaml
 * @param column  of the value, or of the key before it, counted from 1
 * @returns undefined where no value is found, or it has its quotation marks already
 * @example quotedLine('  k1: Op: R', 7) // '  k1: "Op: R"'
 */
export function quotedLine(line: string, column: number): string | undefined {
  const span = valueSpan(line, column);
  if (!span || span[0] === span[1]) return undefined;
  const value = line.slice(...span);
  if (/^("[^"]*"|'[^']*')$/.test(value)) return undefined;
  return line.slice(0, span[0]) + quoted(value) + line.slice(span[1]);
}

const slips: Readonly<Record<string, 'colon' | 'sign'>> = {
  BLOCK_AS_IMPLICIT_KEY: 'colon',
  BLOCK_IN_FLOW: 'colon',
  BAD_SCALAR_START: 'sign',
  UNEXPECTED_TOKEN: 'sign',
};

function withoutTabs(lines: readonly string[], { line, column }: Complaint): Repair | undefined {
  const spaced = lines.map((text) =>
    /\S/.test(text) ? text.replace(/^[ \t]+/, (blank) => blank.replaceAll('\t', '  ')) : text,
  );
  return spaced.some((text, i) => text !== lines[i])
    ? { slip: 'tabs', line, column, end: column, lines: spaced }
    : undefined;
}

function withBlank(lines: readonly string[], { line }: Complaint): Repair | undefined {
  const match = /^(\s*(?:- +)?[a-z_]+:)(\S.*)$/.exec(lines[line - 1] ?? '');
  if (!match) return undefined;
  const mended = `${match[1]} ${match[2]}`;
  const column = (match[1]?.length ?? 0) + 1;
  return { slip: 'no-blank', line, column, end: column + 1, lines: lines.with(line - 1, mended) };
}

/**
 * The lines with the mistake mended that a complaint points to, so that the rest can be read as well.
 *
 * @returns undefined where the mistake has no single likely meaning
 */
export function repair(lines: readonly string[], complaint: Complaint): Repair | undefined {
  const { code, line, column } = complaint;
  if (code === 'TAB_AS_INDENT') return withoutTabs(lines, complaint);
  if (code === 'MULTILINE_IMPLICIT_KEY') return withBlank(lines, complaint);
  const slip = slips[code];
  const text = lines[line - 1];
  if (slip === undefined || text === undefined) return undefined;
  const span = valueSpan(text, column);
  if (!span || !hints[slip].test(text.slice(...span))) return undefined;
  const mended = quotedLine(text, column);
  if (mended === undefined) return undefined;
  const end = span[1] + 1 + mended.length - text.length;
  return { slip, line, column: span[0] + 1, end, lines: lines.with(line - 1, mended) };
}
