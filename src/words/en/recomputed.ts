import type { Refusal } from '../../optics/formulas/index.js';

/** Why a formula does not predict an eye, within a sentence. */
const refusals: Readonly<Record<Refusal, string>> = {
  'axial-length-missing': 'axial length missing',
  'axial-length-outside': 'axial length not from 18 to 36 mm',
  'keratometry-missing': 'keratometry missing',
  'keratometry-outside': 'keratometry not from 30 to 60 D',
  'chamber-depth-missing': 'chamber depth missing',
  'chamber-depth-outside': 'chamber depth not from 1.5 to 6 mm',
  'power-missing': 'lens power missing',
  'power-outside': 'lens power not from −10 to 45 D',
  'constant-missing': 'no constant declared for the lens',
  'no-image': 'no image on the retina from where the formula puts the lens',
};

const constants = {
  title: (visit: string) =>
    `Lens constants, from the refraction at ${visit}: spherical equivalent, spectacle plane (eligible eyes)`,
  formula: (formula: string, constant: string) => `${formula} (${constant}${constant === 'A' ? '' : ', mm'})`,
  lens: 'Lens',
  eyes: 'Eyes',
  used: 'Constant used',
  zeroing: 'Constant of zero mean error',
  meanUsed: 'Mean error with the constant used, D',
  change: 'Change of the mean absolute error, D',
  withinUsed: 'Within ±0.50 D, constant used, n/N, %',
  withinOthers: 'Within ±0.50 D, refitted, n/N, %',
  others:
    'Change, and shares refitted: each eye with the constant that the eyes of all other patients lead to, so that what is shown is not the fit’s own optimism. A negative change is a smaller error.',
  weak: (list: string) =>
    `Left out of the search with a lens weaker than 2 D, which tells too little of where it lies: ${list}.`,
  refused: (list: string) => `Left out of the search with biometry that is missing or beyond the limits: ${list}.`,
} as const;

/** English words: predictions that the audit computes itself, lens constants, the policy on the length of the lane. */
export const recomputed = {
  caution: (formulas: string) =>
    `Recomputed by the audit from biometry, keratometry and the lens implanted (${formulas}): a look back at finished operations, not for choosing a lens. The formulas’ coefficients await comparison with the printed papers.`,
  method: (formulas: string) =>
    `Predictions by ${formulas} were recomputed afterwards for the lens implanted, from axial length, mean keratometry before surgery and the declared lens constants; they serve to look back and not to choose a lens`,
  lane: 'Refractions were corrected to an infinite distance of the chart where the length of the lane is recorded (sphere − 1/metres); the others stand as recorded',
  vertexAll: (eyes: string) =>
    `Refractions found at another vertex distance than the 12 mm of the formulas were restated for it, meridian by meridian, before they were compared with a prediction: ${eyes} eyes.`,
  vertexFar: (eyes: string) =>
    `Refractions beyond 3 D found at another vertex distance than the 12 mm of the formulas were restated for it, meridian by meridian, before they were compared with a prediction: ${eyes} eyes.`,
  refusals,
  refused: (list: string) => `Not predicted: ${list}.`,
  refusedOf: (formula: string, reasons: string) => `${formula} ${reasons}`,
  refusedFor: (reason: string, eyes: string) => `${reason} ${eyes}`,
  cusp: (eyes: string) =>
    `SRK/T: in ${eyes} steep and long eyes the computed corneal height runs to its cusp, and the lens position is not to be relied on; they are kept.`,
  unusual: (list: string) => `Outside 20 to 31 mm or 38 to 48 D, where formulas were hardly tried, and kept: ${list}.`,
  constants,
} as const;
