/**
 * What a header can name: our fields by their names, and a few quantities of the trade that audit.yaml has no field for
 * but that must not be taken for one.
 */
export type Term = string;

/** Terms that are no fields, and what becomes of them. */
export const otherTerms = {
  /** Axis of the flat meridian: `k_flat` has none of its own, so that both meridians become k1 and k2. */
  k_flat_axis: 'turned into k1_axis',
  /** An acuity of which the header does not say whether it is corrected. */
  acuity: 'corrected or not',
  remarks: 'free text',
  row_number: 'a number of the row',
} as const;

/** Names of complications that codes are sorted under. */
type ComplicationName =
  | 'posterior_capsule_rupture'
  | 'vitreous_loss'
  | 'anterior_tear'
  | 'zonule_dehiscence'
  | 'iris_prolapse'
  | 'dropped_nucleus';

/**
 * The words of the trade in one language. Lists are texts parted by commas, the surest word first; case, accents,
 * blanks and punctuation do not matter. To add a language, write such a file and name it in `index.ts`.
 */
export interface Vocabulary {
  language: string;
  /** Term → words and abbreviations that head its column. */
  headers: Readonly<Record<Term, string>>;
  /** Words of a header that say nothing about what it is. */
  fillers: string;
  /** Words of a header, or of a visit column, that say when. */
  visits: {
    before: string;
    after: string;
    units: { day: string; week: string; month: string; year: string };
  };
  /** Words of a header that say which eye, where both eyes stand in one row. */
  sides: { right: string; left: string };
  /** Cells that mean an eye beside the words that need no declaration; they count only as a pair. */
  eyeCodes: { right: string; left: string };
  /** Words of a header that say what a bare acuity number counts. */
  scales: { decimal: string; logmar: string; letters: string };
  /** Words of a header that say how cylinders are written. */
  notations: { plus: string; minus: string };
  /** Cells of the technique column. */
  techniques: Readonly<Record<'manual' | 'laser-assisted', string>>;
  /** Cells of the complication column. */
  complications: Readonly<Record<ComplicationName, string>>;
  /** Cells that mean "no value" beside the built-in ones. */
  missing: string;
}
