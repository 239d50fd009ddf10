import { greyOf } from './grey.js';
import { type Artwork, accents } from './theme.js';

/**
 * Another accent and tint for each cohort, in the order of the theme's; shapes and dashes stay, so that cohorts are
 * told apart without colour as well. Tints are the accents at 30 % on paper.
 *
 * @source Okabe M, Ito K. Color universal design (2008): blue, vermilion, bluish green, orange
 */
const okabeIto = [
  { colour: '#0072b2', tint: '#b3d5e8' },
  { colour: '#d55e00', tint: '#f2cfb3' },
  { colour: '#009e73', tint: '#b3e2d5' },
  { colour: '#e69f00', tint: '#f8e2b3' },
];

const replaced = new Map(
  accents.flatMap(({ colour, tint }, i) => {
    const other = okabeIto[i];
    return other ? [[colour, other.colour] as const, [tint, other.tint] as const] : [];
  }),
);

const recolour: Readonly<Record<Artwork['colours'], (colour: string) => string>> = {
  colour: (colour) => colour,
  'okabe-ito': (colour) => replaced.get(colour) ?? colour,
  grey: greyOf,
};

/** A picture in the colours that its artwork may have. */
export function inColours(svg: string, colours: Artwork['colours']): string {
  return svg.replace(/(?<==")#[0-9a-f]{6}(?=")/gi, recolour[colours]);
}
