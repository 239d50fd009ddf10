import { describe, expect, it } from 'vitest';
import {
  detectableDifference,
  eyesNeeded,
  sizeForMeans,
  sizeForNonInferiority,
  sizeForShares,
  sizeForSpread,
} from '../../src/statistics/size.js';

const usual = { confidence: 0.95, power: 0.8 };

// Printed on the statistics page under `size`, to one decimal.
describe('size', () => {
  it('65 against 75 %: 325.7 eyes, 400 with 60 % bilateral and correlation 0.3', () => {
    const independent = sizeForShares(0.65, 0.75, usual);
    expect(independent).toBeCloseTo(325.7, 1);
    expect(eyesNeeded(independent, { bilateral: 0.6, icc: 0.3, loss: 0 })).toBe(400);
  });

  it('0.10 D with SD 0.45: 317.9', () => expect(sizeForMeans(0.1, 0.45, usual)).toBeCloseTo(317.9, 1));

  it('a ratio of SDs of 1.2: 236.1, more with heavy tails', () => {
    expect(sizeForSpread(1.2, 3, usual)).toBeCloseTo(236.1, 1);
    expect(sizeForSpread(1 / 1.2, 3, usual)).toBeCloseTo(236.1, 1);
    expect(sizeForSpread(1.2, 6, usual) / sizeForSpread(1.2, 3, usual)).toBeCloseTo(2.5, 12);
  });

  it('75 % with a margin of 10 points: 294.3', () => {
    expect(sizeForNonInferiority(0.75, 0.1, usual)).toBeCloseTo(294.3, 1);
  });

  it('detects 2.80 standard errors', () => {
    expect(detectableDifference(0.1, usual)).toBeCloseTo(0.28016, 5);
  });

  it('grows by eyes that are lost, and is whole', () => {
    expect(eyesNeeded(100, { bilateral: 0, icc: 0.5, loss: 0.2 })).toBe(125);
    expect(eyesNeeded(100, { bilateral: 1, icc: 0.5, loss: 0 })).toBe(150);
    expect(eyesNeeded(100.1, { bilateral: 0, icc: 0, loss: 0 })).toBe(101);
  });

  it('refuses what cannot be planned', () => {
    expect(() => sizeForShares(0.7, 0.7, usual)).toThrow('sizeForShares: |shareA − shareB| is 0');
    expect(() => sizeForMeans(0, 0.45, usual)).toThrow('sizeForMeans: difference is 0');
    expect(() => sizeForSpread(1, 3, usual)).toThrow('sizeForSpread: |ln ratio| is 0');
    expect(() => sizeForNonInferiority(0.75, -0.1, usual)).toThrow('sizeForNonInferiority: margin is -0.1');
    expect(() => eyesNeeded(100, { bilateral: 0, icc: 0, loss: 1 })).toThrow('eyesNeeded: 1 − loss is 0');
    expect(() => sizeForMeans(0.1, 0.45, { confidence: 95, power: 0.8 })).toThrow('size: confidence is 95');
  });
});
