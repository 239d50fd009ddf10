import { createRequire } from 'node:module';

/** The two cuts of Arimo that charts use; they are part of the package, so that no machine's fonts are looked at. */
const files = {
  normal: '@expo-google-fonts/arimo/400Regular/Arimo_400Regular.ttf',
  bold: '@expo-google-fonts/arimo/700Bold/Arimo_700Bold.ttf',
} as const;

export type Weight = keyof typeof files;

/** Path of a font file. */
export function fontFile(weight: Weight): string {
  return createRequire(import.meta.url).resolve(files[weight]);
}

/** Width of a line of text at a type size, in the unit of the size. */
export type Measure = (text: string, size: number, weight: Weight) => number;

let measure: Promise<Measure> | undefined;

/** Measures text with the advance widths and the kerning of the font files; they are read once. */
export function textMeasure(): Promise<Measure> {
  measure ??= openFonts();
  return measure;
}

async function openFonts(): Promise<Measure> {
  const { open } = await import('fontkit');
  const [normal, bold] = await Promise.all([open(fontFile('normal')), open(fontFile('bold'))]);
  const widths = new Map<string, number>();
  return (text, size, weight) => {
    const key = `${weight} ${text}`;
    const font = weight === 'bold' ? bold : normal;
    if (!('layout' in font)) throw new RangeError(`textMeasure: ${fontFile(weight)}; expected one font`);
    const width = widths.get(key) ?? font.layout(text).advanceWidth / font.unitsPerEm;
    widths.set(key, width);
    return width * size;
  };
}
