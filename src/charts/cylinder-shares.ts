import { valueText } from '../tables/value-text.js';
import type { Cohort } from './cohorts.js';
import { bandPanel, type CylinderState, cylinderLimits, layoutOf } from './cylinder-bands.js';
import { frame, lineHeight, panelWidth } from './frame.js';
import { headingText } from './key.js';
import { labels } from './marks.js';
import { generalLegend, legendSample, sampleText, visitLines } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';

/** Cylinders before and after surgery, each in its own plane. */
const states: readonly CylinderState[] = [
  { measure: 'corneal_cylinder_magnitude_before', name: 'before' },
  { measure: 'refractive_cylinder_after_recorded', name: 'after' },
];

/** Of a panel, in type sizes: seven limits side by side. */
const leastWidth = 28;

/**
 * Bands of cylinder before and after surgery: a bar of all eyes for each state, equal limits joined by lines, and the
 * cumulative shares below. One panel a cohort.
 */
export function cylinderShares(setting: ChartSetting): Drawing | undefined {
  const { results, artwork, cohorts, words } = setting;
  const shown = states.filter(({ measure }) => results.find(measure, 'all', 'n')?.value);
  if (!shown.some(({ name }) => name === 'after')) return undefined;
  const gap = 2 * artwork.type;
  const widthOf = (columns: number): number => panelWidth(artwork, columns, { left: 0, right: 0 }, gap);
  const columns = cohorts.length > 1 && widthOf(2) >= leastWidth * artwork.type ? 2 : 1;
  const width = widthOf(columns);
  const line = lineHeight(artwork);
  const layout = layoutOf(setting, shown, width);
  const { title, legend, altLead, names } = words.charts.cylinderShares;
  const each = cohorts.flatMap((cohort) =>
    shown.map((state) => ({ cohort, state, whose: words.charts.within(cohort.label, names[state.name]) })),
  );
  return {
    spec: frame(artwork, {
      columns,
      panel: { width, height: layout.height },
      margin: { left: 0, right: 0, top: 1.5 * line, bottom: 0 },
      gap: { column: gap, row: 2.25 * line },
      panels: cohorts.map((cohort) => [
        ...labels([{ x: 0, y: -line, text: headingText(cohort.label, width, artwork.type), weight: 'bold' }]),
        ...bandPanel(setting, layout, cohort),
      ]),
      foot: visitLines(setting, 'refraction'),
    }),
    title,
    legend: [
      legend,
      ...each.map(({ cohort, state, whose }) => legendSample(setting, state.measure, cohort, whose)),
      ...generalLegend(setting),
    ].join(' '),
    alt: altLead + each.map(({ cohort, state, whose }) => told(setting, state, cohort, whose)).join(' '),
  };
}

/** One bar in words, for readers who do not see the picture. */
function told(setting: ChartSetting, { measure }: CylinderState, cohort: Cohort, whose: string): string {
  const { results, words } = setting;
  const shares = cylinderLimits.flatMap((limit) => {
    const row = results.get(measure, cohort.group, `share_within_${limit}`);
    return row.value === undefined ? [] : [words.charts.cylinderShares.altShare(limit, valueText(row, words))];
  });
  return words.charts.told(whose, [sampleText(setting, measure, cohort), ...shares].join('; '));
}
