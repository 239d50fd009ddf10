import { eyeNumbers } from '../eligibility/lookup.js';
import { millionths } from '../units.js';
import { predictionsOf } from './predictions.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** A prediction far from the refraction aimed at: asked about, and past belief set aside. */
export const predictionFar: Rule = {
  id: 'prediction-far',
  judge(context) {
    const { tables, plan, report } = context;
    const target = eyeNumbers(tables.eyes, 'target_se');
    if (!target) return;
    const { length, eye, predicted, state, placeOf } = predictionsOf(context);
    const [possible, usual] = [thresholdOf('prediction_possible', plan), thresholdOf('prediction_usual', plan)];
    for (let i = 0; i < length; i++) {
      const [of, value] = [eye[i] as number, predicted[i] as number];
      const aim = target[of] as number;
      const apart = millionths(Math.abs(value - aim));
      if (state[i] === 2 || !(apart > millionths(usual))) continue;
      const isOut = apart > millionths(possible);
      const verdict = isOut
        ? ({ severity: 'set aside', effect: 'prediction left out' } as const)
        : ({ severity: 'query', effect: 'kept' } as const);
      report(
        { rule: 'prediction-far', ...verdict, ...placeOf(i), eye: of, detail: aim, other: value },
        { table: 'predictions', row: i, as: isOut ? 'set aside' : 'queried' },
      );
    }
  },
};
