/**
 * Everything that is planted in the sample, in one place. Dioptres, degrees, millimetres, days.
 * README.md tells the story; `expected.ts` works out what an audit of such a sample should find.
 */
export const SEED = 183;
export const PERIOD = { from: '2024-01-01', to: '2025-12-31' };
export const DATA_UNTIL = '2026-03-31';

export const PATIENTS = 270;
export const BILATERAL = 150;

export type Technique = 'manual' | 'laser-assisted';

/** Mean of achieved − predicted spherical equivalent in each cohort; lens and surgeon offsets are centred on it. */
export const MEAN_ERROR: Readonly<Record<Technique, number>> = { manual: 0.4, 'laser-assisted': 0.12 };
/** Spread of that error: what fellow eyes share, and what each eye adds. */
export const PATIENT_SD = 0.28;
export const EYE_SD: Readonly<Record<Technique, number>> = { manual: 0.4, 'laser-assisted': 0.12 };
export const LENS_OFFSET: Readonly<Record<string, number>> = { A1: -0.12, A1T: -0.12, B2: 0.24, C3: 0 };
export const SURGEON_OFFSET: Readonly<Record<string, number>> = { S1: 0.04, S2: 0, S3: -0.06 };

/** The surgeons know that their eyes turn out long-sighted, and choose the lens for this much below the aim. */
export const AIM_BELOW = 0.3;
/** An eye at one month is this much more short-sighted than at three. */
export const EARLY_SHIFT = -0.1;

/**
 * Mean corneal astigmatism before surgery: excess of meridian 0 over 90, and of 45 over 135. The second is
 * the same in right and left eyes, so that an audit which mirrors left eyes loses it.
 */
export const CORNEA = { horizontal: -0.3, oblique: 0.3 };
/** What the back of the cornea and the lens's tilt add to the eye, unseen by the keratometer. */
export const UNSEEN = { horizontal: 0.3, oblique: 0.1 };
/** Excess of the incision meridian over the one at right angles: a flattening. */
export const INCISION = { along: -0.36, torque: 0 };

/** The second formula predicts this much more long-sightedness, and more so in long eyes. */
export const SECOND_FORMULA = { offset: 0.2, perMillimetre: 0.07 };

/** Spectacle lens to cornea, millimetres. */
export const VERTEX = 12;

/**
 * The second series, `wide.csv`: eyes left short-sighted to match their unoperated fellow, with marked
 * astigmatism that no toric lens takes away. Only here does forgetting the vertex distance move a mean.
 */
export const SERIES = {
  eyes: 40,
  aim: -7,
  meanError: 0.3,
  errorSd: 0.3,
  residual: { horizontal: 1.55, oblique: -0.56, spread: 0.22 },
} as const;
