import { inColours } from '../../src/charts/palettes.js';
import { combinedSvg } from '../../src/charts/panels.js';
import { round } from '../../src/format/round.js';
import type { Figure } from '../../src/records/report.js';
import { type Measure, textMeasure } from './fonts.js';

/** The charting packages, imported when the first figure is drawn: a run that draws none does not wait for them. */
interface Charting {
  vega: typeof import('vega');
  compile: typeof import('vega-lite').compile;
}

let charting: Promise<Charting> | undefined;

async function importCharting(): Promise<Charting> {
  // vega reads dates without a zone in the machine's; the same figure would differ from place to place.
  process.env.TZ = 'UTC';
  const [vega, { compile }, measure] = await Promise.all([import('vega'), import('vega-lite'), textMeasure()]);
  measureTextWith(vega, measure);
  return { vega, compile };
}

/** Without this vega estimates the widths of texts, or asks a canvas package that some machines have. */
function measureTextWith(vega: object, measure: Measure): void {
  const { textMetrics } = vega as { textMetrics: { width: (item: TextItem, text: unknown) => number } };
  textMetrics.width = ({ fontSize = 11, fontWeight }, text) => {
    const line = text === undefined || text === null ? '' : String(text).trim();
    return measure(line, fontSize, fontWeight === 'bold' || Number(fontWeight) >= 600 ? 'bold' : 'normal');
  };
}

interface TextItem {
  fontSize?: number;
  fontWeight?: string | number;
}

/** Anything vega or vega-lite complains of is a fault of a specification of ours. */
function refusing(figure: string): object {
  const refuse = (...texts: readonly unknown[]): never => {
    throw new RangeError(`figure ${figure}: ${texts.join(' ')}`);
  };
  const quiet = (): object => logger;
  const logger = { level: quiet, info: quiet, debug: quiet, warn: refuse, error: refuse };
  return logger;
}

/**
 * A figure as SVG: the same text for the same figure, its ids unique among figures so that several can stand in one page.
 *
 * @param identified  whether marks may bear the names of eyes (aria-label), for the internal page; else nothing in the
 *                    picture is announced, and the figure's `alt` stands for it
 * @throws {RangeError} when vega or vega-lite warn, and when a figure with names is to be drawn without: it shows other
 *         marks than one for publication, too
 */
export async function renderSvg(figure: Figure, options: { identified: boolean }): Promise<string> {
  const { panels, artwork } = figure;
  const svg = panels
    ? combinedSvg(await inTurn(panels.figures, options), artwork, panels.columns)
    : await renderChart(figure, options);
  return inColours(svg, artwork.colours);
}

/** One after the other: vega numbers its ids anew for each. */
async function inTurn(figures: readonly Figure[], options: { identified: boolean }): Promise<readonly string[]> {
  const svgs: string[] = [];
  for (const figure of figures) svgs.push(await renderChart(figure, options));
  return svgs;
}

async function renderChart(figure: Figure, { identified }: { identified: boolean }): Promise<string> {
  charting ??= importCharting();
  const { vega, compile } = await charting;
  const logger = refusing(figure.id) as never;
  const compiled = compile(figure.spec as never, { logger }).spec;
  const config = identified ? {} : { aria: false };
  vega.resetSVGDefIds();
  const view = new vega.View(vega.parse(compiled, config as never), { renderer: 'none', logger });
  const svg = await view.toSVG();
  view.finalize();
  if (!identified && svg.includes('aria-label')) {
    throw new RangeError(`renderSvg: figure ${figure.id} names eyes; expected one drawn without names`);
  }
  const short = inShort(withOwnIds(svg, figure.id));
  // A picture that announces nothing needs not say so mark by mark: the page gives it one name.
  return identified ? short : short.replaceAll(' aria-hidden="true"', '');
}

/** vega numbers clips and gradients from 0 in every picture. */
function withOwnIds(svg: string, prefix: string): string {
  return svg.replace(/(\bid="|url\(#|href="#)/g, `$1${prefix}-`);
}

/** Coordinates to a hundredth of a point, finer than any printer, and no attribute that says what holds anyway. */
function inShort(svg: string): string {
  const shortened = (text: string): string =>
    text.replace(/-?\d+\.\d{3,}/g, (number) => String(round(Number(number), 2)));
  return svg.replace(/ (?:d|transform)="[^"]*"/g, shortened).replaceAll(' opacity="1"', '');
}
