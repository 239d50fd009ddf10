import type { SignedQuantity } from './error-panel.js';
import { histogramFigure } from './histogram-figure.js';
import type { ChartSetting, Drawing } from './setting.js';

/** How far treatments of astigmatism turned from where they were aimed, in bins of 5° centred on 0. */
export function angleError(setting: ChartSetting): Drawing | undefined {
  const measure = 'angle_of_error';
  if (!setting.results.find(measure, 'all', 'n')?.value) return undefined;
  const quantity: SignedQuantity = {
    measure,
    family: 'astigmatism',
    bin: 5,
    tick: 15,
    least: 22.5,
    limits: ['15.00', '5.00'],
    words: setting.words.charts.signedQuantities[measure],
  };
  return histogramFigure(setting, quantity, setting.words.charts.histograms[measure]);
}
