import { describe, expect, it } from 'vitest';
import {
  decimalOfLogMAR,
  denominatorOfLogMAR,
  lettersOfLogMAR,
  logMAROfDecimal,
  logMAROfFraction,
  logMAROfLetters,
} from '../../src/acuity/log-mar.js';
import { clockPosition, clockText } from '../../src/intake/clock.js';
import { axisOf } from '../../src/optics/axis.js';
import { doubleAngleX, doubleAngleY, vectorMagnitude } from '../../src/optics/double-angle.js';
import {
  cornealRadius,
  keratometricPower,
  keratometricVectorX,
  keratometricVectorY,
  meridionalSteepening,
  meridionalTorque,
  powerAlongMeridian,
  powerOfMeanRadius,
  reindexedPower,
  steepMeridian,
} from '../../src/optics/keratometry.js';
import { sphereAtInfinity } from '../../src/optics/lane.js';
import { fromPowerVector, powerVector } from '../../src/optics/power-vector.js';
import { sphericalEquivalent } from '../../src/optics/spherical-equivalent.js';
import { type Spherocylinder, toMinusCylinder, toPlusCylinder, transpose } from '../../src/optics/transposition.js';
import {
  angleOfError,
  correctionIndex,
  flatteningEffect,
  flatteningIndex,
  indexOfSuccess,
  magnitudeOfError,
  torque,
} from '../../src/optics/vector-analysis.js';
import {
  cornealCylinder,
  cornealEquivalent,
  cornealPlanePower,
  revertexedPower,
  spectaclePlanePower,
} from '../../src/optics/vertex.js';
import { opticsChecks } from './reference.js';

/**
 * Every row of optics-checks.csv that belongs to this folder, computed by the project's functions under the same id.
 * A row without a computation fails.
 */
const computed = new Map<string, number>();

function put(id: string, values: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(values)) computed.set(name === '' ? id : `${id}.${name}`, value);
}

function lens(id: string, { sphere, cylinder, axis }: Spherocylinder): void {
  put(id, { s: sphere, c: cylinder, a: axis });
}

// Section 1: refraction algebra.
const refractions: Readonly<Record<string, Spherocylinder>> = {
  a: { sphere: -2.25, cylinder: -1.5, axis: 20 },
  b: { sphere: 0.5, cylinder: 1.25, axis: 175 },
  c: { sphere: 0, cylinder: -0.75, axis: 180 },
  d: { sphere: -8, cylinder: -2.5, axis: 30 },
  e: { sphere: 11, cylinder: -1.75, axis: 170 },
  f: { sphere: 5, cylinder: 2, axis: 95 },
  g: { sphere: -0.25, cylinder: -0.5, axis: 90 },
};
for (const [name, written] of Object.entries(refractions)) {
  lens(`1.tr.${name}`, transpose(written));
  lens(`1.minus.${name}`, toMinusCylinder(written));
  lens(`1.plus.${name}`, toPlusCylinder(written));
  const { m, j0, j45 } = powerVector(written);
  put(`1.pv.${name}`, { M: m, J0: j0, J45: j45 });
  put('1.se', { [name]: sphericalEquivalent(written.sphere, written.cylinder) });
  put(`1.xy.${name}`, {
    x: doubleAngleX(written.cylinder, written.axis),
    y: doubleAngleY(written.cylinder, written.axis),
  });
}
put('1.se', { h: sphericalEquivalent(-1, 0) });
const [first, second] = [
  powerVector({ sphere: 1, cylinder: 1, axis: 30 }),
  powerVector({ sphere: 0, cylinder: 2, axis: 75 }),
];
lens(
  '1.sum',
  toPlusCylinder(fromPowerVector({ m: first.m + second.m, j0: first.j0 + second.j0, j45: first.j45 + second.j45 })),
);

