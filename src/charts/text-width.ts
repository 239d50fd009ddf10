/**
 * Advance widths of Arimo (and of Arial, which has the same) for U+0020 to U+007E, in 1/2048 of the type size:
 * wrapping has to be decided in a specification, before any font file is read. Checked against the font in
 * test/charts/text-width.test.ts.
 */
const regular = [
  569, 569, 727, 1139, 1139, 1821, 1366, 391, 682, 682, 797, 1196, 569, 682, 569, 569, 1139, 1139, 1139, 1139, 1139,
  1139, 1139, 1139, 1139, 1139, 569, 569, 1196, 1196, 1196, 1139, 2079, 1366, 1366, 1479, 1479, 1366, 1251, 1593, 1479,
  569, 1024, 1366, 1139, 1706, 1479, 1593, 1366, 1593, 1479, 1366, 1251, 1479, 1366, 1933, 1366, 1366, 1251, 569, 569,
  569, 961, 1139, 682, 1139, 1139, 1024, 1139, 1139, 569, 1139, 1139, 455, 455, 1024, 455, 1706, 1139, 1139, 1139, 1139,
  682, 1024, 569, 1139, 1024, 1479, 1024, 1024, 1024, 684, 532, 684, 1196,
];

/** Any other sign: as wide as a wide capital, so that a line breaks early rather than late. */
const other = 1593;

/** Bold letters are up to a tenth wider, a few narrow ones more. */
const boldFactor = 1.1;

/**
 * Width of a line of text.
 *
 * @param text  one line
 * @param size  type size, points
 * @param bold  whether it is set in bold
 * @returns points; exact for ASCII in regular, an upper bound for nearly all else
 * @source advance widths of the font file
 * @example textWidth('n = 371', 8) // 25.8
 */
export function textWidth(text: string, size: number, bold = false): number {
  let units = 0;
  for (const sign of text) units += regular[(sign === noBreak ? 32 : (sign.codePointAt(0) ?? 0)) - 32] ?? other;
  return (units * size * (bold ? boldFactor : 1)) / 2048;
}

/** A number and the sign or unit behind it, which no line may part. */
const inseparable = /(?<=\d) (?=%|@|D\b|mm\b)|(?<=@) /g;
const noBreak = '\u00a0';

/**
 * Text broken into lines at spaces, and behind hyphens; a word that is wider than a line is broken where it must be.
 *
 * @param text   any text
 * @param width  of a line, points
 * @param size   type size, points
 * @param lines  at most so many; what does not fit ends in '…'
 * @returns at least one line
 * @example wrapped('laser-assisted surgery', 60, 8) // ['laser-assisted', 'surgery']
 */
export function wrapped(
  text: string,
  width: number,
  size: number,
  lines = Number.POSITIVE_INFINITY,
): readonly string[] {
  const all = [''];
  const words = text.replace(inseparable, noBreak).split(/(?<=[ -])/);
  for (const piece of words.flatMap((word) => fitting(word, width, size))) {
    const line = (all.at(-1) as string) + piece;
    if (textWidth(line.trimEnd(), size) <= width) all[all.length - 1] = line;
    else all.push(piece);
  }
  const trimmed = all.map((line) => line.replaceAll(noBreak, ' ').trim());
  const full = trimmed.filter((line, index) => index === 0 || line !== '');
  return full.length <= lines ? full : [...full.slice(0, lines - 1), cut(full[lines - 1], width, size)];
}

/** A word in pieces that each fit a line. */
function fitting(word: string, width: number, size: number): readonly string[] {
  const pieces = [''];
  for (const sign of word) {
    const longer = (pieces.at(-1) as string) + sign;
    if (pieces.at(-1) === '' || textWidth(longer.trimEnd(), size) <= width) pieces[pieces.length - 1] = longer;
    else pieces.push(sign);
  }
  return pieces;
}

/** A line that ends in '…' for what is left out. */
function cut(line = '', width: number, size: number): string {
  let kept = [...line];
  while (kept.length > 0 && textWidth(`${kept.join('')}…`, size) > width) kept = kept.slice(0, -1);
  return `${kept.join('').trimEnd()}…`;
}
