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
const degrees = String.raw`\d{1,3}(?:[.,]\d+)?`;
const degreeSign = ' ?(?:°|º|deg)';
const marked = String.raw`(?:x|@|axis|axe|achse|ax|a|à|\/)[.:]? ?${degrees}(?:${degreeSign})?`;
const axis = `(?<axis>${marked}|${degrees}${degreeSign})`;
const gap = `(?:[ /(=]+|(?=[+-]))`;

/** Sphere, cylinder, axis; the cylinder first in brackets, and the axis first, as French prescriptions have it. */
const shapes = [
  `^${sphere}(?:${gap}${cylinder}(?:[ )]*${axis})?[ )]*)?$`,
  `^[(](?=[+-])${cylinder} ?${axis}[)] ?${sphere}$`,
  `^[(]?${axis} ?[(]?(?=[+-])${cylinder}(?:[) ]+|(?=[+-]))${sphere}$`,
].map((shape) => new RegExp(shape, 'i'));

/**
 * A refraction written in one cell: `-1.25 -0.50 x 90`, `+0.50/-1.25x175`, `-1.00 DS`, `plano -0.75 @ 180`,
 * `+0.50 (-0.75 à 90°)`.
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
  const plain = plainSigns(text);
  const parts = shapes.map((shape) => shape.exec(plain)?.groups).find((found) => found !== undefined);
  if (!parts) return undefined;
  const cylinderSigned = parts.cylinder === undefined || /^(?:[+-]|pl)/i.test(parts.cylinder);
  if (!cylinderSigned && /^(?:\/|$)/.test(parts.axis ?? '')) return undefined;
  const spherePower = parseSphere(parts.sphere ?? '', decimal);
  const cylinderPower =
    parts.cylinder === undefined ? withoutCylinder(parts.sphere ?? '') : parseCylinder(parts.cylinder, decimal);
  const meridian = parts.axis === undefined ? Number.NaN : parseAxis(parts.axis.replace(/[/à]/i, ''), decimal);
  if (spherePower === undefined || cylinderPower === undefined || meridian === undefined) return undefined;
  return { sphere: spherePower, cylinder: cylinderPower, axis: meridian, cylinderSigned };
}

function withoutCylinder(writtenSphere: string): number {
  return /(?:ds|sph)\.?$|^p|∞/i.test(writtenSphere) ? 0 : Number.NaN;
}
