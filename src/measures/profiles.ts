/** Limits of the shares of an error, dioptres: the steps that reporting standards and registries print. */
export const errorLimits = [0.25, 0.5, 0.75, 1, 1.5, 2] as const;

/** Snellen lines, 20 feet, whose cumulative shares are printed. */
export const acuityLines = [
  '20/12.5',
  '20/16',
  '20/20',
  '20/25',
  '20/32',
  '20/40',
  '20/63',
  '20/100',
  '20/200',
] as const;

/** Edges of the error histogram: bins of 0.25 D centred on 0, open beyond ±2.125 D. */
export const errorBins = Array.from({ length: 18 }, (_, i) => -2.125 + 0.25 * i);

/** Edges of histograms of angles, degrees: bins of 5 centred on 0, open beyond ±42.5. */
export const angleBins = Array.from({ length: 18 }, (_, i) => -42.5 + 5 * i);

/** Lines of acuity lost (−) and gained (+) as they are told; the ends are open. */
export const lineSteps = [-3, -2, -1, 0, 1, 2, 3] as const;
