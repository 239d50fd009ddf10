import { round } from '../format/round.js';
import { type Artwork, fontFamily, ink } from './theme.js';

/** Between panels side by side, points: 6 mm, so that two single columns make a double one. */
const columnGap = 17.01;

/** A drawing and the size stated in it, points. */
interface Panel {
  inside: string;
  width: number;
  height: number;
}

/** The profile of one panel of a figure that is drawn for `whole` with so many panels side by side. */
export function panelArtwork(whole: Artwork, columns: number): Artwork {
  return { ...whole, width: panelWidthOf(whole.width, columns) };
}

/** Width of each of so many panels side by side, points. */
export function panelWidthOf(whole: number, columns: number): number {
  return (whole - (columns - 1) * columnGap) / columns;
}

/** Letter of a panel, by its place from 0. */
export function panelLetter(index: number): string {
  return String.fromCharCode('A'.charCodeAt(0) + index);
}

/**
 * Several drawings as one figure of the artwork's width: in rows from the left, each with its letter above it.
 *
 * @param svgs  as drawn for `panelArtwork`, their ids their own
 * @throws {RangeError} when a drawing states no size
 */
export function combinedSvg(svgs: readonly string[], artwork: Artwork, columns: number): string {
  const letterSize = artwork.type * 1.25;
  const head = letterSize * 1.5;
  const panels = svgs.map(panelOf);
  const { width } = panelArtwork(artwork, columns);
  let top = 0;
  const placed: string[] = [];
  for (let first = 0; first < panels.length; first += columns) {
    const row = panels.slice(first, first + columns);
    for (const [column, { inside }] of row.entries()) {
      const left = column * (width + columnGap);
      const letter = panelLetter(first + column);
      placed.push(
        `<text transform="translate(${short(left)},${short(top + letterSize)})" font-family="${fontFamily}" font-size="${letterSize}px" font-weight="bold" fill="${ink.full}">${letter}</text>`,
        `<g transform="translate(${short(left)},${short(top + head)})">${inside}</g>`,
      );
    }
    top += head + Math.max(...row.map(({ height }) => height)) + artwork.type;
  }
  const size = `width="${artwork.width}" height="${short(top)}" viewBox="0 0 ${artwork.width} ${short(top)}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" version="1.1" ${size}><rect width="${artwork.width}" height="${short(top)}" fill="${ink.paper}"/>${placed.join('')}</svg>`;
}

function panelOf(svg: string): Panel {
  const [, width, height, inside] =
    /^<svg\b[^>]*? width="([\d.]+)" height="([\d.]+)"[^>]*>(.*)<\/svg>\s*$/s.exec(svg) ?? [];
  if (inside === undefined)
    throw new RangeError(`combinedSvg: ${svg.slice(0, 40)}; expected an svg element with a size`);
  return { inside, width: Number(width), height: Number(height) };
}

function short(length: number): string {
  return String(round(length, 2));
}
