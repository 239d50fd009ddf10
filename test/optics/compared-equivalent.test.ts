import { describe, expect, it } from 'vitest';
import {
  comparedEquivalent,
  isRestated,
  otherLaneShift,
  otherVertexShift,
} from '../../src/optics/compared-equivalent.js';

describe('comparedEquivalent', () => {
  it('is sphere + cylinder / 2 as recorded at 12 mm, however strong', () => {
    expect(comparedEquivalent(-8, -2.5, 12, 0)).toBe(-9.25);
    expect(comparedEquivalent(-8, -2.5, 12, 1)).toBe(-9.25);
  });

  // −8 at 14 mm: −8/1.112 = −7.19424 at the cornea, /(1 − 0.012·7.19424) = −7.87402 at 12 mm.
  // −10.5 at 14 mm: −10.5/1.147 = −9.15432, /(1 − 0.109852) = −10.28403. Their mean is −9.07903.
  it('beyond 3 D is restated for 12 mm, each meridian by itself', () => {
    expect(comparedEquivalent(-8, -2.5, 14, 0)).toBeCloseTo(-9.07903, 5);
  });

  it('up to 3 D stays as recorded, unless the policy restates every refraction', () => {
    expect(comparedEquivalent(-3, 0, 14, 0)).toBe(-3);
    expect(comparedEquivalent(-2.5, -1, 14, 0)).toBe(-3);
    // −3/1.042 = −2.87908, /(1 − 0.012·2.87908) = −2.98211.
    expect(comparedEquivalent(-3, 0, 14, 1)).toBeCloseTo(-2.98211, 5);
  });

  it('compares the limit at a millionth, like every other', () => {
    expect(isRestated(-3.0000001, 0, 14, 0)).toBe(false);
    expect(isRestated(-3.125, 0, 14, 0)).toBe(true);
    expect(isRestated(-3.125, 0, 12, 0)).toBe(false);
    expect(isRestated(Number.NaN, 0, 14, 0)).toBe(false);
  });
});

describe('what the other policy would add', () => {
  it('on the lane: ∓ 1/metres, and nothing known without its length', () => {
    expect(otherLaneShift(0.5, -0.5, 12, 0, 4, 0)).toBeCloseTo(-0.25, 12);
    expect(otherLaneShift(0.5, -0.5, 12, 0, 4, 1)).toBeCloseTo(0.25, 12);
    expect(otherLaneShift(0.5, -0.5, 12, 0, Number.NaN, 0)).toBeNaN();
  });

  it('on the vertex distance: what restating moves, with the sign turned where it is declared', () => {
    expect(otherVertexShift(-3, 0, 14, 0)).toBeCloseTo(0.01789, 5);
    expect(otherVertexShift(-3, 0, 14, 1)).toBeCloseTo(-0.01789, 5);
    expect(otherVertexShift(-3, 0, 12, 0)).toBe(0);
    expect(otherVertexShift(-8, 0, 14, 0)).toBe(0);
  });
});