function atCornea({ sphere, cylinder, axis }: Spherocylinder, vertex: number): Spherocylinder {
  return { sphere: cornealPlanePower(sphere, vertex), cylinder: cornealCylinder(sphere, cylinder, vertex), axis };
}
const { d, e, f } = refractions as Required<typeof refractions>;
if (!d || !e || !f) throw new Error('refractions d, e, f');
lens('1.vx.d12', atCornea(d, 12));
lens('1.vx.e14', atCornea(e, 14));
lens('1.vx.f13', atCornea(f, 13));
const restated = revertexedPower(-8, 14, 12);
lens('1.vx.rev', { sphere: restated, cylinder: revertexedPower(-10.5, 14, 12) - restated, axis: 30 });
const there = atCornea(d, 12);
const back = spectaclePlanePower(there.sphere, 12);
lens('1.vx.back', { sphere: back, cylinder: spectaclePlanePower(there.sphere + there.cylinder, 12) - back, axis: 30 });
put('1.vx', { seA: cornealPlanePower(-9.25, 12), seB: cornealEquivalent(-8, -2.5, 12) });
put('1.lane', { 4: sphereAtInfinity(0.25, 4), 6: sphereAtInfinity(-0.5, 6), '20ft': sphereAtInfinity(0, 6.096) });

// Section 2: keratometry.
for (const [text, index] of Object.entries({
  '1.3375': 1.3375,
  '1.3360': 1.336,
  '1.3333': 4 / 3,
  '1.3330': 1.333,
  '1.3320': 1.332,
  '1.3315': 1.3315,
  '1.3760': 1.376,
})) {
  put('2.k75', { [text]: keratometricPower(7.5, index) });
}
put('2', {
  k780: keratometricPower(7.8),
  r4350: cornealRadius(43.5),
  re: reindexedPower(44, 1.3375, 1.3315),
  arith: (42 + 46) / 2,
  harm: powerOfMeanRadius(42, 46),
  krbar: keratometricPower((cornealRadius(42) + cornealRadius(46)) / 2),
});

interface Cornea {
  flat: number;
  steep: number;
  axis: number;
}

function cornea(k1: number, a1: number, k2: number, a2: number): Cornea {
  return { flat: Math.min(k1, k2), steep: Math.max(k1, k2), axis: steepMeridian(k1, a1, k2, a2) };
}

function change(before: Cornea, after: Cornea): readonly [x: number, y: number] {
  const [x, y] = [keratometricVectorX, keratometricVectorY].map(
    (component) => component(after.flat, after.steep, after.axis) - component(before.flat, before.steep, before.axis),
  );
  return [x as number, y as number];
}

for (const [id, readings] of [
  ['2.ca', cornea(44.5, 92, 43.25, 2)],
  ['2.cb', cornea(43.25, 2, 44.5, 92)],
] as const) {
  const { flat, steep, axis } = readings;
  put(id, { flat, steep, steep_axis: axis, mag: steep - flat, mean: (flat + steep) / 2 });
}
put('2.ca.xy', { x: keratometricVectorX(43.25, 44.5, 92), y: keratometricVectorY(43.25, 44.5, 92) });

function induction(id: string, before: Cornea, after: Cornea, meridians: readonly number[]): void {
  const [x, y] = change(before, after);
  put(`${id}.xy`, { x, y });
  put(id, { mag: vectorMagnitude(x, y), axis: axisOf(x, y) });
  for (const at of meridians) {
    put(`${id}.at${at}`, { steepening: meridionalSteepening(x, y, at), torque: meridionalTorque(x, y, at) });
  }
}
const before1 = cornea(43.25, 180, 44.5, 90);
const after1 = cornea(43.5, 5, 44.1, 95);
induction('2.sia1', before1, after1, [100, 90]);
induction('2.sia2', cornea(42, 75, 43.1, 165), cornea(41.85, 78, 43.3, 168), [0]);
induction('2.sia3', cornea(44, Number.NaN, 44, Number.NaN), cornea(43.7, 145, 44.2, 55), [145]);
put('2.mer', Object.fromEntries([30, 92, 47].map((at) => [at, powerAlongMeridian(43.25, 44.5, 92, at)])));
const along = ({ flat, steep, axis }: Cornea) => powerAlongMeridian(flat, steep, axis, 100);
put('2', { dF100: along(after1) - along(before1) });

