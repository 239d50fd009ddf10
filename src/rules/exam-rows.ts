import { type Kind, kinds } from '../records/canonical.js';
import type { Finding } from '../records/finding.js';
import { type Exams, examsOf, isFit } from './exams.js';
import { examPlace } from './places.js';
import type { Mark, RuleContext } from './rule.js';

/** One row of a file that holds an examination, with everything that was measured there. */
interface ExamRow {
  exams: Exams;
  i: number;
  places: { table: Kind; row: number }[];
}

/** Examinations that a test picks out, each once for all that it measured, in the order of files and rows. */
function pickRows({ tables }: RuleContext, picks: (exams: Exams, i: number) => boolean): readonly ExamRow[] {
  const found = new Map<string, ExamRow>();
  for (const kind of Object.keys(kinds) as Kind[]) {
    const exams = examsOf(tables, kind);
    for (let i = 0; i < exams.length; i++) {
      if (!isFit(exams, i) || !picks(exams, i)) continue;
      const key = `${exams.source[i]} ${exams.row[i]} ${exams.block[i]}`;
      const known = found.get(key) ?? { exams, i, places: [] };
      known.places.push({ table: kind, row: i });
      found.set(key, known);
    }
  }
  return [...found.values()].sort(({ exams: a, i }, { exams: b, i: j }) => {
    return (a.source[i] as number) - (b.source[j] as number) || (a.row[i] as number) - (b.row[j] as number);
  });
}

/** What a rule says of a whole examination. */
type Verdict = Pick<Finding, 'rule' | 'severity'> & { detail?: number };

/**
 * Tells of whole examinations, and sets aside or asks about everything that was measured there.
 *
 * @param verdict  of a row of any kind; undefined where nothing is to be said
 */
export function tellExamRows(context: RuleContext, verdict: (exams: Exams, i: number) => Verdict | undefined): void {
  const placeOf = examPlace(context);
  for (const { exams, i, places } of pickRows(context, (of, row) => verdict(of, row) !== undefined)) {
    const told = verdict(exams, i) as Verdict;
    const isOut = told.severity === 'set aside';
    const as = isOut ? 'set aside' : 'queried';
    const marks: Mark[] = told.severity === 'note' ? [] : places.map((place) => ({ ...place, as }));
    // A date is never written.
    const at = { ...placeOf(exams, i, ['exam_date', 'days', 'visit']), written: undefined };
    context.report({ ...told, ...at, effect: isOut ? 'row left out' : 'kept' }, ...marks);
  }
}
