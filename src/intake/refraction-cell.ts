import type { Spherocylinder } from '../optics/transposition.js';
import type { DecimalMark } from './number.js';
import { parseAxis, parseCylinder, parseSphere } from './refraction-field.js';
import { plainSigns } from './signs.js';

/** A refraction read from one cell. */
export interface WrittenRefraction extends Spherocylinder {
  /** Whether the cylinder carried a sign, or none stands: an unsigned one needs the source's declared notation. */
  cylinderSigned: boolean;
}

const power = String.raw`[+-]? ?(?:\d+(?:[.,]\d+)?|[.,]\d+)`;
const sphere = String.raw`(?:(?:sph|s)[.:]? ?)?(?<sphere>${power}(?: ?(?:ds|sph|dpt|d)\.?)?|plano|plan|pl|∞)`;
const cylinder = String.raw`(?:(?:cyl|zyl|c|z)[.:]? ?)?(?<cylinder>${power}(?: ?(?:dc|cyl|dpt|d)\.?)?|plano|pl)`;
const axis = String.raw`(?<axis>(?:x|@|axis|axe|achse|ax|a|\/)[.:]? ?\d{1,3}(?:[.,]\d+)?(?: ?(?:°|º|deg))?)`;
const gap = `(?:[ /(=]+|(?=[+-]))`;
const shape = new RegExp(`^${sphere}(?:${gap}${cylinder}(?: ?${axis})?[ )]*)?$`, 'i');

/**
 * A refraction written in one cell: `-1.25 -0.50 x 90`, `+0.50/-1.25x175`, `-1.00 DS`, `plano -0.75 @ 180`.
 *
 * A number alone leaves the cylinder missing, as a blank cylinder field does; DS, sph and plano say that it is zero.
 * An unsigned second number is a cylinder only before an axis with its own mark: `6/9` is no refraction.
 *
 * @param text     one cell as written
 * @param decimal  the file's decimal mark
 * @returns powers with the signs as written, cylinder and axis NaN where none stands; undefined where the text is no refraction
 * @source spellings in common practice, no source
 * @example parseRefraction('+0.50/-1.25x175', 'point') // sphere 0.5, cylinder −1.25, axis 175
 */
export function parseRefraction(text: string, decimal: DecimalMark): WrittenRefraction | undefined {
  const parts = shape.exec(plainSigns(text))?.groups;
  if (!parts) return undefined;
  const cylinderSigned = parts.cylinder === undefined || /^(?:[+-]|pl)/i.test(parts.cylinder);
  if (!cylinderSigned && /^(?:\/|$)/.test(parts.axis ?? '')) return undefined;
  const spherePower = parseSphere(parts.sphere ?? '', decimal);
  const cylinderPower =
    parts.cylinder === undefined ? withoutCylinder(parts.sphere ?? '') : parseCylinder(parts.cylinder, decimal);
  const degrees = parts.axis === undefined ? Number.NaN : parseAxis(parts.axis.replace('/', ''), decimal);
  if (spherePower === undefined || cylinderPower === undefined || degrees === undefined) return undefined;
  return { sphere: spherePower, cylinder: cylinderPower, axis: degrees, cylinderSigned };
}

function withoutCylinder(writtenSphere: string): number {
  return /(?:ds|sph)\.?$|^p|∞/i.test(writtenSphere) ? 0 : Number.NaN;
}
