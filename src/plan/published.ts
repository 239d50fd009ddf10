/** Names by which `outputs.order` and `outputs.leave_out` know the tables of the report, in its order. */
export const tableNames = [
  'eye-flow',
  'follow-up',
  'baseline',
  'missing-outcomes',
  'refractive-accuracy',
  'formulas',
  'accuracy-by-subgroup',
  'lens-constants',
  'residual-cylinder',
  'double-angle-summary',
  'astigmatism-treatment',
  'induced-astigmatism',
  'toric-alignment',
  'visual-acuity',
  'acuity-change',
  'safety',
  'resources',
  'stability',
  'confounding',
  'comparison',
  'sensitivity',
  'benchmarks',
] as const;

/** The same for its figures. */
export const figureNames = [
  'eye-flow',
  'prediction-error',
  'accuracy-bands',
  'accuracy-shares',
  'planned-achieved',
  'error-trend',
  'acuity-cumulative',
  'acuity-difference',
  'lines-change',
  'cylinder-shares',
  'double-angle',
  'double-angle-cornea',
  'double-angle-induced',
  'induced-incision',
  'double-angle-error',
  'double-angle-toric',
  'target-induced',
  'angle-error',
  'toric-rotation',
  'stability',
  'endothelium',
  'monitoring',
  'funnel',
  'differences',
] as const;

/** Names by which `outputs.artwork` knows the profiles that are built in. */
export const artworkNames = ['journal-single', 'journal-middle', 'journal-double', 'slide', 'web'];

/** Tables and figures, each once. */
export const publishedNames: readonly string[] = [...new Set<string>([...tableNames, ...figureNames])];
