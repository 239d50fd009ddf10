import { identityScatter } from './identity-scatter.js';
import type { ChartSetting, Drawing } from './setting.js';

/** Magnitude of the surgically induced over that of the target-induced vector: above the line, over-corrected. */
export function targetInduced(setting: ChartSetting): Drawing | undefined {
  return identityScatter(setting, {
    figure: 'target-induced',
    measure: 'surgically_induced',
    suffix: '_on_target_induced',
    family: 'astigmatism',
    beside: [{ distance: 0.5, dash: [3, 2] }],
    words: setting.words.charts.identities.targetInduced,
  });
}
