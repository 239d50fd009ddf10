import { textMeasure } from '../../pipeline/artwork/fonts.js';

/** A line of text of a picture, with the box that its letters fill, in points from the top left. */
interface PictureText {
  text: string;
  size: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export interface Picture {
  width: number;
  height: number;
  texts: readonly PictureText[];
}

const tags = /<(\/?)(g|text|svg)\b([^>]*)>(?:([^<]*)<\/text>)?/g;
const attribute = (tag: string, name: string): string => new RegExp(`\\b${name}="([^"]*)"`).exec(tag)?.[1] ?? '';

/** Where `translate` moves to; charts do nothing else to text. */
function shift(transform: string): { x: number; y: number } {
  if (!/^(translate\([^)]*\))?$/.test(transform)) throw new RangeError(`test: text transformed by ${transform}`);
  const [x = 0, y = 0] = (/\(([^)]*)\)/.exec(transform)?.[1] ?? '0,0').split(',').map(Number);
  return { x, y };
}

const entities: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>' };

/**
 * Every text of an SVG as vega writes it, measured with the bundled font. A text with a halo stands in the file twice
 * and here once.
 */
export async function pictureOf(svg: string): Promise<Picture> {
  const measure = await textMeasure();
  const [, width = '', height = ''] = /<svg[^>]* width="([\d.]+)" height="([\d.]+)"/.exec(svg) ?? [];
  const places = [{ x: 0, y: 0 }];
  const texts = new Map<string, PictureText>();
  for (const [, closes, name, tag = '', content = ''] of svg.matchAll(tags)) {
    const at = places.at(-1) ?? { x: 0, y: 0 };
    if (name === 'g' && closes) places.pop();
    if (name === 'svg' || closes) continue;
    const by = shift(attribute(tag, 'transform'));
    const here = { x: at.x + by.x, y: at.y + by.y };
    if (name === 'g') places.push(here);
    if (name !== 'text' || attribute(tag, 'opacity') === '0') continue;
    const text = content.replace(/&(amp|lt|gt);/g, (sign) => entities[sign] ?? sign);
    const size = Number.parseFloat(attribute(tag, 'font-size'));
    const long = measure(text, size, attribute(tag, 'font-weight') === 'bold' ? 'bold' : 'normal');
    const anchor = attribute(tag, 'text-anchor');
    const left = here.x - (anchor === 'end' ? long : anchor === 'middle' ? long / 2 : 0);
    // Capitals of Arimo are 0.69 em high, descenders 0.21 em deep.
    const box = { left, right: left + long, top: here.y - 0.69 * size, bottom: here.y + 0.21 * size };
    texts.set(`${text} ${here.x} ${here.y}`, { text, size, ...box });
  }
  return { width: Number(width), height: Number(height), texts: [...texts.values()] };
}

/** Pairs of texts that stand on one another. */
export function overlapping({ texts }: Picture): readonly string[] {
  const slack = 0.1;
  return texts.flatMap((a, i) =>
    texts
      .slice(i + 1)
      .filter((b) => a.left < b.right - slack && b.left < a.right - slack)
      .filter((b) => a.top < b.bottom - slack && b.top < a.bottom - slack)
      .map((b) => `“${a.text}” and “${b.text}”`),
  );
}

/** Texts of which a part lies outside the picture. */
export function outside({ width, height, texts }: Picture): readonly string[] {
  const slack = 0.1;
  return texts
    .filter(
      ({ left, right, top, bottom }) =>
        left < -slack || right > width + slack || top < -slack || bottom > height + slack,
    )
    .map(({ text, left, right, top, bottom }) => `“${text}” ${[left, right, top, bottom].map((n) => n.toFixed(1))}`);
}
