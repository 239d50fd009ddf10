// Rules of thumb that every cataract surgeon knows: common practice, no source.
import { expect, it } from 'vitest';
import { vectorMagnitude } from '../../src/optics/double-angle.js';
import { formulaNamed, lensPosition } from '../../src/optics/formulas/index.js';
import { cylinderAtCornea, misalignmentX, misalignmentY } from '../../src/optics/toric-lens.js';
import { shareInterval } from '../../src/statistics/share.js';
import { single } from '../statistics/made-up-eyes.js';

const average = { axialLength: 23.5, k1: 43, k2: 44, chamberDepth: 3.2 };

/** What 1.50 D on the label of a 20.5 D lens are worth at the cornea of an average eye. */
function worth(): number {
  const holladay = formulaNamed('Holladay 1');
  return cylinderAtCornea(20.5, 1.5, 23.5, 43.5, lensPosition(holladay, average, 1.75));
}

// Common practice, no source.
it('a toric lens of about 20.5 D with 1.50 D of cylinder is worth close to 1.0 D at the cornea', () => {
  expect(Math.abs(worth() - 1)).toBeLessThan(0.05);
});

const left = (turn: number): number =>
  vectorMagnitude(misalignmentX(1, 90, 90 + turn), misalignmentY(1, 90, 90 + turn));

// Common practice, no source: the chord of 2 sin(angle), 0.347 and 1.
it.each([-1, 1])('10° off axis a lens loses about a third of its effect, at 30° all of it (sense %d)', (sense) => {
  expect(Math.abs(left(sense * 10) - 1 / 3)).toBeLessThan(0.02);
  expect(left(sense * 30)).toBeCloseTo(1, 12);
});

// Common practice, no source.
it('a corneal cylinder of 1.7 D corrected by such a lens leaves about 0.7 D before any effect of the incision', () => {
  expect(Math.abs(1.7 - worth() - 0.7)).toBeLessThan(0.05);
});

// Common practice, no source: 1 − 0.025^(1/12) = 0.2646.
it('12 of 12 complete capsulotomies of 12 patients still allow a failure rate of 26.5 %', () => {
  const { low = Number.NaN } = shareInterval(new Uint8Array(12).fill(1), single(12), 0.95, { method: 'exact' });
  expect(100 * (1 - low)).toBeCloseTo(26.5, 1);
});
