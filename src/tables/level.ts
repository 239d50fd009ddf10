import { round } from '../format/round.js';
import type { Plan } from '../records/plan.js';

/**
 * The confidence level as readers write it.
 *
 * @example levelText(plan) // '95 %'
 */
export function levelText(plan: Plan): string {
  return `${round(100 * plan.statistics.confidence, 1)} %`;
}
