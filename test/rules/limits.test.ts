import { describe, expect, it } from 'vitest';
import { fields } from '../../src/plan/fields.js';
import { limitsOf } from '../../src/rules/limits.js';
import { planOf } from '../findings/plan.js';

const plan = planOf([]);

describe('limits', () => {
  it('are known of fields only, each with a reason and a source, the usual range inside the possible one', () => {
    const known = fields.map(({ name }) => [name, limitsOf(name, plan)] as const).filter(([, limits]) => limits);
    expect(known.length).toBeGreaterThan(10);
    for (const [name, limits] of known) {
      const { possible, usual = possible, usualAfter = usual, reason, source } = limits as NonNullable<typeof limits>;
      expect([name, reason !== '' && source !== '']).toEqual([name, true]);
      expect(possible[0] <= usual[0] && usual[0] <= usualAfter[0]).toBe(true);
      // An end may be open: a usual age has no upper limit of its own.
      expect(usualAfter[1] <= usual[1] && usualAfter[0] < usualAfter[1]).toBe(true);
      expect(usual[1] <= possible[1] || usual[1] === Number.POSITIVE_INFINITY).toBe(true);
    }
    expect(limitsOf('surgeon', plan)).toBeUndefined();
  });

  it('of keratometry are one limit for both units: 337.5 / 11.25 and 337.5 / 5.625', () => {
    expect(limitsOf('k1', plan)?.possible).toEqual([337.5 / 11.25, 337.5 / 5.625]);
  });

  it('are replaced by what the audit declares, part by part', () => {
    const declared = planOf([], {
      quality: {
        limits: { axial_length: { possible: undefined, usual: [20.5, 28], reason: 'Referral centre for long eyes' } },
        off: [],
        answers: [],
      },
    });
    expect(limitsOf('axial_length', declared)).toMatchObject({
      possible: [18, 38],
      usual: [20.5, 28],
      reason: 'Referral centre for long eyes',
      source: 'audit.yaml',
    });
  });
});
