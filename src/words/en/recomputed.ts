/** English words: predictions that the audit computes itself, lens constants, the policy on the length of the lane. */
export const recomputed = {
  caution: (formulas: string) =>
    `Recomputed by the audit from biometry, keratometry and the lens implanted (${formulas}): a look back at finished operations, not for choosing a lens. The formulas’ coefficients await comparison with the printed papers.`,
  method: (formulas: string) =>
    `Predictions by ${formulas} were recomputed afterwards for the lens implanted, from axial length, mean keratometry before surgery and the declared lens constants; they serve to look back and not to choose a lens`,
  lane: 'Refractions were corrected to an infinite distance of the chart where the length of the lane is recorded (sphere − 1/metres); the others stand as recorded',
} as const;
