import { groupFindings } from '../../src/findings/groups.js';
import type { QueryRow } from '../../src/findings/queries.js';
import { tell } from '../../src/findings/telling.js';
import type { FindingGroup } from '../../src/page/content.js';
import type { Plan } from '../../src/records/plan.js';
import type { Words } from '../../src/words/index.js';
import type { Everything } from './everything.js';
import { contextOf } from './finding-lists.js';

/** Places that the page shows of one rule; the query list holds them all. */
const placesShown = 10;

/**
 * Findings by rule, the gravest first and within a severity the most frequent. What would stop a run is none of
 * them: a report exists.
 *
 * @param queries  the query list, whose patients, places and values are told; none in what leaves the clinic
 */
export function findingGroups(
  all: Everything,
  plan: Plan,
  words: Words,
  queries: readonly QueryRow[],
): readonly FindingGroup[] {
  const context = contextOf(all, plan, words);
  return (['set aside', 'query', 'note'] as const).flatMap((severity) =>
    groupFindings(all.findings, severity)
      .map(({ rule, count, first }) => {
        const own = queries.filter((query) => query.rule === rule && query.severity === severity).slice(0, placesShown);
        const told = own.map((query) => placeText(query, words));
        return { rule, severity, sentence: tell(first, context).title, count, places: told };
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
