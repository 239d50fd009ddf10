import { defaultLowVision } from '../acuity/low-vision.js';
import { parseAcuity } from '../intake/acuity.js';
import { parseClock } from '../intake/clock.js';
import { parseYesNo } from '../intake/codes.js';
import { splitDate } from '../intake/date.js';
import { parseLaterality } from '../intake/laterality.js';
import { isShortDate, leftoverOf } from '../intake/leftover.js';
import type { DecimalMark } from '../intake/number.js';
import { parseRefraction } from '../intake/refraction-cell.js';
import { type Field, fieldNamed } from '../plan/fields.js';
import { eyeCode } from './eye-codes.js';
import { numberIn, type Profile, type ProfileWord } from './profile.js';
import type { Term } from './vocabulary/vocabulary.js';

/** Share of the cells that may be a value of a term. */
export type Look = (profile: Profile, decimal: DecimalMark) => number;

export const isWhole = ({ value }: ProfileWord): boolean => Number.isInteger(value);
export const isDate = ({ word }: ProfileWord): boolean => splitDate(word) !== undefined;
const isNumber = ({ value }: ProfileWord): boolean => !Number.isNaN(value);

const between =
  (low: number, high: number): Look =>
  ({ within }) =>
    within(low, high);
const whole =
  (low: number, high: number): Look =>
  ({ share }) =>
    share((one) => isWhole(one) && one.value >= low && one.value <= high);

/** Corneal powers in dioptres or radii in millimetres; a column is of one unit. */
const corneal: Look = ({ within }) => Math.max(within(30, 60), within(5.6, 11.3));

/** Short words, few of them, and no measurements. @param most  distinct words */
const names =
  (most: number): Look =>
  ({ share, words, filled }) =>
    words.length > Math.max(most, filled / 4) ? 0 : share((one) => isName(one));

function isName(one: ProfileWord): boolean {
  return one.word.trim().length <= 40 && !isDate(one) && (!isNumber(one) || isWhole(one));
}

/** Short words, one or more for each person: codes, never dates or measurements. */
const codes: Look = ({ share }) => share((one) => one.word.trim().length <= 24 && isName(one));

/** Whether a cell holds more of a refraction than a sphere. */
export function isRefractionCell(word: string, decimal: DecimalMark): boolean {
  const refraction = parseRefraction(word, decimal);
  return refraction !== undefined && !Number.isNaN(refraction.cylinder);
}

const scales = ['decimal', 'logmar', 'letters'] as const;

/** Whether a cell may be an acuity of some scale that charts have. */
export function isAcuity(word: string, decimal: DecimalMark): boolean {
  return scales.some((numbers) => {
    const acuity = parseAcuity(word, { decimal, numbers, lowVision: defaultLowVision });
    return !('reason' in acuity) && acuity.logMAR >= -0.4 && acuity.logMAR <= 3.01;
  });
}

const acuity: Look = ({ share }, decimal) => share(({ word }) => isAcuity(word, decimal));

const special: Readonly<Record<Term, Look>> = {
  patient: codes,
  eye: ({ share, words }) => {
    // Two or three short codes under such a header mean eyes, whichever they are.
    if (words.length <= 3 && words.every(({ word }) => word.trim().length <= 3)) return 1;
    return share(({ word }) => parseLaterality(word) !== undefined || eyeCode(word) !== undefined);
  },
  surgery_year: whole(1990, 2150),
  surgery_order: whole(1, 1e6),
  age: between(0, 115),
  sex: ({ share, words }) => (words.length > 6 ? 0 : share(({ word }) => word.trim().length <= 10)),
  incision_axis: ({ within, share }) =>
    Math.max(
      within(0, 360),
      share(({ word }) => parseClock(word) !== undefined),
    ),
  incision_width: between(0.5, 12),
  paracentesis_axis: between(0, 360),
  lens_constant: between(-5, 130),
  constant: between(-5, 130),
  lens_power: between(-15, 60),
  lens_cylinder: ({ within }) => Math.max(within(0, 12), within(-12, 0)),
  target_se: between(-12, 5),
  predicted_se: between(-15, 8),
  predicted_cylinder: between(-6, 6),
  axial_length: between(18, 38),
  acd: between(1.5, 6),
  lens_thickness: between(2, 7),
  white_to_white: between(8, 15),
  surgeon_grade: names(40),
  nucleus_grade: names(40),
  days: whole(-3700, 36_500),
  visit: names(40),
  refraction: ({ share }, decimal) => share(({ word }) => isRefractionCell(word, decimal)),
  sphere: between(-30, 30),
  cylinder: between(-12, 12),
  vertex_mm: between(5, 20),
  lane_m: between(0.3, 10),
  k_mean: corneal,
  k_cylinder: between(-15, 15),
  total_corneal_cylinder: between(-15, 15),
  posterior_corneal_cylinder: between(-3, 3),
  ecd: between(200, 5000),
  cct: between(300, 900),
  iop: between(0, 80),
  k_flat_axis: between(0, 180),
  supplied_se: between(-30, 30),
  acuity,
  remarks: () => 1,
  row_number: whole(0, 1e9),
  effective_energy: ({ share }) => share(({ value }) => value >= 0),
  phaco_time_s: ({ share }) => share(({ value }) => value >= 0),
  laser_time_s: ({ share }) => share(({ value }) => value >= 0),
  case_time_min: between(0, 600),
};

/** What cells of a field look like by the way they are read, where nothing more is known. */
function byType({ type, unit }: Field): Look {
  switch (type) {
    case 'date':
      return ({ share }) => share(isDate);
    case 'acuity':
      return acuity;
    case 'yes-no':
      return ({ share }) => share(({ word }) => parseYesNo(word) !== undefined);
    case 'codes':
      return ({ share }) => share((one) => !isDate(one) && (!isNumber(one) || isWhole(one)) && one.word.length <= 60);
    case 'number':
      return unit === 'deg' ? between(0, 180) : unit === 'D' ? corneal : ({ share }) => share(isNumber);
    default:
      return names(60);
  }
}

const marks = ['point', 'comma'] as const;

/** Whether a cell is what a spreadsheet, or another decimal mark, has left of a value. */
function isSpoiled({ type }: Field, { word, value }: ProfileWord): boolean {
  if (type === 'date') return leftoverOf(word, 'date') === 'serial';
  if (type === 'acuity' || type === 'refraction') return isShortDate(word);
  if (type !== 'number' || !Number.isNaN(value)) return false;
  return isShortDate(word) || marks.some((decimal) => !Number.isNaN(numberIn(word, decimal)));
}

/**
 * Share of the filled cells that may be values of a term; 1 where a column has no filled cell to speak against it.
 *
 * What was a value counts too: a run then stops at it, or sets it aside, and says how to mend it. Left out of the plan
 * the column would be missing without a word.
 */
export function likeness(term: Term, profile: Profile, decimal: DecimalMark): number {
  if (profile.filled === 0) return 1;
  const field = fieldNamed(term);
  const look = special[term] ?? (field && byType(field));
  if (!look) throw new RangeError(`likeness: nothing is known of the cells of "${term}"`);
  const spoiled = field ? profile.share((one) => isSpoiled(field, one)) : 0;
  return Math.min(1, look(profile, decimal) + spoiled);
}

/** Share of cells that must look like a term: below the first there is no match, from the second no doubt. */
export const likeEnough = { least: 0.5, surely: 0.9 } as const;
