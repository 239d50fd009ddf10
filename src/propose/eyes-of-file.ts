import { parseLaterality } from '../intake/laterality.js';
import { propose as words } from '../words/en/propose.js';
import type { Answers, Choice } from './choices.js';
import { likelierOf, settled } from './choices.js';
import { columnOf } from './exported.js';
import { eyeCode } from './eye-codes.js';
import { eyeAt, patientAt, placedAs } from './eye-rows.js';
import type { RecognisedFile } from './placed.js';

/** How the eyes of one file are written. */
export interface EyeReading {
  /** Words that audit.yaml must declare. */
  words: { right?: readonly string[]; left?: readonly string[] };
  /** Words that mean no eye that we know. */
  unknown: readonly string[];
  choice: Choice | undefined;
}

interface Word {
  word: string;
  cells: number;
}

/** Words of the eye column that are not known everywhere. */
function strangeWords(of: RecognisedFile): readonly Word[] {
  const eye = placedAs(of, 'eye');
  const words = eye ? (of.profiles[eye.index]?.words ?? []) : [];
  return words.filter(({ word }) => parseLaterality(word) === undefined);
}

/** Codes that mean an eye as a pair: D beside S, or one of them beside a word that is known. */
function pairOf(of: RecognisedFile, strange: readonly Word[]): EyeReading['words'] | undefined {
  const right = strange.filter(({ word }) => eyeCode(word) === 'right').map(({ word }) => word.trim());
  const left = strange.filter(({ word }) => eyeCode(word) === 'left').map(({ word }) => word.trim());
  const eye = placedAs(of, 'eye');
  const known = new Set((eye ? (of.profiles[eye.index]?.words ?? []) : []).map(({ word }) => parseLaterality(word)));
  const paired = (right.length > 0 || known.has('right')) && (left.length > 0 || known.has('left'));
  if (!paired || (right.length === 0 && left.length === 0)) return undefined;
  return { ...(right.length > 0 && { right }), ...(left.length > 0 && { left }) };
}

/** What is known of each patient's eyes: the one word for it, or '' where there are two. */
type OnlyEyes = Map<string, string>;

function note(known: OnlyEyes, patient: string | undefined, eye: string | undefined): void {
  if (patient === undefined || eye === undefined) return;
  const former = known.get(patient);
  known.set(patient, former === undefined || former === eye ? eye : '');
}

/** Patients whose eyes other files name. */
function onlySides(others: readonly RecognisedFile[]): OnlyEyes {
  const found: OnlyEyes = new Map();
  for (const other of others) {
    const eyeOf = strangeWords(other).length === 0 ? eyeAt(other) : undefined;
    for (let row = 0; eyeOf && row < other.file.rows; row++) {
      const [patient, side] = eyeOf(row)?.split('|') ?? [];
      note(found, patient, side);
    }
  }
  return found;
}

/** Patients and the code that this file has for their eye. */
function onlyCodes(of: RecognisedFile): OnlyEyes {
  const found: OnlyEyes = new Map();
  const patientOf = patientAt(of);
  const eye = placedAs(of, 'eye');
  const column = eye && columnOf(of.file, eye.index);
  for (let row = 0; patientOf && column && row < of.file.rows; row++) {
    note(found, patientOf(row), column.at(row).trim());
  }
  return found;
}

/** Patients of whom both files know one eye only: how often the first code stands for the right one, how often the left. */
function agreement(of: RecognisedFile, first: string, others: readonly RecognisedFile[]) {
  const sides = onlySides(others);
  const tally = { right: 0, left: 0 };
  for (const [patient, code] of onlyCodes(of)) {
    const side = sides.get(patient);
    if (side && code) tally[(side === 'right') === (code === first) ? 'right' : 'left']++;
  }
  return tally;
}

/** Two codes of which nothing says which eye they mean. */
function choiceOf(
  of: RecognisedFile,
  [first = '', second = '']: readonly string[],
  others: readonly RecognisedFile[],
): Choice {
  const fits = agreement(of, first, others);
  const n = fits.right + fits.left;
  const eye = placedAs(of, 'eye');
  const evidence = (side: 'right' | 'left'): string => (n === 0 ? '' : words.evidence.eyeCode(fits[side], n));
  return {
    id: `eye-code ${of.file.file}`,
    kind: 'eye-code',
    label: of.file.label,
    header: eye ? (of.file.header[eye.index] ?? '') : '',
    found: words.found.eyeCode(first, second),
    options: (['right', 'left'] as const).map((side) => ({ value: side, evidence: evidence(side) })),
    likelier: likelierOf(fits),
  };
}

/**
 * How the eyes of a file are written. Pairs such as D and S, or D and G, are known; of two codes that say nothing (1 and
 * 2) the other files tell, by patients of whom one eye only is known, or somebody must.
 *
 * @param others  the other files, of which those serve whose eyes are known
 */
export function eyesOf(of: RecognisedFile, others: readonly RecognisedFile[], answers: Answers): EyeReading {
  const strange = strangeWords(of);
  const nothing: EyeReading = { words: {}, unknown: strange.map(({ word }) => word.trim()), choice: undefined };
  if (strange.length === 0) return nothing;
  const pair = pairOf(of, strange);
  if (pair) {
    const declared = [...(pair.right ?? []), ...(pair.left ?? [])];
    return { words: pair, unknown: nothing.unknown.filter((word) => !declared.includes(word)), choice: undefined };
  }
  const all = placedAs(of, 'eye') ? of.profiles[placedAs(of, 'eye')?.index ?? -1]?.words.length : 0;
  const codes = strange.map(({ word }) => word.trim()).sort();
  if (codes.length !== 2 || all !== 2) return nothing;
  const choice = choiceOf(of, codes, others);
  const first = settled(choice, answers);
  const [a = '', b = ''] = codes;
  if (first === undefined) return { words: {}, unknown: codes, choice };
  return { words: first === 'right' ? { right: [a], left: [b] } : { right: [b], left: [a] }, unknown: [], choice };
}
