import { millionths } from '../units.js';
import { examsOf, isFit, sameExam } from './exams.js';
import { examPlace } from './places.js';
import type { Rule, RuleContext } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** Acuities of one file that stand beside one another, and those of them that are worse with correction. */
interface Pairs {
  all: number;
  worse: { corrected: number; uncorrected: number }[];
}

function pairsByFile({ tables, plan }: RuleContext): ReadonlyMap<number, Pairs> {
  const [corrected, uncorrected] = [examsOf(tables, 'corrected'), examsOf(tables, 'uncorrected')];
  const [own, without] = [corrected.numbers('logMAR'), uncorrected.numbers('logMAR')];
  const limit = millionths(thresholdOf('corrected_worse', plan));
  const files = new Map<number, Pairs>();
  for (let i = 0; i < corrected.length; i++) {
    const j = isFit(corrected, i) ? sameExam(corrected, i, uncorrected) : -1;
    if (j < 0) continue;
    const source = corrected.source[i] as number;
    const pairs = files.get(source) ?? { all: 0, worse: [] };
    pairs.all++;
    if (millionths((own[i] as number) - (without[j] as number)) > limit)
      pairs.worse.push({ corrected: i, uncorrected: j });
    files.set(source, pairs);
  }
  return files;
}

/** Each examination whose acuity is worse with correction than without. */
function tellEach({ worse }: Pairs, context: RuleContext): void {
  const [corrected, uncorrected] = [examsOf(context.tables, 'corrected'), examsOf(context.tables, 'uncorrected')];
  const placeOf = examPlace(context);
  for (const { corrected: i, uncorrected: j } of worse) {
    context.report(
      {
        rule: 'corrected-worse',
        severity: 'query',
        ...placeOf(corrected, i),
        effect: 'kept',
        detail: corrected.numbers('logMAR')[i] as number,
        other: uncorrected.numbers('logMAR')[j] as number,
      },
      { table: 'corrected', row: i, as: 'queried' },
      { table: 'uncorrected', row: j, as: 'queried' },
    );
  }
}

/** An eye that sees worse with correction than without; where a file has many, its two columns look exchanged. */
export const correctedWorse: Rule = {
  id: 'corrected-worse',
  tells: ['corrected-worse', 'acuity-columns-exchanged'],
  judge(context) {
    const { plan, tables, report } = context;
    const corrected = examsOf(tables, 'corrected');
    for (const [source, pairs] of pairsByFile(context)) {
      const { worse, all } = pairs;
      const isHabit =
        worse.length >= thresholdOf('exchanged_rows', plan) && worse.length > all * thresholdOf('minority', plan);
      if (!isHabit) {
        tellEach(pairs, context);
        continue;
      }
      const { column, field } = examPlace(context)(corrected, worse[0]?.corrected as number);
      const counts = { detail: worse.length, other: all };
      report({ rule: 'acuity-columns-exchanged', severity: 'query', source, column, field, effect: 'kept', ...counts });
    }
  },
};
