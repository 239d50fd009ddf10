import type { Degree, Dioptre } from '../units.js';
import { type DecimalMark, parseNumber } from './number.js';
import { plainSigns } from './signs.js';

/** Words for a lens without power. */
const plano = /^(?:pl|plan|plano|plan-?o|∞|inf|infinity)\.?$/i;

/** Words that stand in the cylinder field for "a sphere only". */
const sphereOnly = /^(?:sph|sphere|spherical|sphärisch|sphérique|ds|d\.s)\.?$/i;

/**
 * A sphere as people type it: a number, `plano`, `pl`, or a number with DS or sph behind it.
 *
 * @param text     one cell as written
 * @param decimal  the file's decimal mark
 * @returns dioptres, sign as written; undefined where the text is no sphere
 * @source spellings in common practice, no source
 * @example parseSphere('-1.00 DS', 'point') // −1
 */
export function parseSphere(text: string, decimal: DecimalMark): Dioptre | undefined {
  const plain = plainSigns(text);
  if (plano.test(plain)) return 0;
  return parseNumber(plain.replace(/(?<=[\d\s])(?:ds|sph)\.?$/i, ''), { decimal, unit: 'D' });
}

/**
 * A cylinder as people type it: a number, also with DC or cyl behind it; `sph`, `DS` and `plano` are 0.
 *
 * @param text     one cell as written
 * @param decimal  the file's decimal mark
 * @returns dioptres, sign as written; undefined where the text is no cylinder
 * @source spellings in common practice, no source
 * @example parseCylinder('sph', 'point') // 0
 */
export function parseCylinder(text: string, decimal: DecimalMark): Dioptre | undefined {
  const plain = plainSigns(text);
  if (plano.test(plain) || sphereOnly.test(plain)) return 0;
  return parseNumber(plain.replace(/(?<=[\d\s])(?:dc|cyl)\.?$/i, ''), { decimal, unit: 'D' });
}

/**
 * An axis as people type it: `90`, `x 90`, `x175`, `@ 90`, `ax. 90`, `180°`, `005`.
 *
 * @param text     one cell as written
 * @param decimal  the file's decimal mark
 * @returns degrees as written: whether they lie in 0 to 180 is a quality rule; undefined where the text is no axis
 * @source spellings in common practice, no source
 * @example parseAxis('x 90°', 'point') // 90
 */
export function parseAxis(text: string, decimal: DecimalMark): Degree | undefined {
  const plain = plainSigns(text).replace(/^(?:x|@|axis|axe|achse|ax|a)[.:]? ?(?=\d)/i, '');
  return parseNumber(plain, { decimal, unit: 'deg' });
}
