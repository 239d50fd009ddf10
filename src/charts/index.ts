import { accuracyShares } from './accuracy-shares.js';
import { acuityCumulative } from './acuity-cumulative.js';
import { angleError } from './angle-error.js';
import { cylinderShares } from './cylinder-shares.js';
import { differences } from './differences.js';
import { doubleAngle } from './double-angle.js';
import { eyeFlow } from './eye-flow.js';
import { funnel } from './funnel.js';
import { monitoring } from './monitoring.js';
import { predictionError } from './prediction-error.js';
import type { Chart } from './setting.js';
import { vectorFigures } from './vector-figures.js';

const vectorCharts = vectorFigures.map((figure) => [figure.id, doubleAngle(figure)] as const);

/** Every published chart by name, in the order of the report: that of the questions of its page. */
export const publishedCharts: ReadonlyMap<string, Chart> = new Map<string, Chart>([
  ['eye-flow', eyeFlow],
  ['prediction-error', predictionError],
  ['accuracy-shares', accuracyShares],
  ['cylinder-shares', cylinderShares],
  ...vectorCharts.filter(([id]) => id === 'double-angle'),
  ['angle-error', angleError],
  ...vectorCharts.filter(([id]) => id !== 'double-angle'),
  ['acuity-cumulative', acuityCumulative],
  ['monitoring', monitoring],
  ['funnel', funnel],
  ['differences', differences],
]);
