import { createHash } from 'node:crypto';
import { fontFile } from './fonts.js';

const names = { normal: 'Arimo', bold: 'Arimo-Bold' } as const;

/**
 * A picture as a PDF page of its size: lines and letters stay lines and letters, fonts are embedded. The same picture
 * gives the same bytes.
 *
 * @param svg    as drawn: 1 px is 1 pt
 * @param title  of the document's properties
 * @throws {RangeError} when the drawing holds what the file cannot show
 */
export async function renderPdf(svg: string, title: string): Promise<Uint8Array> {
  const [{ default: PdfDocument }, { default: drawSvg }] = await Promise.all([
    import('pdfkit'),
    import('svg-to-pdfkit'),
  ]);
  const [width, height] = sizeOf(svg);
  const info = { Title: title, Creator: 'halfdiopter', Producer: 'halfdiopter' };
  const document = new PdfDocument({ size: [width, height], margin: 0, info, font: fontFile('normal') });
  const pieces: Buffer[] = [];
  document.on('data', (piece: Buffer) => pieces.push(piece));
  const ended = new Promise((done) => document.on('end', done));
  for (const weight of ['normal', 'bold'] as const) document.registerFont(names[weight], fontFile(weight));
  drawSvg(document, svg, 0, 0, {
    width,
    height,
    assumePt: true,
    fontCallback: (_: string, bold: boolean) => names[bold ? 'bold' : 'normal'],
    warningCallback: (warning: string) => {
      throw new RangeError(`renderPdf: ${title}: ${warning}`);
    },
  });
  document.end();
  await ended;
  return withoutMoment(Buffer.concat(pieces));
}

function sizeOf(svg: string): readonly [number, number] {
  const [, width, height] = /<svg\b[^>]*? width="([\d.]+)" height="([\d.]+)"/.exec(svg) ?? [];
  if (!width || !height) throw new RangeError(`renderPdf: ${svg.slice(0, 40)}; expected an svg element with a size`);
  return [Number(width), Number(height)];
}

/** The same file with one fixed date, and an identity that follows from its content; no length changes. */
function withoutMoment(pdf: Buffer): Uint8Array {
  const dated = pdf.toString('latin1').replace(/\(D:\d{14}Z\)/g, '(D:19800101000000Z)');
  const undated = dated.replace(/(?<=\/ID \[<)[0-9a-f]{32}(> <)[0-9a-f]{32}(?=>\])/, (_, between: string) => {
    const bare = dated.replace(/\/ID \[[^\]]*\]/, '');
    const identity = createHash('md5').update(bare, 'latin1').digest('hex');
    return `${identity}${between}${identity}`;
  });
  return Buffer.from(undated, 'latin1');
}
