import { describe, expect, it } from 'vitest';
import { axisOf } from '../../src/optics/axis.js';
import { doubleAngleX, doubleAngleY, vectorMagnitude } from '../../src/optics/double-angle.js';
import { formulaNamed, lensPosition } from '../../src/optics/formulas/index.js';
import { refractionOf } from '../../src/optics/formulas/thin-lens.js';
import {
  bestAxis,
  cylinderAtCornea,
  effectiveLensPosition,
  lensTurn,
  misalignmentX,
  misalignmentY,
  residualAtBestAxis,
  toricEffect,
} from '../../src/optics/toric-lens.js';
import { cornealVectorX, cornealVectorY } from '../../src/optics/vertex.js';
import { toricChecks } from './reference.js';

/** R 4.2.2 and Python by another method; axes to their ten printed digits. */
function expectCheck(id: string, value: number): void {
  const expected = toricChecks.get(id);
  if (expected === undefined) throw new Error(`${id} is not in toric-checks.csv`);
  expect(Math.abs(value - expected), id).toBeLessThan(id.endsWith('ax') ? 1e-7 : 1e-9);
}

const eye = { axialLength: 23.5, k1: 43, k2: 44, chamberDepth: 3.2 };
const formulas = [
  ['srkt', 'SRK/T', 118.9],
  ['hol', 'Holladay 1', 1.75],
  ['hofq', 'Hoffer Q', 5.5],
  ['haigis', 'Haigis', 0.95],
] as const;

describe('the label at the cornea, against toric-checks.csv', () => {
  it.each(formulas)('%s', (id, name, constant) => {
    const formula = formulaNamed(name);
    const { cornea, length } = formula.eye(eye);
    const position = lensPosition(formula, eye, constant);
    for (const [text, label] of [
      ['1.5', 1.5],
      ['3.0', 3],
      ['6.0', 6],
    ] as const) {
      const effect = toricEffect(20.5, label, length, position, cornea);
      expectCheck(`7.tc.${id}.${text}.cyl`, effect);
      expectCheck(`7.tc.${id}.${text}.ratio`, label / effect);
    }
  });

  it.each([
    ['short', 21, 45, 28.5],
    ['avg', 23.5, 43.5, 21],
    ['long', 26.5, 42.5, 13],
  ] as const)('%s eye: the position that gives the prediction is the formula’s own', (id, axialLength, k, power) => {
    const formula = formulaNamed('Holladay 1');
    const biometry = { axialLength, k1: k, k2: k, chamberDepth: Number.NaN };
    const own = lensPosition(formula, biometry, 1.75);
    const { cornea, length } = formula.eye(biometry);
    const predicted = refractionOf({ cornea, length, position: own }, power, 12);
    const position = effectiveLensPosition(axialLength, k, power, predicted, 12);
    expect(position).toBeCloseTo(own, 9);
    expectCheck(`7.hol3.${id}.cyl`, cylinderAtCornea(power, 3, axialLength, k, position));
  });

  it('has no position where power, length and prediction do not fit together', () => {
    expect(effectiveLensPosition(23.5, 43.5, 0, 0, 12)).toBeNaN();
    expect(effectiveLensPosition(23.5, 43.5, 21, 9, 12)).toBeNaN();
  });
});

describe('a lens off its axis', () => {
  it.each([1, 5, 10, 30, 45, 90])('%s° with equal cylinders, ideal 20', (turn) => {
    const [x, y] = [misalignmentX(2, 20, 20 + turn), misalignmentY(2, 20, 20 + turn)];
    expectCheck(`7.mis.${turn}.cyl`, vectorMagnitude(x, y));
    expectCheck(`7.mis.${turn}.ax`, axisOf(x, y));
  });

  it.each([
    ['a', 2, 90, 0.2, 180, 90, 90],
    ['b', 2, 90, 0.2, 180, 90, 97],
    ['c', 1.4, 172, 0.3, 90, 165, 165],
  ] as const)(
    'residual %s: cornea + incision − lens, and by way of the misalignment',
    (id, c, s, i, at, ideal, marks) => {
      const part = (of: typeof doubleAngleX, moved: typeof misalignmentX): number =>
        of(c, s) + of(i, at) - of(1.6, ideal) + moved(1.6, ideal, marks);
      const [x, y] = [part(doubleAngleX, misalignmentX), part(doubleAngleY, misalignmentY)];
      expectCheck(`7.res.${id}.cyl`, vectorMagnitude(x, y));
      expectCheck(`7.res.${id}.ax`, axisOf(x, y));
    },
  );

  it('turns counter-clockwise with a plus sign, over 180 as well', () => {
    expect([lensTurn(175, 5), lensTurn(5, 175), lensTurn(90, 80)]).toEqual([10, -10, -10]);
  });
});

describe('the best axis, looking back', () => {
  it.each([
    ['a', 0.25, -1.25, 50, 1.6, 97],
    ['b', -0.5, -0.5, 10, 1.03, 175],
    ['c', 0, -0.75, 135, 2.05, 12],
  ] as const)('%s', (id, sphere, cylinder, axis, effect, marks) => {
    const [x, y] = [cornealVectorX(sphere, cylinder, axis, 12), cornealVectorY(sphere, cylinder, axis, 12)];
    const best = bestAxis(x, y, effect, marks);
    expectCheck(`7.ideal.${id}.ideal`, best);
    expectCheck(`7.ideal.${id}.rotate`, lensTurn(marks, best));
    expectCheck(`7.ideal.${id}.best_cyl`, residualAtBestAxis(x, y, effect, marks));
  });

  it('does not exist where nothing but the lens is left', () => {
    expect(bestAxis(-2, 0, 2, 180)).toBeNaN();
  });
});
