import { parseClock } from '../../intake/clock.js';
import { propose as words } from '../../words/en/propose.js';
import type { Choice } from '../choices.js';
import type { Placed, RecognisedFile } from '../placed.js';

export const views = ['facing', 'surgeon-superior', 'surgeon-temporal'] as const;

/** Whether positions are hours on a dial: none beyond 12, and some in halves or with minutes. */
export function isClock(of: RecognisedFile, { index }: Placed): boolean {
  const profile = of.profiles[index];
  if (!profile || profile.filled === 0) return false;
  const hours = profile.share(({ word }) => parseClock(word) !== undefined);
  const beyond = profile.share(({ value }) => value > 12);
  return hours > 0.95 && beyond === 0;
}

/** From where an incision's hour was read: nothing in a file tells. */
export function clockChoice({ file }: RecognisedFile, { index }: Placed): Choice {
  return {
    id: `clock-view ${file.file} ${index}`,
    kind: 'clock-view',
    label: file.label,
    header: file.header[index] ?? '',
    found: words.found.clock,
    options: views.map((value) => ({ value, evidence: '' })),
    likelier: undefined,
  };
}

const planes = ['corneal', 'spectacle'] as const;

/** Plane and notation of a predicted cylinder: signs may settle the notation, nothing settles the plane. */
export function residualChoice(of: RecognisedFile, { index }: Placed): Choice {
  const profile = of.profiles[index];
  const negative = (profile?.share(({ value }) => value < 0) ?? 0) > 0.5;
  const notations = negative ? ['minus'] : ['plus', 'minus'];
  return {
    id: `residual-form ${of.file.file} ${index}`,
    kind: 'residual-form',
    label: of.file.label,
    header: of.file.header[index] ?? '',
    found: words.found.residual,
    options: planes.flatMap((plane) => notations.map((notation) => ({ value: `${plane} ${notation}`, evidence: '' }))),
    likelier: undefined,
  };
}
