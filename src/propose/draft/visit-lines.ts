import type { Days } from '../../units.js';
import { propose as words } from '../../words/en/propose.js';
import { doubt } from './doubt.js';
import { type YamlLine, yamlBraces, yamlList, yamlText } from './lines.js';
import type { FoundVisit, Visits } from './visits.js';
import { type Window, windowsOf } from './windows.js';

/** Days between which a visit serves as the outcome: eyes are healed, and follow-up is not yet about later events. */
const outcomeDays = { from: 21, to: 270 } as const;

function visitLine({ name, aim, labels, days }: FoundVisit, window: Window | undefined): YamlLine {
  const keys: (readonly [string, string])[] = [['name', yamlText(name)]];
  if (window) keys.push(['days', `[${window.from}, ${window.to}]`]);
  if (window && aim !== undefined && isOff(aim, window)) keys.push(['aim', String(aim)]);
  if (labels.length > 0) keys.push(['labels', yamlList(labels)]);
  return { depth: 2, text: `- ${yamlBraces(keys)}`, comment: words.visitExams(days.length) };
}

const isOff = (aim: Days, { from, to }: Window): boolean => aim !== (from + to) / 2 && aim >= from && aim <= to;

/** Visits that serve as the outcome, the first wanted first: the latest of the usual ones. */
function outcomeOf(visits: readonly FoundVisit[]): readonly string[] {
  const fitting = visits.filter(({ aim }) => aim !== undefined && aim >= outcomeDays.from && aim <= outcomeDays.to);
  const chosen = fitting.length > 0 ? fitting : visits.slice(-1);
  return chosen.map(({ name }) => name).toReversed();
}

/** Visits after surgery with their windows, and which of them is the outcome. */
export function visitLines({ found, beforeLabels, unknownLabels }: Visits): readonly YamlLine[] {
  const windows = windowsOf(found);
  const doubts = unknownLabels.length > 0 ? [doubt('visit labels', words.doubts.unknownLabels(unknownLabels))] : [];
  const lines: YamlLine[] = found.map((visit, at) => visitLine(visit, windows[at]));
  const body: YamlLine[] = [];
  if (lines.length > 0) body.push({ depth: 1, text: 'visits:', doubts }, ...lines);
  if (beforeLabels.length > 0)
    body.push({ depth: 1, text: 'before:' }, { depth: 2, text: `labels: ${yamlList(beforeLabels)}` });
  if (found.length > 1) {
    const text = `outcome: ${yamlList(outcomeOf(found))}`;
    body.push({ depth: 1, text, doubts: [doubt('outcome', words.doubts.outcome)] });
  }
  if (body.length === 0) {
    return [
      {
        depth: 0,
        text: 'follow_up:',
        off: true,
        notes: [words.sections.noVisits],
        ...(doubts.length > 0 && { doubts }),
      },
    ];
  }
  return [
    { depth: 0, text: 'follow_up:', notes: [words.sections.visits] },
    ...body,
    { depth: 1, text: 'day_of_surgery: neither', comment: words.unknown.dayOfSurgery, off: true },
  ];
}
