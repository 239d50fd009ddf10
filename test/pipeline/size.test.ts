import { describe, expect, it } from 'vitest';
import { size } from '../../pipeline/commands/size.js';
import { sizeForMeans } from '../../src/statistics/size.js';
import { smallestEffect } from '../../src/statistics/size-inverse.js';

const plain = { bothEyes: 0, correlation: 0, loss: 0, power: 80, confidence: 95 };
const bilateral = { ...plain, bothEyes: 60, correlation: 0.3 };

const neededFor = (question: Parameters<typeof size>[0], options = plain) => size(question, options).data.needed;

// Textbook forms, worked with z = 1.959964 + 0.841621 = 2.801585; z² = 7.848880.
describe('size', () => {
  it('gives the eyes for two shares: 65 against 75 % are 7.848880 · 0.415 / 0.01 = 325.7', () => {
    expect(neededFor({ of: 'share', from: 65, to: 75 })).toBe(326);
    // Σm²/n = (1 + 3 · 0.6) / 1.6 = 1.75; 1 + 0.75 · 0.3 = 1.225; 325.73 · 1.225 = 399.02.
    expect(neededFor({ of: 'share', from: 65, to: 75 }, bilateral)).toBe(400);
    // 399.02 / 0.95 = 420.02.
    expect(neededFor({ of: 'share', from: 65, to: 75 }, { ...bilateral, loss: 5 })).toBe(421);
  });

  it('gives the eyes for means, spreads and margins', () => {
    // 2 · 7.848880 · 0.2025 / 0.01 = 317.9; 7.848880 · 2 / (2 · 0.0332412) = 236.1; 7.848880 · 0.375 / 0.01 = 294.3.
    expect(neededFor({ of: 'mean', difference: 0.1, sd: 0.45 })).toBe(318);
    expect(neededFor({ of: 'spread', ratio: 1.2, kurtosis: 3 })).toBe(237);
    expect(neededFor({ of: 'margin', share: 75, margin: 10 })).toBe(295);
  });

  it('tells what the eyes at hand can show: the effect whose size they are', () => {
    const { data } = size({ of: 'mean', difference: 0.1, sd: 0.45 }, { ...plain, eyes: 400 });
    // δ = √(2 · 7.848880 · 0.2025 / 400) = 0.08915.
    expect((data.atHand as { effect: number }).effect).toBeCloseTo(0.08915, 5);
  });

  it('refuses equal shares, and eyes too few for any difference', () => {
    expect(size({ of: 'share', from: 70, to: 70 }, plain).code).toBe(2);
    expect(size({ of: 'share', from: 99, to: 100 }, { ...plain, eyes: 2 }).code).toBe(2);
  });

  it('prints every step, at most 78 wide', () => {
    const { screen } = size({ of: 'share', from: 65, to: 75 }, { ...bilateral, eyes: 200 });
    expect(screen).toContain('400 eyes in each cohort');
    expect(screen).toContain('1.225');
    expect(Math.max(...screen.split('\n').map((line) => line.length))).toBeLessThanOrEqual(78);
    expect(screen.trimEnd().split('\n').at(-1)).toMatch(/^Next/);
  });
});

describe('the smallest effect', () => {
  it('is that whose size the eyes are', () => {
    const certainty = { confidence: 0.95, power: 0.8 };
    const needed = (difference: number) => sizeForMeans(difference, 0.45, certainty);
    expect(smallestEffect(needed, needed(0.1), 10)).toBeCloseTo(0.1, 12);
    expect(smallestEffect(needed, needed(0.1), 0.05)).toBeUndefined();
  });
});
