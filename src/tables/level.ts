import { round } from '../format/round.js';
import type { Plan } from '../records/plan.js';

/**
 * The confidence level as readers write it.
 *
 * @example levelText(plan) // '95 %'
 */
export function levelText(plan: Plan): string {
  return percentLevel(plan.statistics.confidence);
}

/**
 * Any level of an interval as readers write it; of several primaries it is seldom round.
 *
 * @example percentLevel(1 - 0.05 / 3) // '98.3 %'
 */
export function percentLevel(level: number): string {
  return `${round(100 * level, 1)} %`;
}
