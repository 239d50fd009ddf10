import type { Condition, Operator } from '../records/plan.js';
import { type ConditionForm, operators } from './condition-schema.js';
import { fieldNamed, isNumeric } from './fields.js';
import { writtenNumber } from './leaves.js';

/** What a condition's `where` names, as far as its value's type goes. */
type SubjectType = 'number' | 'text' | 'unknown';

/** The type of what `where` names. */
export type TypeOf = (where: string) => SubjectType;

const defaultExamination = 'outcome';

function isEquality(operator: Operator): boolean {
  return operator === 'is' || operator === 'is_not';
}

/** A word as a number where the subject holds numbers, or is ordered and might. */
function typed(text: string, operator: Operator, type: SubjectType): string | number {
  if (operator === 'worse_than' || operator === 'better_than') return text;
  const isNumber = type === 'number' || (type === 'unknown' && !isEquality(operator));
  return isNumber ? (writtenNumber(text) ?? text) : text;
}

function comparedValue(form: ConditionForm, operator: Operator, type: SubjectType): Condition['value'] {
  const written = form[operator];
  if (written === undefined) throw new RangeError('resolve: a condition without its operator passed the checks');
  if (typeof written === 'string') return typed(written, operator, type);
  const values = written.map((text) => typed(text, operator, type));
  const [only] = values;
  return values.length === 1 && only !== undefined ? only : values;
}

/** The type of a field or covariate of the eyes; covariates of unknown type are told by the data. */
export function eyeSubjects(covariates: ReadonlyMap<string, 'number' | 'category' | undefined>): TypeOf {
  return (where) => {
    const field = fieldNamed(where);
    if (field) return isNumeric(field) ? 'number' : 'text';
    const type = covariates.get(where);
    if (type === undefined) return 'unknown';
    return type === 'number' ? 'number' : 'text';
  };
}

/** Columns under `only` are text, unless they are ordered. */
export const columnSubjects: TypeOf = () => 'unknown';

/** A condition with its one operator, its examination and its values in their types. */
export function resolveCondition(form: ConditionForm, typeOf: TypeOf): Condition {
  const operator = operators.find((one) => form[one] !== undefined);
  if (!operator) throw new RangeError('resolve: a condition without an operator passed the checks');
  const ofExamination = typeOf !== columnSubjects && fieldNamed(form.where)?.kind !== undefined;
  return {
    where: form.where,
    at: form.at ?? (ofExamination ? defaultExamination : undefined),
    operator,
    value: comparedValue(form, operator, typeOf(form.where)),
    and: (form.and ?? []).map((other) => resolveCondition(other, typeOf)),
  };
}
