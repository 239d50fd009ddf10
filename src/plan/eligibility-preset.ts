import type { Condition, Plan } from '../records/plan.js';
import { eligibilityPreset as words } from '../words/en/eligibility-preset.js';

const where = (field: string, operator: Condition['operator'], value: Condition['value'], at?: string): Condition => ({
  where: field,
  at,
  operator,
  value,
  and: [],
});

/**
 * What `eligibility.preset` leaves out, after the audit's own exclusions: 'publication' keeps eyes with corrected
 * acuity of 6/12 or better after surgery, uncomplicated, without earlier corneal surgery, of one lens family per
 * constant. As with every exclusion, what is not recorded leaves no eye out.
 */
export function presetExclusions(preset: Plan['eligibility']['preset']): Plan['eligibility']['exclude'] {
  if (preset === 'none') return [];
  return [
    { condition: where('cdva', 'worse_than', '6/12', 'outcome'), reason: words.acuity },
    { condition: where('any_complication', 'is', 1), reason: words.complication },
    { condition: where('prior_corneal_surgery', 'is_not', 'none'), reason: words.cornea },
    { condition: where('constant_of_other_family', 'is', 1), reason: words.constant },
  ];
}
