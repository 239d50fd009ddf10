import type { DrawnFigure } from '../../src/page/content.js';
import type { Figure } from '../../src/records/report.js';
import { brokenClaims, type FigureForm } from '../artwork/claims.js';
import { renderPdf } from '../artwork/pdf.js';
import { renderTiff } from '../artwork/pixels.js';
import { renderPng } from '../artwork/png.js';
import { svgFile } from '../artwork/svg-file.js';
import type { Say } from '../io.js';
import type { OutputFile } from './replace.js';

/** Path of a figure without its ending, inside the report. */
const inReport = ({ number, id }: Figure): string => `publication/figures/${number}-${id}`;

/**
 * Figures in the forms asked for, each file read back before it leaves.
 *
 * @throws {RangeError} when a file has not the width, resolution, type or colours that its profile claims
 */
export async function figureFiles(
  drawn: readonly DrawnFigure[],
  forms: readonly FigureForm[],
  say: Say,
  pathOf: (figure: Figure) => string = inReport,
): Promise<readonly OutputFile[]> {
  const files: OutputFile[] = [];
  for (const [done, one] of drawn.entries()) {
    say('render', done, drawn.length);
    for (const form of forms) {
      files.push({ path: `${pathOf(one.figure)}.${form}`, bytes: await figureFile(one, form) });
    }
  }
  return files;
}

/** One figure in one form. @throws as `figureFiles` */
export async function figureFile(drawn: DrawnFigure, form: FigureForm): Promise<Uint8Array> {
  const { figure } = drawn;
  const bytes = await bytesOf(drawn, form);
  const broken = await brokenClaims(form, bytes, figure.artwork);
  if (broken.length > 0) throw new RangeError(`figureFile: ${figure.id}.${form} has ${broken.join('; ')}`);
  return bytes;
}

async function bytesOf({ figure, svg }: DrawnFigure, form: FigureForm): Promise<Uint8Array> {
  const { artwork, title, alt } = figure;
  switch (form) {
    case 'svg':
      return Buffer.from(svgFile(svg, alt));
    case 'png':
      return renderPng(svg, artwork.dpi);
    case 'pdf':
      return renderPdf(svg, title);
    case 'tiff':
      return renderTiff(await renderPng(svg, artwork.tiffDpi), artwork.tiffDpi);
  }
}
