/** Linear light of one channel. @source IEC 61966-2-1 (sRGB) */
function linear(channel: number): number {
  const part = channel / 255;
  return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
}

function encoded(light: number): number {
  const part = light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055;
  return Math.round(255 * part);
}

/** #rrggbb as three numbers from 0 to 255. */
export function channelsOf(colour: string): readonly [number, number, number] {
  const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  return [red ?? 0, green ?? 0, blue ?? 0];
}

/**
 * The grey that is as light as a colour.
 *
 * @param colour  #rrggbb
 * @source relative luminance Y of IEC 61966-2-1 (sRGB): 0.2126 R + 0.7152 G + 0.0722 B in linear light
 * @example greyOf('#bd4f1f') // '#757575'
 */
export function greyOf(colour: string): string {
  const [red, green, blue] = channelsOf(colour).map(linear) as [number, number, number];
  const grey = encoded(0.2126 * red + 0.7152 * green + 0.0722 * blue);
  return `#${grey.toString(16).padStart(2, '0').repeat(3)}`;
}
