import { parseCodes } from '../../intake/codes.js';
import { propose as words } from '../../words/en/propose.js';
import type { Choice } from '../choices.js';
import { columnOf } from '../exported.js';
import { numbersAt, placedAs } from '../eye-rows.js';
import type { Placed, RecognisedFile } from '../placed.js';

/** Rows from which blanks beside a value are a habit, and not a slip. */
const habit = 3;

interface Half {
  /** Rows with the one blank and the other given. */
  blank: number;
  /** Rows of them without an axis, too. */
  withoutAxis: number;
}

function blankBeside(of: RecognisedFile, blank: Placed, given: Placed): Half {
  const axis = placedAs(of, 'axis', blank);
  const [a, b] = [numbersAt(of.file, blank.index), numbersAt(of.file, given.index)];
  const degrees = axis ? numbersAt(of.file, axis.index) : () => Number.NaN;
  const column = columnOf(of.file, blank.index);
  const half = { blank: 0, withoutAxis: 0 };
  for (let row = 0; row < of.file.rows; row++) {
    if (!Number.isNaN(a(row)) || Number.isNaN(b(row)) || !of.file.isMissing(column.at(row))) continue;
    half.blank++;
    if (Number.isNaN(degrees(row))) half.withoutAxis++;
  }
  return half;
}

/** Cells that write zero, and cells that write a quarter more or less: zero is not rarer than its neighbours. */
function zerosOf({ profiles }: RecognisedFile, { index }: Placed): { zeros: number; neighbours: number } {
  const count = (test: (value: number) => boolean): number =>
    (profiles[index]?.words ?? []).reduce((sum, { value, cells }) => sum + (test(value) ? cells : 0), 0);
  return { zeros: count((value) => value === 0), neighbours: count((value) => Math.abs(value) === 0.25) };
}

function choice(
  of: RecognisedFile,
  { index, context }: Placed,
  kind: 'blank-sphere' | 'blank-complication',
  found: string,
  evidence: string,
  zero: string,
  tells: boolean,
): Choice {
  return {
    id: `${kind} ${of.file.file} ${index} ${context.visit?.name ?? ''}`,
    kind,
    label: of.file.label,
    header: of.file.header[index] ?? '',
    found,
    options: [
      { value: zero, evidence },
      { value: 'missing', evidence: '' },
    ],
    likelier: tells ? zero : undefined,
  };
}

/** Blank spheres beside a cylinder, and blank cylinders beside a sphere: zero, or not recorded? */
export function blankPowerChoices(of: RecognisedFile): readonly { column: Placed; choice: Choice }[] {
  const spheres = of.placed.filter(({ term }) => term === 'sphere');
  return spheres.flatMap((sphere) => {
    const cylinder = placedAs(of, 'cylinder', sphere);
    if (!cylinder) return [];
    const [ofSphere, ofCylinder] = [blankBeside(of, sphere, cylinder), blankBeside(of, cylinder, sphere)];
    const { zeros, neighbours } = zerosOf(of, sphere);
    const found: { column: Placed; choice: Choice }[] = [];
    if (ofSphere.blank >= habit) {
      const evidence = words.evidence.zeros(zeros, neighbours);
      const about = words.found.blankSphere(ofSphere.blank, of.file.rows);
      found.push({
        column: sphere,
        choice: choice(of, sphere, 'blank-sphere', about, evidence, '0', 4 * zeros < neighbours),
      });
    }
    if (ofCylinder.blank >= habit) {
      const evidence = words.evidence.withoutAxis(ofCylinder.withoutAxis, ofCylinder.blank);
      const about = words.found.blankCylinder(ofCylinder.blank, of.file.rows);
      const tells = ofCylinder.withoutAxis >= 0.9 * ofCylinder.blank;
      found.push({ column: cylinder, choice: choice(of, cylinder, 'blank-sphere', about, evidence, '0', tells) });
    }
    return found;
  });
}

/** A complication column that never says "none": is a blank cell an operation without one? */
export function blankComplicationChoice(of: RecognisedFile, column: Placed): Choice | undefined {
  const profile = of.profiles[column.index];
  if (!profile || profile.blank === 0) return undefined;
  const saysNone = profile.words.some(({ word }) => parseCodes(word).length === 0);
  if (saysNone || profile.blank < profile.filled) return undefined;
  const about = words.found.blankComplication(profile.blank, of.file.rows);
  // A column without a single code may never have been filled in.
  const tells = profile.filled > 0 && profile.blank >= 4 * profile.filled;
  return choice(of, column, 'blank-complication', about, words.evidence.neverNone, 'none', tells);
}

/** Whether lenses without a cylinder have no axis either: then blank means that they are not toric. */
export function blankLensCylinders(of: RecognisedFile): number {
  const cylinder = placedAs(of, 'lens_cylinder');
  const axis = placedAs(of, 'lens_axis_intended');
  if (!cylinder || !axis) return 0;
  const [power, degrees] = [numbersAt(of.file, cylinder.index), numbersAt(of.file, axis.index)];
  let blank = 0;
  for (let row = 0; row < of.file.rows; row++) {
    if (!Number.isNaN(power(row))) continue;
    if (!Number.isNaN(degrees(row))) return 0;
    blank++;
  }
  return blank;
}
