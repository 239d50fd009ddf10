import { identityScatter } from './identity-scatter.js';
import type { ChartSetting, Drawing } from './setting.js';

/** Achieved over planned change of the spherical equivalent, with ±0.50 and ±1.00 D beside the line of no error. */
export function plannedAchieved(setting: ChartSetting): Drawing | undefined {
  return identityScatter(setting, {
    figure: 'planned-achieved',
    measure: 'achieved_change',
    suffix: '',
    family: 'refraction',
    beside: [
      { distance: 1, dash: [1, 2] },
      { distance: 0.5, dash: [3, 2] },
    ],
    words: setting.words.charts.identities.plannedAchieved,
  });
}
