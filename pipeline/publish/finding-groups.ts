import { groupFindings } from '../../src/findings/groups.js';
import { type QueryRow, queryRowOf } from '../../src/findings/queries.js';
import { tell } from '../../src/findings/telling.js';
import { count as countText } from '../../src/format/number.js';
import type { FindingGroup } from '../../src/page/content.js';
import type { Plan } from '../../src/records/plan.js';
import type { Words } from '../../src/words/index.js';
import type { Everything } from './everything.js';
import { contextOf } from './finding-lists.js';

/**
 * Findings by rule, the gravest first and within a severity the most frequent: what was found, what was done, how many
 * eyes it is about. What would stop a run is none of them: a report exists.
 *
 * @param places  whether patients, places and values are told: never in what leaves the clinic
 */
export function findingGroups(
  all: Everything,
  plan: Plan,
  words: Words,
  { places }: { places: boolean },
): readonly FindingGroup[] {
  const context = contextOf(all, plan, words);
  const rowOf = queryRowOf(all.tables, context);
  return (['set aside', 'query', 'note'] as const).flatMap((severity) =>
    groupFindings(all.findings, severity)
      .filter(({ count, eyes }) => places || Math.min(count, eyes || count) >= plan.outputs.small_cells)
      .map(({ rule, count, eyes, first }) => {
        const { title, effect } = tell(first[0], context);
        const sentence = words.findings.group(title, effect, first[0].effect === 'kept', countText(eyes));
        const told = places ? first.map((finding) => placeText(rowOf(finding), words)) : [];
        return { rule, severity, sentence, count, places: told };
      })
      .sort((a, b) => b.count - a.count),
  );
}

/** 'P0042 right, 3 months: lane.csv row 88 "Ax" ‘195’'. */
function placeText({ patient, eye, visit, file, row, column, value }: QueryRow, { screens }: Words): string {
  const whose = [[patient, eye].join(' ').trim(), visit].filter((part) => part !== '').join(', ');
  const where = [file, row === '' ? '' : screens.row(Number(row)), column === '' ? '' : `"${column}"`, value];
  return [whose, where.filter((part) => part !== '').join(' ')].filter((part) => part !== '').join(': ');
}
