import { parseRefraction } from '../../intake/refraction-cell.js';
import { wrap90 } from '../../optics/axis.js';
import { propose as words } from '../../words/en/propose.js';
import { type Choice, likelierOf } from '../choices.js';
import { numbersAt, placedAs, refractionAt } from '../eye-rows.js';
import type { Placed, RecognisedFile } from '../placed.js';
import { aimsOf, corneasOf, toricEyes } from './corneas.js';
import type { SurveyedFile } from './surveyed.js';

/** Cylinders, corneal and refractive, below which an axis says little, D. */
const telling = 0.75;

type Fits = { minus: number; plus: number };

const signs = /^[\s]*[-+\u2212\u2010\u2011\u2013]/;

/** Whether no cylinder carries a sign, in a column of cylinders or of whole refractions. */
export function isUnsigned({ profiles, file }: RecognisedFile, { index, term }: Placed): boolean {
  const words = profiles[index]?.words ?? [];
  if (term === 'refraction') {
    const read = words.map(({ word }) => parseRefraction(word, file.decimal)).filter((one) => one && one.cylinder > 0);
    return read.length > 0 && read.every((one) => one?.cylinderSigned === false);
  }
  const nonZero = words.filter(({ value }) => !Number.isNaN(value) && value !== 0);
  return nonZero.length > 0 && nonZero.every(({ word }) => !signs.test(word));
}

/** Steep meridian against the written axis: it is the axis of a plus cylinder, and 90° from that of a minus cylinder. */
function byCornea(one: SurveyedFile, cylinder: Placed, files: readonly SurveyedFile[]): Fits {
  const fits = { minus: 0, plus: 0 };
  const eyeOf = one.eyeOf(cylinder.context.side);
  if (!eyeOf) return fits;
  const corneas = corneasOf(files);
  const toric = toricEyes(files);
  const written = refractionAt(one.of, cylinder);
  for (let row = 0; row < one.of.file.rows; row++) {
    const eye = eyeOf(row) ?? '';
    const cornea = corneas.get(eye);
    const tells = cornea && !toric.has(eye) && cornea.cylinder >= telling && written.cylinder(row) >= telling;
    if (!tells || Number.isNaN(written.axis(row))) continue;
    fits[Math.abs(wrap90(written.axis(row) - cornea.steep)) < 45 ? 'plus' : 'minus']++;
  }
  return fits;
}

/** The equivalent that a file gives beside sphere and cylinder, or the refraction aimed at: which sign comes nearer? */
function byEquivalent(one: SurveyedFile, cylinder: Placed, wanted: (row: number) => number | undefined): Fits {
  const fits = { minus: 0, plus: 0 };
  const { sphere: s, cylinder: c } = refractionAt(one.of, cylinder);
  for (let row = 0; row < one.of.file.rows; row++) {
    const goal = wanted(row);
    if (goal === undefined || Number.isNaN(goal) || !(c(row) >= telling) || Number.isNaN(s(row))) continue;
    const [plus, minus] = [Math.abs(s(row) + c(row) / 2 - goal), Math.abs(s(row) - c(row) / 2 - goal)];
    if (plus !== minus) fits[plus < minus ? 'plus' : 'minus']++;
  }
  return fits;
}

function bySuppliedEquivalent(one: SurveyedFile, cylinder: Placed): Fits {
  const supplied = placedAs(one.of, 'supplied_se', cylinder);
  return supplied ? byEquivalent(one, cylinder, numbersAt(one.of.file, supplied.index)) : { minus: 0, plus: 0 };
}

function byAim(one: SurveyedFile, cylinder: Placed, files: readonly SurveyedFile[]): Fits {
  const eyeOf = one.eyeOf(cylinder.context.side);
  const aims = aimsOf(files);
  return eyeOf ? byEquivalent(one, cylinder, (row) => aims.get(eyeOf(row) ?? '')) : { minus: 0, plus: 0 };
}

const sum = (all: readonly Fits[]): Fits => ({
  minus: all.reduce((total, { minus }) => total + minus, 0),
  plus: all.reduce((total, { plus }) => total + plus, 0),
});

/**
 * Whether cylinders without a sign are minus or plus, of all visits of one file together: the keratometer tells, else a
 * spherical equivalent beside them, else the refraction that was aimed at.
 */
export function notationChoice(
  one: SurveyedFile,
  cylinders: readonly Placed[],
  files: readonly SurveyedFile[],
): Choice {
  const kinds = [
    { fits: sum(cylinders.map((cylinder) => bySuppliedEquivalent(one, cylinder))), say: words.evidence.equivalent },
    { fits: sum(cylinders.map((cylinder) => byCornea(one, cylinder, files))), say: words.evidence.cornea },
    { fits: sum(cylinders.map((cylinder) => byAim(one, cylinder, files))), say: words.evidence.aim },
  ];
  const chosen =
    kinds.find(({ fits }) => likelierOf(fits) !== undefined) ?? kinds.find(({ fits }) => fits.minus + fits.plus > 0);
  const evidence = (sign: 'minus' | 'plus'): string =>
    chosen ? chosen.say(chosen.fits[sign], chosen.fits.minus + chosen.fits.plus) : '';
  const unsigned = cylinders.reduce((n, { index }) => n + (one.of.profiles[index]?.filled ?? 0), 0);
  return {
    id: `notation ${one.of.file.file}`,
    kind: 'notation',
    label: one.of.file.label,
    header: one.of.file.header[cylinders[0]?.index ?? -1] ?? '',
    found: words.found.notation(unsigned),
    options: (['minus', 'plus'] as const).map((sign) => ({ value: sign, evidence: evidence(sign) })),
    likelier: chosen && likelierOf(chosen.fits),
  };
}
