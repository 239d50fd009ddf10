import { integersOf } from '../columns/table.js';
import { sphericalEquivalent } from '../optics/spherical-equivalent.js';
import type { Dioptre } from '../units.js';
import type { RuleContext } from './rule.js';

/** Whether a file gives the sphere of a toric lens as its power. @param source  index into the raw tables */
function givesSphere({ raw, plan }: RuleContext, source: number): boolean {
  return plan.sources[raw[source]?.source ?? -1]?.lens_power_is === 'sphere';
}

/** The power that an eye holds where a cell of a file says so: its equivalent where the file gives spheres. */
export function heldPower(context: RuleContext, source: number): (eye: number, written: Dioptre) => Dioptre {
  if (!givesSphere(context, source)) return (_, written) => written;
  // As recorded: the equivalent was made before any rule judged the cylinder.
  const cylinder = context.tables.eyes.column('lens_cylinder') as { at(row: number): number } | undefined;
  return (eye, written) => sphericalEquivalent(written, cylinder?.at(eye) || 0);
}

/** Whether the power of an eye was made from the cylinder of its lens. */
export function madeFromCylinder(context: RuleContext): (eye: number) => boolean {
  const source = integersOf(context.tables.eyes, 'source');
  return (eye) => givesSphere(context, source[eye] as number);
}
