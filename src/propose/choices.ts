/** Doubts that change numbers: each is settled by an answer, by the data, or stays open. */
type ChoiceKind =
  | 'date-order'
  | 'eye-code'
  | 'notation'
  | 'acuity-scale'
  | 'blank-sphere'
  | 'blank-complication'
  | 'clock-view'
  | 'residual-form'
  | 'primary-formula'
  | 'operated';

interface Option {
  value: string;
  /** What is said for it: a sentence from the files themselves; '' nothing. */
  evidence: string;
}

export interface Choice {
  /** The same in every round of questions. */
  id: string;
  kind: ChoiceKind;
  /** The name of the file that screens may show; '' for the audit as a whole. */
  label: string;
  header: string;
  /** What was found that is in doubt. */
  found: string;
  options: readonly Option[];
  /** What the data say; undefined where nothing tells. */
  likelier: string | undefined;
}

/** Answers by the choice's id; the empty text leaves a choice open. */
export type Answers = ReadonlyMap<string, string>;

/** What holds of a choice: the answer, else what the data say; undefined where it stays open. */
export function settled({ id, likelier }: Choice, answers: Answers): string | undefined {
  const answer = answers.get(id);
  return answer === undefined ? likelier : answer || undefined;
}

/** Least number of eyes, patients or dates that say anything, and share of them that must agree. */
const speaks = { least: 10, share: 0.75 } as const;

/**
 * The likelier of two readings, by how many cases fit the one and how many the other.
 *
 * @returns undefined where there are too few cases, or they do not agree
 * @source judgement
 * @example likelierOf({ plus: 3, minus: 41 }) // 'minus'
 */
export function likelierOf(fits: Readonly<Record<string, number>>): string | undefined {
  const total = Object.values(fits).reduce((sum, n) => sum + n, 0);
  if (total < speaks.least) return undefined;
  return Object.entries(fits).find(([, n]) => n >= speaks.share * total)?.[0];
}