// Section 4: vector analysis.
const treatments: Readonly<Record<string, readonly (readonly [number, number])[]>> = {
  A: [
    [2, 90],
    [0, 180],
    [0.5, 70],
  ],
  B: [
    [1.75, 80],
    [0.25, 90],
    [0.6, 120],
  ],
  C: [
    [1.5, 170],
    [0, 180],
    [0.75, 175],
  ],
  O: [
    [1.2, 15],
    [0, 180],
    [0.9, 110],
  ],
  Z: [
    [0.5, 45],
    [0.5, 45],
    [0.3, 20],
  ],
};
for (const [name, cylinders] of Object.entries(treatments)) {
  const [before, target, after] = cylinders.map(
    ([size, axis]) => [doubleAngleX(size, axis), doubleAngleY(size, axis)] as const,
  );
  if (!before || !target || !after) throw new Error('three cylinders');
  const tia = [target[0] - before[0], target[1] - before[1]] as const;
  const sia = [after[0] - before[0], after[1] - before[1]] as const;
  const dv = [tia[0] - sia[0], tia[1] - sia[1]] as const;
  put(`4.${name}`, {
    TIA: vectorMagnitude(...tia),
    TIA_ax: axisOf(...tia),
    SIA: vectorMagnitude(...sia),
    SIA_ax: axisOf(...sia),
    DV: vectorMagnitude(...dv),
    DV_ax: axisOf(...dv),
    ME: magnitudeOfError(...tia, ...sia),
    AE: angleOfError(...tia, ...sia),
    CI: correctionIndex(...tia, ...sia),
    CA: 1 / correctionIndex(...tia, ...sia),
    IOS: indexOfSuccess(...tia, ...sia),
    FE: flatteningEffect(...tia, ...sia),
    FI: flatteningIndex(...tia, ...sia),
    torque: torque(...tia, ...sia),
  });
}

// Section 8: clock hours, as minutes on the dial.
function minutes(text: string): number {
  const [hours = '', rest = ''] = text.split(':');
  return (Number(hours) % 12) * 60 + Number(rest);
}
for (const position of [0, 30, 45, 90, 145, 180, 200, 270, 325]) {
  put(`8.${position}`, {
    exam: minutes(clockText(position, 'facing', 'right')),
    sup: minutes(clockText(position, 'surgeon-superior', 'left')),
    tOD: minutes(clockText(position, 'surgeon-temporal', 'right')),
    tOS: minutes(clockText(position, 'surgeon-temporal', 'left')),
  });
}
put('8.inv', {
  a: clockPosition(10 + 10 / 60, 'facing', 'right'),
  b: clockPosition(4 + 10 / 60, 'surgeon-superior', 'left'),
  c: clockPosition(9, 'surgeon-temporal', 'right'),
  d: clockPosition(6, 'surgeon-temporal', 'left'),
});

// Section 9: acuity.
for (const decimal of [1, 0.5, 0.8, 0.1, 0.014, 0.005, 1.25])
  put('9.lm', { [decimal.toFixed(3)]: logMAROfDecimal(decimal) });
put('9.2040', {
  lm: logMAROfFraction(20, 40),
  let: lettersOfLogMAR(logMAROfFraction(20, 40)),
  m: decimalOfLogMAR(logMAROfFraction(6, 12)),
});
put('9', { avg: denominatorOfLogMAR((logMAROfFraction(20, 20) + logMAROfFraction(20, 200)) / 2, 20) });
for (const letters of [85, 70, 100, 30]) put('9.let', { [`l${letters}`]: logMAROfLetters(letters) });

// The file prints ten decimals.
const rows = [...opticsChecks].filter(([id]) => !id.startsWith('3.'));

describe('optics-checks.csv (R 4.2.2 and Python, by different methods)', () => {
  it('holds the rows it should', () => {
    expect(rows.length).toBeGreaterThan(300);
  });

  it.each(rows)('%s', (id, expected) => {
    const value = computed.get(id);
    if (value === undefined) throw new Error(`${id} is not computed`);
    if (Number.isNaN(expected)) expect(value).toBeNaN();
    else expect(Math.abs(value - expected)).toBeLessThan(id.endsWith('_ax') || id.endsWith('axis') ? 1e-7 : 1e-9);
  });
});
