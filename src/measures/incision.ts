import {
  keratometricVectorX,
  keratometricVectorY,
  meridionalSteepening,
  meridionalTorque,
} from '../optics/keratometry.js';
import type { Measure } from '../records/measure.js';
import { type AboutVector, vectorPair } from './vector-pair.js';

const definition = 'definition; same device and index before and after';
const polar = 'Naeser 1997, J Cataract Refract Surg 23:76-81 (polar value)';

const about: AboutVector = { family: 'cornea', unit: 'D', plane: 'cornea', groupings: 'cohorts', source: definition };
const after = ['flat@outcome', 'steep@outcome', 'steepAxis@outcome'] as const;
const before = ['flat@before_same_device', 'steep@before_same_device', 'steepAxis@before_same_device'] as const;
const change = ['induced_corneal_cylinder_x', 'induced_corneal_cylinder_y', 'incision_axis'] as const;
const strata = ['incision_sector', 'incision_width'] as const;

type Component = typeof keratometricVectorX;

/** Keratometry after less keratometry before of the same device. */
const changed =
  (component: Component) =>
  (flat: number, steep: number, axis: number, flatBefore: number, steepBefore: number, axisBefore: number): number =>
    component(flat, steep, axis) - component(flatBefore, steepBefore, axisBefore);

const alongFormula = 'M cos 2(a − incision); − flattened along the incision';
const torqueFormula = 'M sin 2(a − incision); + counter-clockwise';

function polarValue(name: string, formula: string, of: Measure['of']): Measure {
  return { ...about, name, kind: 'continuous', inputs: change, formula, source: polar, strata, of };
}

/** What surgery did to the cornea: in the fixed frame for right and left eyes apart, pooled along the incision only. */
export const incisionMeasures: readonly Measure[] = [
  ...vectorPair(
    'corneal_cylinder_after',
    about,
    { inputs: after, formula: 'C cos 2a, a = steep meridian', of: keratometricVectorX },
    { inputs: after, formula: 'C sin 2a, a = steep meridian', of: keratometricVectorY },
  ),
  ...vectorPair(
    'induced_corneal_cylinder',
    { ...about, strata: ['eye'], unpooled: true },
    {
      inputs: [...after, ...before],
      formula: 'corneal cylinder after − before, x; same device',
      of: changed(keratometricVectorX),
    },
    {
      inputs: [...after, ...before],
      formula: 'corneal cylinder after − before, y; same device',
      of: changed(keratometricVectorY),
    },
  ),
  polarValue('induced_along_incision', alongFormula, meridionalSteepening),
  { ...polarValue('induced_torque', torqueFormula, meridionalTorque), secondary: true },
  ...vectorPair(
    'induced_in_incision_frame',
    // Beside the meridians of eyes a direction from the incision would mislead; the part along it is told.
    { ...about, better: 'nearer zero', secondary: true, strata, source: polar },
    { inputs: change, formula: alongFormula, of: meridionalSteepening },
    { inputs: change, formula: torqueFormula, of: meridionalTorque },
  ),
];
