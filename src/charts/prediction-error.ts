import { headlineError } from '../tables/headline-error.js';
import type { SignedQuantity } from './error-panel.js';
import { histogramFigure } from './histogram-figure.js';
import type { ChartSetting, Drawing } from './setting.js';

/** How far refractions ended from the plan, in bins of 0.25 D centred on 0. */
export function predictionError(setting: ChartSetting): Drawing | undefined {
  const measure = headlineError(setting.results);
  if (measure === undefined) return undefined;
  const quantity: SignedQuantity = {
    measure,
    family: 'refraction',
    bin: 0.25,
    tick: 1,
    least: 2.125,
    limits: ['1.00', '0.50'],
    words: setting.words.charts.signedQuantities[measure],
  };
  return histogramFigure(setting, quantity, setting.words.charts.histograms[measure]);
}
