/** Columns of the narrowest terminal that a screen must fit. */
export const screenWidth = 78;

/**
 * Words broken into lines; a word longer than a line (a path) stands alone and is never cut.
 *
 * @param width   characters of a line, indent included
 * @param indent  blanks before every line
 * @example wrapped('two words', 8, 2) // ['  two', '  words']
 */
export function wrapped(text: string, width = screenWidth, indent = 0): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    if (line !== '' && indent + line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  return [...lines, line].map((each) => (' '.repeat(indent) + each).trimEnd());
}

/**
 * A name and text beside it; the text runs on below itself.
 *
 * @param at  column where the text begins; a longer name pushes it to the next line
 * @example labelled('Do', 'check the chart', { indent: 2, at: 12 }) // ['  Do        check the chart']
 */
export function labelled(name: string, text: string, { indent = 2, at = 12 } = {}): readonly string[] {
  const head = ' '.repeat(indent) + name;
  const lines = wrapped(text, screenWidth, at);
  if (name === '') return lines;
  const [first = '', ...rest] = lines;
  if (head.length >= at) return [head, first, ...rest];
  return [(head.padEnd(at) + first.slice(at)).trimEnd(), ...rest];
}

/** Two texts at the two ends of a line, or on two lines where they do not fit. */
export function apart(left: string, right: string): readonly string[] {
  const gap = screenWidth - left.length - right.length;
  if (right === '') return wrapped(left);
  return gap >= 2 ? [left + ' '.repeat(gap) + right] : [...wrapped(left), right.padStart(screenWidth)];
}

/**
 * Rows set in columns, each as wide as its widest cell, two blanks between.
 *
 * @param right  which columns stand flush right
 */
export function aligned(
  rows: readonly (readonly string[])[],
  { indent = 2, right = [] }: { indent?: number; right?: readonly number[] } = {},
): readonly string[] {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: columns }, (_, at) => Math.max(...rows.map((row) => row[at]?.length ?? 0)));
  return rows.map((row) => {
    const cells = row.map((cell, at) =>
      right.includes(at) ? cell.padStart(widths[at] ?? 0) : cell.padEnd(widths[at] ?? 0),
    );
    return (' '.repeat(indent) + cells.join('  ')).trimEnd();
  });
}

/** Text cut to a width, with a mark where it was cut. */
export function cut(text: string, width: number): string {
  return text.length <= width ? text : `${text.slice(0, Math.max(0, width - 1))}…`;
}

/** A screen: blocks of lines with a blank line between them, and a line break at the end. */
export function screen(blocks: readonly (readonly string[])[]): string {
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}
