import { valueText } from '../tables/value-text.js';
import type { Cohort } from './cohorts.js';
import { errorPanel, leftOf, type Scales, type SignedQuantity, scalesOf } from './error-panel.js';
import { frame, lineHeight, panelWidth } from './frame.js';
import { headingText } from './key.js';
import { type Label, labels } from './marks.js';
import { legendEnd, sampleText, visitLines } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';
import { textWidth, wrapped } from './text-width.js';
import { type Artwork, ink, isNarrow } from './theme.js';

/** A histogram of a signed quantity, one panel a cohort, with the shares within two limits above it. */
export function histogramFigure(setting: ChartSetting, quantity: SignedQuantity): Drawing {
  const { artwork, cohorts } = setting;
  const line = lineHeight(artwork);
  const columns = isNarrow(artwork) ? 1 : Math.min(2, cohorts.length);
  const sides = { left: leftOf(artwork), right: artwork.type / 2 };
  const gap = sides.left + artwork.type;
  const width = panelWidth(artwork, columns, sides, gap);
  const heads = cohorts.map((cohort) => headTexts(setting, quantity, cohort, width));
  const margin = {
    ...sides,
    top: (3 + Math.max(...heads.map(({ length }) => length))) * line,
    bottom: (isOneLine(artwork, quantity, width) ? 2.75 : 3.75) * line,
  };
  const scales = scalesOf(setting, quantity, width, Math.round(width * (columns > 1 ? 0.55 : 0.42)));
  const { title, legend, altLead } = quantity.words;
  return {
    spec: frame(artwork, {
      columns,
      panel: { width, height: scales.height },
      margin,
      gap: { column: gap, row: margin.top + 2 * line },
      panels: cohorts.map((cohort, index) => [
        ...errorPanel(setting, scales, cohort),
        ...labels(heading(artwork, heads[index] ?? [])),
        ...labels(index + columns >= cohorts.length ? axisTitle(setting, scales) : []),
      ]),
      foot: visitLines(setting, quantity.family),
    }),
    title,
    legend: `${legend} ${legendEnd(setting, [{ measure: quantity.measure }])}`,
    alt: altLead + cohorts.map((cohort) => toldQuantity(setting, quantity, cohort)).join(' '),
  };
}

/** Above a panel: which eyes, how many, where they lie. */
function headTexts(setting: ChartSetting, quantity: SignedQuantity, cohort: Cohort, width: number): readonly string[] {
  const { artwork } = setting;
  const room = width + leftOf(artwork);
  const eyes = `${sampleText(setting, quantity.measure, cohort)}; ${centreText(setting, quantity, cohort)}`;
  return [headingText(cohort.label, room, artwork.type), ...wrapped(eyes, room, { size: artwork.type })];
}

function heading(artwork: Artwork, texts: readonly string[]): readonly Label[] {
  const line = lineHeight(artwork);
  return texts.map((text, i) => {
    const y = -(2.5 + texts.length - i) * line;
    return { x: -leftOf(artwork), y, text, weight: i === 0 ? 'bold' : 'normal' };
  });
}

/** 'mean −0.06 D, SD 0.42 D'. */
function centreText(
  { results, words }: ChartSetting,
  { measure, words: { amount } }: SignedQuantity,
  { group }: Cohort,
): string {
  const text = (statistic: string): string => {
    const row = results.get(measure, group, statistic);
    const value = valueText(row, words);
    return row.value === undefined ? value : amount(value);
  };
  return words.charts.histogram.centre(text('mean'), text('sd'));
}

/** The quantity under the axis, and beside it, or below where it is too narrow, what its sign means. */
function axisTitle({ artwork }: ChartSetting, { quantity, width, height }: Scales): readonly Label[] {
  const { axis, negative, positive } = quantity.words;
  const line = lineHeight(artwork);
  const y = height + 2.25 * line;
  const side = isOneLine(artwork, quantity, width) ? y : y + line;
  return [
    { x: 0, y: side, text: negative, colour: ink.soft },
    { x: width / 2, y, text: axis, align: 'center' },
    { x: width, y: side, text: positive, align: 'right', colour: ink.soft },
  ];
}

/** Whether the axis and what its signs mean fit one line. */
function isOneLine({ type }: Artwork, { words }: SignedQuantity, width: number): boolean {
  const wide = (text: string): number => textWidth(text, type);
  const side = Math.max(wide(words.negative), wide(words.positive));
  return wide(words.axis) / 2 + side + type <= width / 2;
}

/** One cohort in words, for readers who do not see the picture. */
function toldQuantity(setting: ChartSetting, quantity: SignedQuantity, cohort: Cohort): string {
  const { results, words } = setting;
  const { limits, measure } = quantity;
  const shares = limits.flatMap((limit) => {
    const row = results.get(measure, cohort.group, `share_within_${limit}`);
    return row.value === undefined ? [] : [quantity.words.within(valueText(row, words), limit)];
  });
  const parts = [sampleText(setting, measure, cohort), centreText(setting, quantity, cohort), ...shares];
  return words.charts.told(cohort.label, parts.join('; '));
}
