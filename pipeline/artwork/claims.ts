import { channelsOf } from '../../src/charts/grey.js';
import type { Artwork } from '../../src/charts/theme.js';
import { pdfFacts } from './pdf-facts.js';
import { isGrey, pixelFacts } from './pixels.js';

/** Forms in which a figure is exported. */
export type FigureForm = 'svg' | 'png' | 'pdf' | 'tiff';

/** What a file was found to be, beside what its profile claims; undefined where the form does not tell. */
interface Found {
  /** Points. */
  width: number;
  /** Half of the finest step in which the form states a width, points. */
  slack: number;
  dpi?: number;
  typeSizes?: readonly number[];
  isGrey: boolean;
  /** Anything else that a journal's check refuses. */
  others?: readonly string[];
}

/**
 * Where a file falls short of the profile it was drawn for: width, resolution, smallest type, colours, fonts. Read
 * from the bytes that are published, not from what was meant.
 *
 * @returns one line a fault; none where the file keeps its promises
 */
export async function brokenClaims(form: FigureForm, bytes: Uint8Array, artwork: Artwork): Promise<readonly string[]> {
  const found = await factsOf(form, bytes, artwork);
  const wanted = form === 'tiff' ? artwork.tiffDpi : artwork.dpi;
  const smallest = Math.min(...(found.typeSizes ?? [artwork.type]));
  return [
    ...(Math.abs(found.width - artwork.width) > found.slack ? [`width ${found.width} pt, not ${artwork.width}`] : []),
    ...(found.dpi !== undefined && Math.abs(found.dpi - wanted) > 0.5 ? [`${found.dpi} dpi, not ${wanted}`] : []),
    ...(smallest < artwork.type - 0.01 ? [`type of ${smallest} pt, below ${artwork.type}`] : []),
    ...(artwork.colours === 'grey' && !found.isGrey ? ['colours, not grey alone'] : []),
    ...(found.others ?? []),
  ];
}

async function factsOf(form: FigureForm, bytes: Uint8Array, artwork: Artwork): Promise<Found> {
  if (form === 'svg') return svgFacts(Buffer.from(bytes).toString('utf8'));
  if (form === 'pdf') return pdfFound(bytes);
  const { width, dpi } = await pixelFacts(bytes);
  return {
    width: (width * 72) / dpi,
    slack: 72 / dpi,
    dpi,
    isGrey: artwork.colours !== 'grey' || (await isGrey(bytes)),
    others: form === 'tiff' && !isLzw(bytes) ? ['a compression other than LZW'] : [],
  };
}

/** @source TIFF revision 6.0, sections 2 (header, directory) and 13: tag 259 is the compression, 5 LZW */
function isLzw(tiff: Uint8Array): boolean {
  const file = Buffer.from(tiff);
  const isLittle = file.toString('latin1', 0, 2) === 'II';
  const short = (at: number): number => (isLittle ? file.readUInt16LE(at) : file.readUInt16BE(at));
  const directory = isLittle ? file.readUInt32LE(4) : file.readUInt32BE(4);
  const entries = Array.from({ length: short(directory) }, (_, i) => directory + 2 + 12 * i);
  return entries.some((at) => short(at) === 259 && short(at + 8) === 5);
}

function svgFacts(svg: string): Found {
  const [, width] = /<svg\b[^>]*? width="([\d.]+)pt"/.exec(svg) ?? [];
  const colours = [...svg.matchAll(/="(#[0-9a-f]{6})"/gi)].map(([, colour]) => channelsOf(colour ?? ''));
  return {
    width: Number(width),
    slack: 0.01,
    typeSizes: [...svg.matchAll(/font-size="([\d.]+)px"/g)].map(([, size]) => Number(size)),
    isGrey: colours.every((channels) => new Set(channels).size === 1),
    others: [
      ...(svg.includes('<image') ? ['a picture in pixels'] : []),
      ...(/="(?:rgb|hsl)\(/.test(svg) ? ['colours that are not #rrggbb'] : []),
    ],
  };
}

function pdfFound(bytes: Uint8Array): Found {
  const { width, typeSizes, coloured, fonts, embedded, images } = pdfFacts(bytes);
  const missing = fonts.filter((font) => !embedded.includes(font));
  return {
    width,
    slack: 0.01,
    typeSizes,
    isGrey: !coloured,
    others: [
      ...(missing.length > 0 ? [`fonts not embedded: ${missing.join(', ')}`] : []),
      ...(images > 0 ? ['a picture in pixels'] : []),
    ],
  };
}
