import { inflateSync } from 'node:zlib';

/** What a page of a PDF really holds. */
export interface PdfFacts {
  /** Of the page, points. */
  width: number;
  height: number;
  /** Sizes in which letters are set, points, each once. */
  typeSizes: readonly number[];
  /** Names of fonts, and of those whose letters the file carries. */
  fonts: readonly string[];
  embedded: readonly string[];
  /** Pictures in pixels. */
  images: number;
  /** Whether lines and areas have other colours than greys. */
  coloured: boolean;
}

/**
 * Reads back a PDF of one page as `renderPdf` writes it: plain objects, streams without or with Flate.
 *
 * @source ISO 32000-1:2008, 8.4.4 (q, Q, cm), 8.6.8 (colour), 9.3 and 9.4 (Tf, Tm, Tj), 9.9 (embedded fonts)
 * @throws {RangeError} when there is no page
 */
export function pdfFacts(bytes: Uint8Array): PdfFacts {
  const file = Buffer.from(bytes);
  const text = file.toString('latin1');
  const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(text) ?? [];
  if (!width || !height) throw new RangeError('pdfFacts: no page; expected a MediaBox from 0 0');
  const descriptors = [...text.matchAll(/\/Type \/FontDescriptor\b.*?>>/gs)].map(([found]) => found);
  const nameOf = (found: string): string => /\/FontName \/([^\s/]+)/.exec(found)?.[1] ?? '';
  const page = drawn(pageStream(text));
  return {
    width: Number(width),
    height: Number(height),
    ...page,
    fonts: [...new Set([...text.matchAll(/\/BaseFont \/([^\s/]+)/g)].map(([, name]) => name ?? ''))],
    embedded: descriptors.filter((found) => /\/FontFile[23]? \d+ 0 R/.test(found)).map(nameOf),
    images: [...text.matchAll(/\/Subtype \/Image\b/g)].length,
  };
}

/** The operators of the page, in plain text. */
function pageStream(text: string): string {
  const contents = /\/Contents (\d+) 0 R/.exec(text)?.[1];
  const start = text.indexOf(`\n${contents} 0 obj`);
  const head = text.slice(start, text.indexOf('stream\n', start));
  const from = start + head.length + 'stream\n'.length;
  const length = Number(/\/Length (\d+)/.exec(head)?.[1]);
  const data = Buffer.from(text.slice(from, from + length), 'latin1');
  return (head.includes('/FlateDecode') ? inflateSync(data) : data).toString('latin1');
}

const tokens = /\((?:\\.|[^\\)])*\)|<[0-9a-fA-F]*>|\[|\]|\/[^\s[\]<>()/]+|[-+.\d]+|[A-Za-z'"*]+/g;

/** How much a matrix enlarges: the root of its determinant. */
function enlargement([a = 1, b = 0, c = 0, d = 1]: readonly number[]): number {
  return Math.sqrt(Math.abs(a * d - b * c));
}

function drawn(operators: string): Pick<PdfFacts, 'typeSizes' | 'coloured'> {
  const sizes = new Set<number>();
  let coloured = false;
  let state = { scale: 1, size: 0 };
  let textScale = 1;
  const saved: (typeof state)[] = [];
  let operands: number[] = [];
  for (const [token] of operators.matchAll(tokens)) {
    const value = Number(token);
    if (!Number.isNaN(value)) {
      operands.push(value);
      continue;
    }
    if (token === 'q') saved.push({ ...state });
    else if (token === 'Q') state = saved.pop() ?? state;
    else if (token === 'cm') state.scale *= enlargement(operands);
    else if (token === 'BT') textScale = 1;
    else if (token === 'Tm') textScale = enlargement(operands);
    else if (token === 'Tf') state.size = operands.at(-1) ?? 0;
    else if (token === 'Tj' || token === 'TJ') sizes.add(Math.round(state.size * textScale * state.scale * 100) / 100);
    else if (/^(?:rg|RG|scn|SCN)$/.test(token) && operands.length >= 3)
      coloured ||= new Set(operands.slice(-3)).size > 1;
    if (/^[A-Za-z]/.test(token)) operands = [];
  }
  return { typeSizes: [...sizes], coloured };
}
