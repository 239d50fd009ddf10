import { accuracyShares } from './accuracy-shares.js';
import { acuityCumulative } from './acuity-cumulative.js';
import { angleError } from './angle-error.js';
import { cylinderShares } from './cylinder-shares.js';
import { differences } from './differences.js';
import { doubleAngle } from './double-angle.js';
import { errorTrend } from './error-trend.js';
import { eyeFlow } from './eye-flow.js';
import { funnel } from './funnel.js';
import { monitoring } from './monitoring.js';
import { plannedAchieved } from './planned-achieved.js';
import { predictionError } from './prediction-error.js';
import type { Chart } from './setting.js';
import { vectorFigures } from './vector-figures.js';

/** Every published chart by name, in the order of the report. */
export const publishedCharts: ReadonlyMap<string, Chart> = new Map<string, Chart>([
  ['eye-flow', eyeFlow],
  ['prediction-error', predictionError],
  ['accuracy-shares', accuracyShares],
  ['planned-achieved', plannedAchieved],
  ['error-trend', errorTrend],
  ['acuity-cumulative', acuityCumulative],
  ['cylinder-shares', cylinderShares],
  ...vectorFigures.map((figure) => [figure.id, doubleAngle(figure)] as const),
  ['angle-error', angleError],
  ['monitoring', monitoring],
  ['funnel', funnel],
  ['differences', differences],
]);
