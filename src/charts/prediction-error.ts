import { type HeadlineError, headlineError } from '../tables/headline-error.js';
import { valueText } from '../tables/value-text.js';
import type { Cohort } from './cohorts.js';
import { bracketed, errorPanel, leftOf, type Scales, scalesOf } from './error-panel.js';
import { frame, lineHeight, panelWidth } from './frame.js';
import { headingText } from './key.js';
import { type Label, labels } from './marks.js';
import { legendEnd, sampleText, visitLines } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';
import { textWidth, wrapped } from './text-width.js';
import { type Artwork, ink } from './theme.js';

/**
 * How far refractions ended from the plan: a histogram in bins of 0.25 D centred on 0, one panel a cohort, with the
 * shares within ±0.50 and ±1.00 D above it.
 */
export function predictionError(setting: ChartSetting): Drawing | undefined {
  const measure = headlineError(setting.results);
  if (measure === undefined) return undefined;
  const { artwork, cohorts, words } = setting;
  const line = lineHeight(artwork);
  const columns = artwork.width < 300 ? 1 : Math.min(2, cohorts.length);
  const sides = { left: leftOf(artwork), right: artwork.type / 2 };
  const gap = sides.left + artwork.type;
  const width = panelWidth(artwork, columns, sides, gap);
  const heads = cohorts.map((cohort) => headTexts(setting, measure, cohort, width));
  const margin = {
    ...sides,
    top: (3 + Math.max(...heads.map(({ length }) => length))) * line,
    bottom: (isOneLine(setting, measure, width) ? 2.75 : 3.75) * line,
  };
  const scales = scalesOf(setting, measure, width, Math.round(width * (columns > 1 ? 0.55 : 0.42)));
  const error = words.charts.errors[measure];
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
      foot: visitLines(setting, 'refraction'),
    }),
    title: words.charts.predictionError.title(error.name),
    legend: `${words.charts.predictionError.legend(error.name, error.reference)} ${legendEnd(setting, [{ measure }])}`,
    alt:
      words.charts.predictionError.altLead(error.name) +
      cohorts.map((cohort) => told(setting, measure, cohort)).join(' '),
  };
}

/** Above a panel: which eyes, how many, where they lie. */
function headTexts(setting: ChartSetting, measure: HeadlineError, cohort: Cohort, width: number): readonly string[] {
  const { artwork } = setting;
  const room = width + leftOf(artwork);
  const eyes = `${sampleText(setting, measure, cohort)}; ${centreText(setting, measure, cohort)}`;
  return [headingText(cohort.label, room, artwork.type), ...wrapped(eyes, room, { size: artwork.type })];
}

function heading(artwork: Artwork, texts: readonly string[]): readonly Label[] {
  const line = lineHeight(artwork);
  return texts.map((text, i) => {
    const y = -(2.5 + texts.length - i) * line;
    return { x: -leftOf(artwork), y, text, weight: i === 0 ? 'bold' : 'normal' };
  });
}

function centreText({ results, words }: ChartSetting, measure: HeadlineError, { group }: Cohort): string {
  const text = (statistic: string): string => {
    const row = results.get(measure, group, statistic);
    const value = valueText(row, words);
    return row.value === undefined ? value : words.charts.predictionError.dioptres(value);
  };
  return words.charts.predictionError.centre(text('mean'), text('sd'));
}

/** The quantity under the axis, and beside it, or below where it is too narrow, what its sign means. */
function axisTitle(setting: ChartSetting, { measure, width, height }: Scales): readonly Label[] {
  const { artwork, words } = setting;
  const { axis, myopic, hyperopic } = words.charts.predictionError;
  const line = lineHeight(artwork);
  const y = height + 2.25 * line;
  const side = isOneLine(setting, measure, width) ? y : y + line;
  return [
    { x: 0, y: side, text: myopic, colour: ink.soft },
    { x: width / 2, y, text: axis(words.charts.errors[measure].name), align: 'center' },
    { x: width, y: side, text: hyperopic, align: 'right', colour: ink.soft },
  ];
}

function isOneLine({ artwork, words }: ChartSetting, measure: HeadlineError, width: number): boolean {
  const { axis, myopic, hyperopic } = words.charts.predictionError;
  const wide = (text: string): number => textWidth(text, artwork.type);
  const side = Math.max(wide(myopic), wide(hyperopic));
  return wide(axis(words.charts.errors[measure].name)) / 2 + side + artwork.type <= width / 2;
}

/** One cohort in words, for readers who do not see the picture. */
function told(setting: ChartSetting, measure: HeadlineError, cohort: Cohort): string {
  const { results, words } = setting;
  const shares = bracketed.flatMap((limit) => {
    const row = results.get(measure, cohort.group, `share_within_${limit}`);
    return row.value === undefined ? [] : [words.charts.predictionError.within(valueText(row, words), limit)];
  });
  const parts = [sampleText(setting, measure, cohort), centreText(setting, measure, cohort), ...shares];
  return words.charts.told(cohort.label, parts.join('; '));
}
