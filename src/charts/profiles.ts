import type { Plan } from '../records/plan.js';
import { type Artwork, artworks, points, strokesFor } from './theme.js';

/**
 * The profile that figures are drawn for: one of the built-in ones, or one of `outputs.profiles`, which may also stand
 * for a built-in one of its name.
 *
 * @throws {RangeError} when there is none of this name
 * @example artworkNamed('slide', plan).dpi // 150
 */
export function artworkNamed(name: string, { outputs }: Plan): Artwork {
  const declared = outputs.profiles[name];
  if (declared) {
    const { width_mm: width, type_pt: type, dpi, tiff_dpi: tiffDpi, colours } = declared;
    return { width: points(width), type, strokes: strokesFor(type), dpi, tiffDpi, colours };
  }
  const built = artworks[name];
  if (built) return built;
  const known = [...Object.keys(outputs.profiles), ...Object.keys(artworks)];
  throw new RangeError(`artworkNamed: ${name}; expected ${known.join(', ')}`);
}
