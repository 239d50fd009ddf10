/** What a picture in pixels says of itself. */
export interface PixelFacts {
  width: number;
  height: number;
  /** Dots per inch, as the file states them. */
  dpi: number;
}

/**
 * A PNG as a TIFF, as journals take it: LZW, no transparency, its resolution stated.
 *
 * @param dpi  dots per inch, those the picture was drawn with
 */
export async function renderTiff(png: Uint8Array, dpi: number): Promise<Uint8Array> {
  const sharp = await imported();
  const perMillimetre = dpi / 25.4;
  const tiff = { compression: 'lzw', predictor: 'horizontal', resolutionUnit: 'inch' } as const;
  return sharp(png)
    .removeAlpha()
    .tiff({ ...tiff, xres: perMillimetre, yres: perMillimetre })
    .toBuffer();
}

/** Size and resolution, as another program than the one that drew it reads them. */
export async function pixelFacts(bytes: Uint8Array): Promise<PixelFacts> {
  const sharp = await imported();
  const { width, height, density } = await sharp(bytes).metadata();
  return { width, height, dpi: density ?? 0 };
}

/** Whether every pixel is grey. */
export async function isGrey(bytes: Uint8Array): Promise<boolean> {
  const sharp = await imported();
  const { data, info } = await sharp(bytes).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  if (info.channels < 3) return true;
  for (let at = 0; at < data.length; at += info.channels) {
    if (data[at] !== data[at + 1] || data[at] !== data[at + 2]) return false;
  }
  return true;
}

async function imported(): Promise<typeof import('sharp')['default']> {
  return (await import('sharp')).default;
}
