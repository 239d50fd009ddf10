import { unwrapped } from './signs.js';

/** The two eyes. */
export type Laterality = 'right' | 'left';

/** Words that a source declares for its eyes, beside the built-in ones. */
export interface LateralityWords {
  right?: readonly string[];
  left?: readonly string[];
}

/** Spellings that mean one thing in every export; 'D', 'S', 'G', '1', '2' do not, and must be declared. */
const builtIn: Readonly<Record<Laterality | 'both', readonly string[]>> = {
  right: ['od', 'r', 're', 'rt', 'right', 'right eye', 'rechts', 'ra', 'rechtes auge', 'droit', 'oeil droit'],
  left: ['os', 'l', 'le', 'lt', 'left', 'left eye', 'links', 'la', 'linkes auge', 'og', 'gauche', 'oeil gauche'],
  both: ['ou', 'be', 'both', 'both eyes', 'bilateral', 'ods', 'odg', 'r+l', 'r/l', 'od+os', 'od/os', 'beide', 'bds'],
};

/**
 * Which eye a word names.
 *
 * @param word      as written; case, dots and outer blanks do not matter
 * @param declared  the source's own words; they win over the built-in ones
 * @returns 'both' is recognised so that its row can be refused by name; undefined where the word names no eye
 * @source OD, OS, OU: Latin in general use; the others common practice, no source
 * @example parseLaterality('O.D.') // 'right'
 */
export function parseLaterality(word: string, declared: LateralityWords = {}): Laterality | 'both' | undefined {
  const plain = folded(word);
  if (plain === '') return undefined;
  if (declared.right?.some((own) => folded(own) === plain)) return 'right';
  if (declared.left?.some((own) => folded(own) === plain)) return 'left';
  return (['right', 'left', 'both'] as const).find((side) => builtIn[side].includes(plain));
}

function folded(word: string): string {
  return unwrapped(word).toLowerCase().replace(/œ/g, 'oe').replace(/[.]/g, '').replace(/\s+/g, ' ');
}
