// Correlation of fellow eyes by analysis of variance, worked by hand.
import { expect, it } from 'vitest';
import { auditOfEyes, type MadeEye } from '../comparison/made-up-audit.js';
import { footnotesOf } from '../whole/made-up-safety.js';

// Five patients with 1 and −1, ten with one eye at 0: every patient's mean is 0, so that nothing lies between patients.
// Within: Σ = 10 with 5 degrees of freedom, 2. Size of a patient n₀ = (20 − (5·4 + 10·1)/20) / 14 = 1.3214.
// Correlation −2 / ((n₀ − 1)·2) = −3.11.
it('says that a correlation below zero counts as none, and how one below −1 comes', async () => {
  const pairs = Array.from({ length: 5 }, (_, i): readonly MadeEye[] => {
    const eye = { patient: `P${100 + i}`, technique: 'A' };
    return [
      { ...eye, side: 'R', error: 1 },
      { ...eye, side: 'L', error: -1 },
    ];
  });
  const singles = Array.from({ length: 10 }, (_, i): MadeEye => {
    return { patient: `P${200 + i}`, side: 'R', technique: 'A', error: 0 };
  });
  const told = footnotesOf(await auditOfEyes([...pairs.flat(), ...singles], ''), 'refractive-accuracy');
  expect(told).toContain('a correlation below zero, which with few pairs may lie below −1, counts as 0');
  expect(told).toContain('Prediction error: All eyes −3.11 and 1.00');
});
