import type { MadeEye } from './made-up-audit.js';

/** Made-up eyes: 40 patients, most with both eyes, in three techniques. Lehmer's generator, so that they stay the same. */
export function madeUpEyes(): readonly MadeEye[] {
  let state = 20251;
  const next = (): number => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  const normal = (): number => next() + next() + next() + next() - 2;
  return Array.from({ length: 40 }, (_, patient) => {
    const shared = normal();
    return (next() < 0.7 ? (['R', 'L'] as const) : (['R'] as const)).map((side): MadeEye => {
      const technique = 'ABC'[Math.floor(next() * 3)] as string;
      const error = Math.round((0.4 * shared + (technique === 'B' ? 0.3 : 0.6) * normal()) * 100) / 100;
      return {
        patient: `P${100 + patient}`,
        side,
        technique,
        error,
        cylinder: Math.round(next() * 8) / 4,
        axis: 1 + Math.floor(next() * 180),
        complication: next() < 0.15 ? 'PCR' : 'none',
        surgeon: `S${1 + Math.floor(next() * 3)}`,
        length: Math.round((22 + 4 * next()) * 100) / 100,
        age: 60 + (patient % 20),
        sex: patient % 2 ? 'F' : 'M',
        second: error + 0.1 * normal(),
      };
    });
  }).flat();
}
