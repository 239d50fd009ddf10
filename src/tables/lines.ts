import { fixed } from '../format/number.js';

/**
 * An acuity line in metres.
 *
 * @param feet  the same line in feet
 * @example metresOf('20/40') // '6/12'
 */
export function metresOf(feet: string): string {
  return `6/${fixed(Number(feet.split('/')[1]) * 0.3, 1).replace('.0', '')}`;
}
