import { crc32 } from 'node:zlib';
import { fontFile } from './fonts.js';

/**
 * A picture in pixels, with the bundled fonts and none of the machine's; 1 px of the SVG is 1 pt.
 *
 * @param dpi  dots per inch, also stated in the file
 */
export async function renderPng(svg: string, dpi: number): Promise<Uint8Array> {
  const { Resvg } = await import('@resvg/resvg-js');
  const picture = new Resvg(svg, {
    font: { fontFiles: [fontFile('normal'), fontFile('bold')], loadSystemFonts: false, defaultFontFamily: 'Arimo' },
    fitTo: { mode: 'zoom', value: dpi / 72 },
    background: '#ffffff',
  });
  return withResolution(picture.render().asPng(), dpi);
}

/** Length of the signature and of the IHDR chunk behind it: pHYs stands between it and the first IDAT. */
const afterHeader = 33;

/** The same PNG with a pHYs chunk, which resvg does not write: a journal's system reads the size in print from it. */
function withResolution(png: Uint8Array, dpi: number): Uint8Array {
  const perMetre = Math.round((dpi * 1000) / 25.4);
  const chunk = Buffer.alloc(21);
  chunk.writeUInt32BE(9, 0);
  chunk.write('pHYs', 4, 'latin1');
  chunk.writeUInt32BE(perMetre, 8);
  chunk.writeUInt32BE(perMetre, 12);
  chunk.writeUInt8(1, 16);
  chunk.writeUInt32BE(crc32(chunk.subarray(4, 17)), 17);
  return Buffer.concat([png.subarray(0, afterHeader), chunk, png.subarray(afterHeader)]);
}
