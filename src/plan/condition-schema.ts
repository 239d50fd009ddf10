import { z } from 'zod';
import type { Operator } from '../records/plan.js';
import { plan as words } from '../words/en/plan.js';
import { list, oneOrMany, patterned, section, text } from './leaves.js';

const { keys, expected } = words;

export const operators = [
  'is',
  'is_not',
  'below',
  'at_most',
  'above',
  'at_least',
  'between',
  'worse_than',
  'better_than',
] as const satisfies readonly Operator[];

/** A condition as written: the operator is a key. */
export interface ConditionForm {
  where: string;
  at?: string | undefined;
  is?: string[] | undefined;
  is_not?: string[] | undefined;
  below?: string | undefined;
  at_most?: string | undefined;
  above?: string | undefined;
  at_least?: string | undefined;
  between?: [string, string] | undefined;
  worse_than?: string | undefined;
  better_than?: string | undefined;
  and?: ConditionForm[] | undefined;
}

const acuity = patterned(/^\d+(\.\d+)?(\/\d+(\.\d+)?)?$/, expected.acuity).meta({ examples: ['20/40'] });

/** Keys of a condition; what stands beside it (a reason, a name) is added by its user. */
export const conditionShape = {
  where: text.describe(keys.conditions.where),
  at: text
    .describe(keys.conditions.at)
    .meta({ examples: ['before'] })
    .optional(),
  is: oneOrMany(text).describe(keys.conditions.is).optional(),
  is_not: oneOrMany(text).describe(keys.conditions.is_not).optional(),
  below: text.describe(keys.conditions.below).optional(),
  at_most: text.describe(keys.conditions.at_most).optional(),
  above: text.describe(keys.conditions.above).optional(),
  at_least: text.describe(keys.conditions.at_least).optional(),
  between: z.tuple([text, text], { error: expected.pair }).describe(keys.conditions.between).optional(),
  worse_than: acuity.describe(keys.conditions.worse_than).optional(),
  better_than: acuity.describe(keys.conditions.better_than).optional(),
  get and(): z.ZodOptional<z.ZodArray<z.ZodType<ConditionForm>>> {
    return list(condition).describe(keys.conditions.and).optional();
  },
};

export const condition: z.ZodType<ConditionForm> = z.lazy(() => section(conditionShape)).meta({ id: 'condition' });
