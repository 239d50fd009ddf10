import type { ChartSetting } from './setting.js';
import { artworks } from './theme.js';

/** More than two panels are too small to be read in a single column: such a figure takes both. */
export function withRoom(setting: ChartSetting, panels: number): ChartSetting {
  const { 'journal-single': single, 'journal-double': double } = artworks;
  return panels > 2 && double && setting.artwork === single ? { ...setting, artwork: double } : setting;
}
