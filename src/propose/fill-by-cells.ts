import type { Context } from './context.js';
import { type Guess, guessOf } from './guesses.js';
import { isBareAxis } from './pair-axes.js';
import { speaksByPart } from './phrases.js';
import type { Placed, RecognisedFile } from './placed.js';
import type { Profile } from './profile.js';
import type { HeaderReading } from './read-header.js';
import type { Term } from './vocabulary/vocabulary.js';

const nowhere: Context = { visit: undefined, side: undefined };

/** What a guess from the cells may be here: only where no header claims it and the place is free. */
function termsOfGuess(guess: Guess, surgical: boolean): readonly Term[] {
  switch (guess) {
    case 'date':
      return [surgical ? 'surgery_date' : 'exam_date'];
    case 'radius':
    case 'power':
      return ['k1', 'k2'];
    case 'acuity':
      return [];
    case 'lens_power':
      return surgical ? ['lens_power'] : [];
    default:
      return [guess];
  }
}

/** Fills gaps by the cells alone, from left to right. */
export function fillByCells(
  settled: Map<number, Placed>,
  open: readonly number[],
  of: Pick<RecognisedFile, 'file' | 'profiles' | 'headers'>,
  surgical: boolean,
): void {
  const given = new Set([...settled.values()].map(({ term }) => term));
  const forms = [...given].some((term) => /^k_?(1|2|flat|steep|mean)$/.test(term)) ? ['k1', 'k2'] : [];
  if (given.has('refraction')) forms.push('sphere', 'cylinder', 'axis');
  for (const index of open) {
    const guess = guessOf(of.profiles[index] as Profile, of.file.decimal);
    // Which axis it is, the neighbours would have told.
    if (guess === 'axis' && isBareAxis(of.headers[index] as HeaderReading)) continue;
    const term = guess && termsOfGuess(guess, surgical).find((one) => !given.has(one) && !forms.includes(one));
    if (!term) continue;
    const [best] = (of.headers[index]?.matches ?? []).filter(speaksByPart);
    settled.set(index, { index, term, context: nowhere, by: 'cells', likeness: 1, against: best?.term });
    given.add(term);
  }
  fillSphere(settled, open, of.profiles);
}

/** A column of eighths before a cylinder is its sphere, whatever the signs. */
function fillSphere(settled: Map<number, Placed>, open: readonly number[], profiles: readonly Profile[]): void {
  const all = [...settled.values()];
  const cylinder = all.find(({ term }) => term === 'cylinder');
  if (!cylinder || all.some(({ term }) => term === 'sphere')) return;
  const index = cylinder.index - 1;
  if (!open.includes(index) || settled.has(index) || !isEighths(profiles[index])) return;
  const { context } = cylinder;
  settled.set(index, { index, term: 'sphere', context, by: 'cells', likeness: 1, against: undefined });
}

/** Whether cells are in eighths of a dioptre, rounded to hundredths: a sphere, where they stand before a cylinder. */
function isEighths(profile: Profile | undefined): boolean {
  return (
    profile !== undefined &&
    profile.share(({ value }) => Math.abs(8 * value - Math.round(8 * value)) < 0.05 && Math.abs(value) <= 25) > 0.9
  );
}
