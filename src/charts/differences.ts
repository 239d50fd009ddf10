import { count } from '../format/number.js';
import { primaryLevel } from '../tables/comparison-notes.js';
import { outcomeVisit } from '../tables/follow-up.js';
import { levelText } from '../tables/level.js';
import { withUnit } from '../tables/outcome-words.js';
import { intervalText } from '../tables/value-text.js';
import { estimateText, type ForestColumns, type ForestPanel, forestPanel, panelLayers } from './forest-panel.js';
import { type DrawnPair, drawnPairs, type ForestGroup, forestGroups } from './forest-rows.js';
import { frame, lineHeight } from './frame.js';
import { cohortKey } from './key.js';
import { type Layer, labels } from './marks.js';
import { generalRemarks, visitLines } from './sentences.js';
import type { ChartSetting, Drawing } from './setting.js';
import { textWidth, wrapped } from './text-width.js';
import { artworks, ink } from './theme.js';

/**
 * Every outcome of the comparison table that has an interval: primaries bold and filled, one panel a scale and a
 * direction, its line of no difference, and at its ends which cohort is better there.
 */
export function differences(setting: ChartSetting): Drawing | undefined {
  const pairs = drawnPairs(setting);
  const groups = forestGroups(setting, pairs);
  if (groups.length === 0) return undefined;
  const { plan, words } = setting;
  const text = words.charts.differences;
  const single = layoutOf(setting, pairs, groups, 1);
  const double = artworks['journal-double'];
  const isTooDeep = double && setting.artwork === artworks['journal-single'] && single.depth > pageDepth;
  const layout = isTooDeep ? layoutOf({ ...setting, artwork: double }, pairs, groups, 2) : single;
  return {
    spec: layout.spec,
    title: text.title(pairs.map(nameOf(setting)).join(', ')),
    legend: [
      text.legend,
      ...eyesTold(setting, groups, pairs),
      words.charts.legendVisit(outcomeVisit(plan, words)),
      ...generalRemarks(setting),
    ].join(' '),
    alt: text.altLead + pairs.map((pair, index) => told(setting, groups, pair, index)).join(' '),
  };
}

/** Points that a page leaves for a figure above its legend: 220 mm (common practice, no source). */
const pageDepth = (220 / 25.4) * 72;

/** All panels below one another, or in columns that are filled one after the other. */
function layoutOf(
  setting: ChartSetting,
  pairs: readonly DrawnPair[],
  groups: readonly ForestGroup[],
  count: 1 | 2,
): { spec: object; depth: number } {
  const { artwork } = setting;
  const line = lineHeight(artwork);
  const between = count === 1 ? 0 : 2 * artwork.type;
  const own = { ...setting, artwork: { ...artwork, width: (artwork.width - between) / count } };
  const columns = columnsOf(own, groups);
  const panels = groups.map((group) => forestPanel(own, group, columns));
  const margin = { left: columns.left, right: columns.right, top: (pairs.length + 1.6) * line, bottom: 2.9 * line };
  const gap = { column: columns.right + between + columns.left, row: 3.1 * line };
  const heights = panels.map(({ height }) => height);
  const depth = margin.top + margin.bottom + heights.reduce((sum, height) => sum + height + gap.row, 0);
  const first = halfOf(heights, gap.row);
  const heads = count === 1 ? [0] : [0, first];
  const spec = frame(artwork, {
    columns: count,
    panel: { width: columns.width, height: 0 },
    heights,
    margin,
    gap,
    panels: panels.map((panel, index) => [
      ...panelLayers(own, panel, columns, pairs),
      ...(heads.includes(index) ? [estimateHead(own, columns)] : []),
      ...(index === 0 ? pairKey(setting, pairs, { x: -columns.left, y: -margin.top }) : []),
    ]),
    ...(count === 2 ? { stacks: [first, panels.length - first] } : {}),
    foot: footOf(setting, panels),
  });
  return { spec, depth };
}

/** How many panels make the first of two columns: as many as leave both about equally deep. */
function halfOf(heights: readonly number[], gap: number): number {
  const total = heights.reduce((sum, height) => sum + height + gap, 0);
  let depth = 0;
  const first = heights.findIndex((height) => {
    depth += height + gap;
    return depth >= total / 2;
  });
  return Math.min(first + 1, heights.length - 1);
}

