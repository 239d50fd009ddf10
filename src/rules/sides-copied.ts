import { eyeNumbers } from '../eligibility/lookup.js';
import { millionths } from '../units.js';
import { type Exams, examsOf, isFit, rowsOfEye } from './exams.js';
import { pairsOfEyes } from './fellow.js';
import { eyePlace } from './places.js';
import type { Rule, RuleContext } from './rule.js';

type Pair = readonly [right: number, left: number];

/** Whether one file gives both eyes the same powers of the cornea. */
function sameCornea(cornea: Exams): (pair: Pair) => boolean {
  const powers = ['flat', 'steep'].map(cornea.numbers);
  const isSame = (i: number, j: number): boolean =>
    cornea.source[i] === cornea.source[j] &&
    powers.every((values) => millionths(values[i] as number) === millionths(values[j] as number));
  return (pair) => {
    const [right, left] = pair.map((eye) => [...rowsOfEye(cornea, eye)].filter((i) => isFit(cornea, i)));
    return (right ?? []).some((i) => (left ?? []).some((j) => isSame(i, j)));
  };
}

/** Whether a value is the same in both eyes, to the last digit; undefined where one of them has none. */
function sameValue({ tables }: RuleContext, field: string): (pair: Pair) => boolean | undefined {
  const values = eyeNumbers(tables.eyes, field);
  return ([right, left]) => {
    const [a, b] = [values?.[right] ?? Number.NaN, values?.[left] ?? Number.NaN];
    return Number.isNaN(a + b) ? undefined : millionths(a) === millionths(b);
  };
}

/** Two eyes of one patient with the same biometry in every value: one was copied to the other. */
export const sidesCopied: Rule = {
  id: 'sides-copied',
  judge(context) {
    const [length, chamber] = ['axial_length', 'acd'].map((field) => sameValue(context, field)) as [
      ReturnType<typeof sameValue>,
      ReturnType<typeof sameValue>,
    ];
    const cornea = sameCornea(examsOf(context.tables, 'keratometries'));
    const place = eyePlace(context);
    for (const pair of pairsOfEyes(context.tables)) {
      if (length(pair) !== true || chamber(pair) === false || !cornea(pair)) continue;
      const left = pair[1];
      const mark = { table: 'eyes', row: left, field: 'axial_length', as: 'queried' } as const;
      const at = place(left, 'axial_length');
      context.report({ rule: 'sides-copied', severity: 'query', ...at, effect: 'kept' }, mark);
    }
  },
};
