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

const bold = [
  569, 682, 971, 1139, 1139, 1821, 1479, 487, 682, 682, 797, 1196, 569, 682, 569, 569, 1139, 1139, 1139, 1139, 1139,
  1139, 1139, 1139, 1139, 1139, 682, 682, 1196, 1196, 1196, 1251, 1997, 1479, 1479, 1479, 1479, 1366, 1251, 1593, 1479,
  569, 1139, 1479, 1251, 1706, 1479, 1593, 1366, 1593, 1479, 1366, 1251, 1479, 1366, 1933, 1366, 1366, 1251, 682, 569,
  682, 1196, 1139, 682, 1139, 1251, 1139, 1251, 1139, 682, 1251, 1251, 569, 569, 1139, 569, 1821, 1251, 1251, 1251,
  1251, 797, 1139, 682, 1251, 1139, 1593, 1139, 1139, 1024, 797, 573, 797, 1196,
];

/** Signs beyond ASCII that charts set; as wide in bold. */
const signs: Readonly<Record<string, number>> = {
  '\u00a0': 569,
  '°': 819,
  '±': 1124,
  '×': 1196,
  '–': 1139,
  '…': 2048,
  '−': 1196,
  '≤': 1124,
};

/** Any other sign, as wide as the widest letter of Western alphabets: a line breaks early rather than late. */
const other = 2048;

/**
 * Width of a line of text.
 *
 * @param text    one line
 * @param size    type size, points
 * @param weight  'normal' unless it is set in bold
 * @returns points; exact for ASCII and the signs that charts set, else no less than it is in any Western language
 * @source advance widths of the font files
 * @example textWidth('n = 371', 8) // 26.7
 */
export function textWidth(text: string, size: number, weight: 'normal' | 'bold' = 'normal'): number {
  const ascii = weight === 'bold' ? bold : regular;
  let units = 0;
  for (const sign of text) units += signs[sign] ?? ascii[(sign.codePointAt(0) ?? 0) - 32] ?? other;
  return (units * size) / 2048;
}

/** A number and the sign or unit beside it, which no line may part. */
const inseparable = /(?<=\d) (?=%|D\b|mm\b)| (?=@)|(?<=[@≤]) /g;
const noBreak = '\u00a0';

/** How a text is set and broken. */
export interface TypeSetting {
  /** Type size, points. */
  size: number;
  weight?: 'normal' | 'bold';
  /** At most so many lines; what does not fit ends in '…'. */
  lines?: number;
}

/**
 * Text broken into lines at spaces, and behind hyphens; a word that is wider than a line is broken where it must be.
 *
 * @param text   any text
 * @param width  of a line, points
 * @returns at least one line
 * @example wrapped('laser-assisted surgery', 60, { size: 8 }) // ['laser-assisted', 'surgery']
 */
export function wrapped(text: string, width: number, setting: TypeSetting): readonly string[] {
  const fitsLine = (line: string): boolean => textWidth(line.trimEnd(), setting.size, setting.weight) <= width;
  const all = [''];
  const words = text.replace(inseparable, noBreak).split(/(?<=[ -])/);
  for (const piece of words.flatMap((word) => piecesOf(word, fitsLine))) {
    const line = (all.at(-1) as string) + piece;
    if (fitsLine(line)) all[all.length - 1] = line;
    else all.push(piece);
  }
  const trimmed = all.map((line) => line.replaceAll(noBreak, ' ').trim());
  const full = trimmed.filter((line, index) => index === 0 || line !== '');
  const { lines = full.length } = setting;
  return full.length <= lines ? full : [...full.slice(0, lines - 1), cut(full[lines - 1], fitsLine)];
}

/** A word in pieces that each fit a line. */
function piecesOf(word: string, fitsLine: (line: string) => boolean): readonly string[] {
  const pieces = [''];
  for (const sign of word) {
    const longer = (pieces.at(-1) as string) + sign;
    if (pieces.at(-1) === '' || fitsLine(longer)) pieces[pieces.length - 1] = longer;
    else pieces.push(sign);
  }
  return pieces;
}

/** A line that ends in '…' for what is left out. */
function cut(line = '', fitsLine: (line: string) => boolean): string {
  let kept = [...line];
  while (kept.length > 0 && !fitsLine(`${kept.join('')}…`)) kept = kept.slice(0, -1);
  return `${kept.join('').trimEnd()}…`;
}
