import type { Days } from '../../units.js';
import type { FoundVisit } from './visits.js';

export interface Window {
  from: Days;
  to: Days;
}

/** Share of a visit's days that its window leaves out at either end. */
const outliers = 0.02;

function quantileOf(sorted: readonly Days[], share: number): Days {
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.round(share * (sorted.length - 1))))] as Days;
}

/** The window of a visit that has only its aim: from 0.7 to 1.5 of it, or from where the one before it ends. */
function ofAim(aim: Days, former: Window | undefined): Window {
  const from = former ? Math.max(former.to + 1, Math.ceil(aim / 2)) : Math.ceil(0.7 * aim);
  return { from: Math.max(1, from), to: Math.floor(1.5 * aim) };
}

/**
 * The window of each visit, none overlapping another. A month is 21 to 45 days, three months behind it 46 to 135; a
 * window that would leave out examinations which a label calls this visit is widened.
 *
 * @param visits  in the order of their aims; one without an aim comes last
 * @returns undefined for a visit of which neither aim nor days are known: rows belong to it by their label alone
 * @source judgement: windows in general use, widened by what the exports hold
 */
export function windowsOf(visits: readonly FoundVisit[]): readonly (Window | undefined)[] {
  const windows: (Window | undefined)[] = [];
  let former: Window | undefined;
  for (const { aim, days } of visits) {
    const sorted = days.filter((day) => day > 0).toSorted((a, b) => a - b);
    if (aim === undefined && sorted.length === 0) {
      windows.push(undefined);
      continue;
    }
    const base =
      aim === undefined
        ? { from: Math.max(28, (former?.to ?? 0) + 1), to: Math.max(120, (former?.to ?? 0) + 1) }
        : ofAim(aim, former);
    const seen =
      sorted.length > 0 ? { from: quantileOf(sorted, outliers), to: quantileOf(sorted, 1 - outliers) } : base;
    const from = Math.max((former?.to ?? 0) + 1, Math.min(base.from, seen.from));
    const window = { from, to: Math.max(from, base.to, seen.to) };
    windows.push(window);
    former = window;
  }
  return windows;
}
