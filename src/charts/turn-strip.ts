import type { Cohort } from './cohorts.js';
import { across, type Scales } from './error-panel.js';
import { barsOf, binsOf, isOpen } from './histogram.js';
import { boxes, type Layer } from './marks.js';
import type { ChartSetting } from './setting.js';
import type { Artwork } from './theme.js';

/** Of the strip above a panel, points. */
export const stripHeight = ({ type }: Artwork): number => 3 * type;

/** How often each value was met, in a strip above a panel whose marks have the same axis; open bins have no place. */
export function turnStrip(setting: ChartSetting, scales: Scales, { group, accent }: Cohort): readonly Layer[] {
  const { artwork, results } = setting;
  const { measure, bin } = scales.quantity;
  const bars = barsOf(
    binsOf(results, measure, group).filter((one) => !isOpen(one)),
    bin,
  );
  const tallest = Math.max(0, ...bars.map(({ share }) => share));
  const foot = -0.4 * artwork.type;
  const most = stripHeight(artwork) - artwork.type;
  const corners = bars.map(({ x, x2, share }) => {
    return { x: across(scales, x), x2: across(scales, x2), y: foot, y2: foot - (share / tallest) * most };
  });
  return [
    boxes(corners, accent.filled ? accent.colour : accent.tint, { colour: accent.colour, width: artwork.strokes.hair }),
  ];
}
