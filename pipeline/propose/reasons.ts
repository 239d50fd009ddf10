import { type FindingParts, findingAt, findingsBuilder } from '../../src/findings/builder.js';
import { tell } from '../../src/findings/telling.js';
import type { Plan } from '../../src/records/plan.js';
import type { UnfitReason } from '../../src/screens/propose.js';
import type { Words } from '../../src/words/index.js';
import { plan as planFrom } from '../plan.js';
import type { UnfitFile } from './propose.js';

/** A plan without anything of its own: findings are told in the words that `run` has for them. */
function barePlan(): Plan {
  const planned = planFrom(
    'format: 1\ntitle: none\nsources:\n  - { file: a, holds: eye, columns: { patient: a, eye: b } }\n',
  );
  if ('faults' in planned) throw new RangeError('propose: the bare plan has faults; expected none');
  return planned.plan;
}

/** What is done about these elsewhere, or cannot be said in a line of audit.yaml that does not exist yet. */
const withoutAdvice = ['identifier-present', 'delimiter-open'];

function reasonOf({ label }: UnfitFile, parts: FindingParts, words: Words): UnfitReason {
  const text = words.proposeScreens;
  const { column, row = 0, rule } = parts;
  const place = column === undefined ? words.screens.stopped.place(label, row, '') : text.column(label, column);
  if (rule === 'header-missing') return { place, sentence: text.headerMissing, do: text.headerMissingDo };
  const builder = findingsBuilder();
  builder.add(parts);
  const { sentence, act } = tell(findingAt(builder.build(), 0), { raw: [], plan: barePlan(), words: words.findings });
  return { place, sentence, do: withoutAdvice.includes(rule) ? '' : act };
}

/** What keeps files from being used, in words; cells are never told. */
export function unfitReasons(files: readonly UnfitFile[], words: Words): readonly UnfitReason[] {
  return files.flatMap((file) => file.findings.map((finding) => reasonOf(file, finding, words)));
}
