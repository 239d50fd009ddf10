import type { Grouping } from '../records/derived.js';
import { millionths } from '../units.js';
import { groupByBand, groupByNumber } from './grouping.js';

/** Widths of incisions where every one cannot have a group of its own, mm. *judgement* */
const widthBands = [2, 2.4, 2.8];
const mostWidths = 8;

/** Below this the meridian of a cornea is noise, dioptres. */
const lowCylinder = 0.5;

/** Targets below 1 D are told apart: their correction index exceeds 1 by chance alone. */
const smallTarget = 1;

function named(field: string, names: readonly string[], eyes: number, nameOf: (eye: number) => string | undefined) {
  const code = Int32Array.from({ length: eyes }, (_, eye) => names.indexOf(nameOf(eye) ?? '') + 1);
  return { field, names, code } satisfies Grouping;
}

/**
 * What kind of astigmatism a cornea has: with the rule from 60 to 120, against it below 30 and above 150, the rest
 * oblique; low below 0.50 D, whatever the meridian.
 *
 * @param cylinder  dioptres
 * @param meridian  steep, degrees in (0, 180]; NaN where there is none
 * @returns undefined where it is not known
 * @source settled rule of this project
 * @example cornealType(1, 90) // 'with the rule'
 */
export function cornealType(cylinder: number, meridian: number): (typeof cornealTypes)[number] | undefined {
  if (Number.isNaN(cylinder)) return undefined;
  if (millionths(cylinder) < millionths(lowCylinder)) return 'low';
  if (Number.isNaN(meridian)) return undefined;
  const at = millionths(meridian % 180);
  if (at >= millionths(60) && at <= millionths(120)) return 'with the rule';
  return at < millionths(30) || at > millionths(150) ? 'against the rule' : 'oblique';
}

const cornealTypes = ['with the rule', 'against the rule', 'oblique', 'low'] as const;

/** Sectors of incision meridians, 45° wide, by their middle. */
const sectors = ['180', '45', '90', '135'] as const;

/**
 * The 45° sector of an incision's meridian, by its middle; the edge at 22.5° belongs to the sector above it.
 *
 * @param position  of the incision, degrees 0 to 360
 * @example incisionSector(325) // '135': the meridian of 325 is 145
 */
export function incisionSector(position: number): (typeof sectors)[number] | undefined {
  if (Number.isNaN(position)) return undefined;
  return sectors[Math.floor(((((position + 22.5) % 180) + 180) % 180) / 45)];
}

function byWidth(widths: Float64Array): Grouping {
  const distinct = new Set(widths.filter((width) => !Number.isNaN(width)));
  const field = 'incision_width';
  return distinct.size <= mostWidths ? groupByNumber(field, widths) : groupByBand(field, widths, widthBands);
}

/** Columns of the eyes by name. */
type Columns = (name: string) => Float64Array;

/** A turn of the lens within 5°, or beyond; eyes without one belong to neither. */
const turns = ['[0,5]', '(5,-)'] as const;

/** The groups that measures of astigmatism are given for beside cohorts. */
export function astigmatismStrata(column: Columns): readonly Grouping[] {
  const [x, y] = [column('target_induced_x'), column('target_induced_y')];
  const eyes = x.length;
  const at = (name: string): ((eye: number) => number) => {
    const values = column(name);
    return (eye) => values[eye] as number;
  };
  const [cylinder, meridian] = [at('corneal_cylinder_magnitude_before'), at('steepAxis@before')];
  const [incision, lens, side, turn] = [
    at('incision_axis'),
    at('lens_cylinder'),
    at('laterality'),
    at('lens_misalignment'),
  ];
  const target = (eye: number): string | undefined => {
    const size = Math.hypot(x[eye] as number, y[eye] as number);
    if (Number.isNaN(size)) return undefined;
    return millionths(size) < millionths(smallTarget) ? '(-,1)' : '[1,-)';
  };
  const misaligned = (eye: number): string | undefined => {
    if (Number.isNaN(turn(eye))) return undefined;
    return millionths(Math.abs(turn(eye))) <= millionths(5) ? turns[0] : turns[1];
  };
  return [
    named('target_magnitude', ['(-,1)', '[1,-)'], eyes, target),
    named('corneal_type', cornealTypes, eyes, (eye) => cornealType(cylinder(eye), meridian(eye))),
    named('toric', ['yes', 'no'], eyes, (eye) => (lens(eye) > 0 ? 'yes' : 'no')),
    named('incision_sector', sectors, eyes, (eye) => incisionSector(incision(eye))),
    byWidth(column('incision_width')),
    named('eye', ['right', 'left'], eyes, (eye) => (side(eye) === 0 ? 'right' : 'left')),
    named('misalignment', turns, eyes, misaligned),
  ];
}
