import { eyeNumbers } from '../eligibility/lookup.js';
import { millionths } from '../units.js';
import { type Predictions, predictionsOf } from './predictions.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** Predictions of one block of a file whose eyes have a target, and how many equal it. */
interface Compared {
  first: number;
  rows: number;
  equal: number;
}

function comparedByBlock({ length, eye, predicted, source, block }: Predictions, target: Float64Array) {
  const blocks = new Map<string, Compared>();
  for (let i = 0; i < length; i++) {
    const aim = target[eye[i] as number] as number;
    if (Number.isNaN(aim)) continue;
    const key = `${source[i]} ${block[i]}`;
    const of = blocks.get(key) ?? { first: i, rows: 0, equal: 0 };
    of.rows++;
    if (millionths(aim) === millionths(predicted[i] as number)) of.equal++;
    blocks.set(key, of);
  }
  return blocks.values();
}

/** A file whose every prediction equals the target: the target was copied, and nothing was predicted. */
export const predictionIsTarget: Rule = {
  id: 'prediction-is-target',
  judge(context) {
    const target = eyeNumbers(context.tables.eyes, 'target_se');
    if (!target) return;
    const predictions = predictionsOf(context);
    const fewest = thresholdOf('copied_rows', context.plan);
    for (const { first, rows, equal } of comparedByBlock(predictions, target)) {
      if (rows < fewest || equal < rows) continue;
      const { source, column, field } = predictions.placeOf(first);
      const place = { source, column, field, detail: rows };
      context.report({ rule: 'prediction-is-target', severity: 'query', ...place, effect: 'kept' });
    }
  },
};
