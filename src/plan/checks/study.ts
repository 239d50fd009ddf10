import type { Fault } from '../../records/plan.js';
import { plan as words } from '../../words/en/plan.js';
import { entryAt, textAt, valueAt } from '../document.js';
import { fault } from '../faults.js';
import { isDay, isYear } from '../leaves.js';
import { reportName } from '../report-name.js';
import type { Survey } from '../survey.js';

/** First or last day of a period's end; undefined where it is no date. */
function dayOf(text: string | undefined, rest: string): string | undefined {
  if (text === undefined) return undefined;
  if (isYear(text)) return text + rest;
  return isDay(text) ? text : undefined;
}

/** Whether the period has a length, and the report a name. */
export function checkStudy({ root }: Survey): readonly Fault[] {
  const from = dayOf(textAt(root, 'period', 'from'), '-01-01');
  const to = dayOf(textAt(root, 'period', 'to'), '-12-31');
  const end = entryAt(valueAt(root, 'period'), 'to');
  const turned = end && from !== undefined && to !== undefined && from > to;
  const title = valueAt(root, 'title');
  const nameless =
    title?.kind === 'text' && !entryAt(root, 'name') && title.text.trim() !== '' && reportName(title.text) === '';
  return [
    ...(turned ? [fault(end.value.place, words.periodTurned())] : []),
    ...(nameless ? [fault(title.place, words.nameFromTitle())] : []),
  ];
}
