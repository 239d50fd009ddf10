import { expect, it } from 'vitest';
import { sphereAtInfinity } from '../../src/optics/lane.js';

// 1/6 = 0.1667, 1/4 = 0.25, 1/6.096 = 0.1640 dioptres: a chart at 6 m, 4 m, 20 feet.
it.each([
  [6, -0.1667],
  [4, -0.25],
  [6.096, -0.164],
])('finds plano at %d m to be %d D at infinity: the eye is slightly myopic', (lane, sphere) => {
  expect(sphereAtInfinity(0, lane)).toBeCloseTo(sphere, 4);
});

it('does not exist without a distance', () => {
  expect(sphereAtInfinity(0, 0)).toBeNaN();
  expect(sphereAtInfinity(0, Number.NaN)).toBeNaN();
});
