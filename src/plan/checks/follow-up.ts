import type { Fault } from '../../records/plan.js';
import { plan as words } from '../../words/en/plan.js';
import {
  type DocumentNode,
  entryAt,
  itemsOf,
  type Place,
  type TextNode,
  textAt,
  textsOf,
  valueAt,
} from '../document.js';
import { fault } from '../faults.js';
import { writtenNumber } from '../leaves.js';
import { nearest } from '../nearest.js';
import { type Survey, visitNamesOf } from '../survey.js';

interface Window {
  name: string;
  place: Place;
  from: number;
  to: number;
}

/** First and last day of a visit; undefined where it has none, or not two numbers. */
function windowOf(visit: DocumentNode): Window | undefined {
  const days = entryAt(visit, 'days');
  const [from, to] = textsOf(days?.value).map(({ text }) => writtenNumber(text));
  if (!days || from === undefined || to === undefined) return undefined;
  return { name: textAt(visit, 'name') ?? '', place: days.place, from, to };
}

function overlaps(visits: readonly DocumentNode[]): readonly Fault[] {
  const windows = visits.map(windowOf).filter((one) => one !== undefined);
  return windows.flatMap((late, i) => {
    const early = windows.slice(0, i).find((other) => other.from <= late.to && late.from <= other.to);
    if (!early) return [];
    const days = [Math.max(early.from, late.from), Math.min(early.to, late.to)] as const;
    return [fault(late.place, words.overlap(late.name, early.name, days))];
  });
}

function aimFault(visit: DocumentNode): readonly Fault[] {
  const aim = valueAt(visit, 'aim');
  const day = aim?.kind === 'text' ? writtenNumber(aim.text) : undefined;
  if (!aim || day === undefined) return [];
  if (!entryAt(visit, 'days')) return [fault(aim.place, words.aimAlone())];
  const days = windowOf(visit);
  const outside = days && (day < days.from || day > days.to);
  return outside ? [fault(aim.place, words.aimOutside(days.from, days.to))] : [];
}

function nameFaults({ visits }: Survey): readonly Fault[] {
  return visits.flatMap(({ text, place }, i) => {
    if (text === 'before' || (text === 'outcome' && visits.length > 1))
      return [fault(place, words.visitReserved(text))];
    return visits.slice(0, i).some((other) => other.text === text) ? [fault(place, words.visitTwice(text))] : [];
  });
}

/** Words of a visit column that mean two visits. */
function labelFaults(root: DocumentNode, visits: readonly DocumentNode[]): readonly Fault[] {
  const meaning = new Map<string, string>();
  const labelled = (labels: readonly TextNode[], name: string): readonly Fault[] =>
    labels.flatMap(({ text, place }) => {
      const folded = text.trim().toLowerCase();
      const other = meaning.get(folded);
      meaning.set(folded, other ?? name);
      return other === undefined || other === name ? [] : [fault(place, words.labelTwice(text, other))];
    });
  for (const visit of visits) labelled(textsOf(valueAt(visit, 'name')), textAt(visit, 'name') ?? '');
  const own = visits.flatMap((visit) => labelled(textsOf(valueAt(visit, 'labels')), textAt(visit, 'name') ?? ''));
  return [...own, ...labelled(textsOf(valueAt(root, 'follow_up', 'before', 'labels')), 'before')];
}

function unknownVisits(named: readonly TextNode[], known: readonly string[]): readonly Fault[] {
  const unknown = named.filter(({ text }) => !known.includes(text));
  return unknown.map(({ text, place }) => fault(place, words.unknownVisit(text, nearest(text, known), known)));
}

function outcomeFaults(about: Survey): readonly Fault[] {
  const { root, visits } = about;
  const followUp = entryAt(root, 'follow_up');
  if (entryAt(followUp?.value, 'outcome')) {
    return unknownVisits(textsOf(valueAt(followUp?.value, 'outcome')), visitNamesOf(about));
  }
  const open = followUp && visits.length > 1;
  return open ? [fault(followUp.place, words.outcomeMissing(visits.map(({ text }) => text)))] : [];
}

/** Whether visits are told apart, and visits named elsewhere are declared. */
export function checkFollowUp(about: Survey): readonly Fault[] {
  const { root, sources } = about;
  const visits = itemsOf(valueAt(root, 'follow_up', 'visits'));
  const ofBlocks = sources.flatMap(({ blocks }) => blocks).flatMap(({ node }) => textsOf(valueAt(node, 'visit')));
  return [
    ...nameFaults(about),
    ...overlaps(visits),
    ...visits.flatMap(aimFault),
    ...labelFaults(root, visits),
    ...outcomeFaults(about),
    ...unknownVisits(ofBlocks, ['before', ...visitNamesOf(about)]),
  ];
}
