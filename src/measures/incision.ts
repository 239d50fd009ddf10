import {
  keratometricVectorX,
  keratometricVectorY,
  meridionalSteepening,
  meridionalTorque,
} from '../optics/keratometry.js';
import type { Measure } from '../records/measure.js';
import { type AboutVector, secondWorking, vectorPair } from './vector-pair.js';

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

/** Power of the astigmatism at one examination, first component; none of its own where the powers are equal. */
function cornealWorking(at: 'outcome' | 'before_same_device', axis: number): string {
  const power = `({steep@${at}} − {flat@${at}})`;
  return Number.isNaN(axis) ? `0 × ${power}` : `${power} × cos(2 × {steepAxis@${at}}°)`;
}

const afterWorking = (_flat: number, _steep: number, axis: number): string => cornealWorking('outcome', axis);
const changeWorking = (...[, , axis, , , axisBefore]: number[]): string =>
  `${cornealWorking('outcome', axis as number)} − ${cornealWorking('before_same_device', axisBefore as number)}`;

const turned = '2 × ({@induced_corneal_cylinder}° − {incision_axis}°)';
const alongWorking = `{|induced_corneal_cylinder|} × cos(${turned})`;
const torqueWorking = `{|induced_corneal_cylinder|} × sin(${turned})`;

function polarValue(name: string, formula: string, worked: string, of: Measure['of']): Measure {
  return { ...about, name, kind: 'continuous', inputs: change, formula, worked, source: polar, strata, of };
}

/** What surgery did to the cornea: in the fixed frame for right and left eyes apart, pooled along the incision only. */
export const incisionMeasures: readonly Measure[] = [
  ...vectorPair(
    'corneal_cylinder_after',
    about,
    { inputs: after, formula: 'C cos 2a, a = steep meridian', worked: afterWorking, of: keratometricVectorX },
    {
      inputs: after,
      formula: 'C sin 2a, a = steep meridian',
      worked: secondWorking(afterWorking),
      of: keratometricVectorY,
    },
  ),
  ...vectorPair(
    'induced_corneal_cylinder',
    { ...about, strata: ['eye'], unpooled: true },
    {
      inputs: [...after, ...before],
      formula: 'corneal cylinder after − before; same device',
      worked: changeWorking,
      of: changed(keratometricVectorX),
    },
    {
      inputs: [...after, ...before],
      formula: 'corneal cylinder after − before; same device',
      worked: secondWorking(changeWorking),
      of: changed(keratometricVectorY),
    },
  ),
  polarValue('induced_along_incision', alongFormula, alongWorking, meridionalSteepening),
  { ...polarValue('induced_torque', torqueFormula, torqueWorking, meridionalTorque), secondary: true },
  ...vectorPair(
    'induced_in_incision_frame',
    // Beside the meridians of eyes a direction from the incision would mislead; the part along it is told.
    { ...about, better: 'nearer zero', secondary: true, strata, source: polar },
    { inputs: change, formula: alongFormula, worked: alongWorking, of: meridionalSteepening },
    { inputs: change, formula: torqueFormula, worked: torqueWorking, of: meridionalTorque },
  ),
];