const nameOf =
  ({ words }: Pick<ChartSetting, 'words'>) =>
  ({ compared, reference }: DrawnPair): string =>
    words.charts.differences.pair(compared.label, reference.label);

/** Numbers take the room they need, labels at most half of the rest; what is longer stands under the outcome's name. */
function columnsOf(setting: ChartSetting, groups: readonly ForestGroup[]): ForestColumns {
  const { artwork } = setting;
  const { type } = artwork;
  const rows = groups.flatMap((group) => group.rows);
  const wide = (text: string, isPrimary: boolean): number => textWidth(text, type, isPrimary ? 'bold' : 'normal');
  const numbers = rows.flatMap(({ isPrimary, outcomes }) =>
    outcomes.map((outcome) => (outcome ? wide(estimateText(setting, outcome), isPrimary) : 0)),
  );
  const right = Math.ceil(type + Math.max(...numbers, wide(setting.words.charts.differences.estimate, false)));
  const widest = Math.max(...rows.map(({ name, part, isPrimary }) => wide(name + part, isPrimary))) + 1.5 * type;
  const most = (artwork.width - right) * 0.565;
  const left = Math.ceil(Math.min(widest, most));
  return { left, right, width: Math.floor(artwork.width - left - right), isNarrow: widest > most };
}

/** Above the numbers of a column: their head. */
function estimateHead({ artwork, words }: ChartSetting, { width }: ForestColumns): Layer {
  const y = -0.55 * lineHeight(artwork);
  return labels([
    { x: width + artwork.type, y, text: words.charts.differences.estimate, colour: ink.soft },
  ])[0] as Layer;
}

/** One line a comparison: its symbol, the cohorts, eligible eyes and patients of both. */
function pairKey(setting: ChartSetting, pairs: readonly DrawnPair[], corner: { x: number; y: number }) {
  const cohorts = pairs.map((pair) => {
    return { group: pair.group, name: undefined, label: nameOf(setting)(pair), accent: pair.accent };
  });
  return cohortKey({ ...setting, cohorts }, corner, ({ group }) => {
    const { n, patients } = setting.results.get('design', group, 'patients_both');
    return setting.words.charts.sample(count(n), count(patients));
  });
}

function footOf(setting: ChartSetting, panels: readonly ForestPanel[]): readonly string[] {
  const { artwork, plan, results, words } = setting;
  const { exploratory, levels, margin } = words.charts.differences;
  const rows = panels.flatMap(({ group }) => group.rows);
  const level = levelText(plan);
  const hasPrimary = rows.some(({ isPrimary }) => isPrimary);
  const hasMargin = rows.some(({ outcomes }) => outcomes.some((outcome) => outcome?.margin !== undefined));
  const rule = hasPrimary ? levels(primaryLevel(results), level) : exploratory(level);
  const text = hasMargin ? `${rule} ${margin}` : rule;
  return [...wrapped(text, artwork.width, { size: artwork.type }), ...visitLines(setting, 'refraction')];
}

/** How many eyes stand behind the lines of each comparison. */
function eyesTold(
  setting: ChartSetting,
  groups: readonly ForestGroup[],
  pairs: readonly DrawnPair[],
): readonly string[] {
  return pairs.map((pair, index) => {
    const sizes = groups.flatMap(({ rows }) => rows.flatMap(({ outcomes }) => outcomes[index]?.row.n ?? []));
    const [least, most] = [count(Math.min(...sizes)), count(Math.max(...sizes))];
    return setting.words.charts.differences.eyes(nameOf(setting)(pair), least, most);
  });
}

/** One comparison in words, for readers who do not see the picture. */
function told({ words }: ChartSetting, groups: readonly ForestGroup[], pair: DrawnPair, index: number): string {
  const { altEstimate, altPrimary, verdict } = words.charts.differences;
  const parts = groups.flatMap(({ rows }) =>
    rows.flatMap(({ name, part, isPrimary, outcomes }) => {
      const outcome = outcomes[index];
      if (!outcome) return [];
      const limits = intervalText(outcome.row, words);
      const value = withUnit(outcome.row, words);
      const text = limits === undefined ? value : `${value} (${limits})`;
      const estimate = altEstimate(isPrimary ? altPrimary(name + part) : name + part, text);
      const word = outcome.verdict && words.tables.comparison.verdicts[outcome.verdict];
      return [word === undefined ? estimate : verdict(estimate, word)];
    }),
  );
  return words.charts.told(nameOf({ words })(pair), parts.join('; '));
}
