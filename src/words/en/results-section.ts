/** English words: the draft of a Results section. Clauses say what was counted or measured, and no more. */
export const resultsSection = {
  heading: 'Results (draft)',
  about:
    'Every number of this draft is a row of results.csv. It states; what the numbers mean, and for whom, is for the authors to write.',
  sections: {
    eyes: 'Eyes',
    refraction: 'Refraction',
    astigmatism: 'Astigmatism',
    acuity: 'Visual acuity',
    safety: 'Complications',
    comparison: 'Comparison of cohorts',
  },
  group: (label: string, sentence: string) => `${label}: ${sentence}.`,
  joined: (clauses: readonly string[]) => clauses.join('; '),
  counted: (n: string, missing: string, patients: string) =>
    `${n} eyes of ${patients} patients counted, ${missing} missing`,
  mean: (what: string, value: string) => `the mean ${what} was ${value}`,
  sd: (value: string) => `its standard deviation was ${value}`,
  meanAbsolute: (value: string) => `the mean absolute error was ${value}`,
  medianAbsolute: (value: string) => `the median absolute error was ${value}`,
  share: (what: string, fraction: string, value: string) => `${what} in ${fraction} eyes, ${value}`,
  bareShare: (what: string, fraction: string) => `${what} in ${fraction} eyes`,
  within: (limit: string) => `the error was within ±${limit} D`,
  cylinder: (limit: string) => `the recorded cylinder was at most ${limit} D`,
  corrected: (line: string) => `corrected acuity was ${line} or better`,
  uncorrected: (line: string) => `uncorrected acuity was ${line} or better (eyes aimed at distance)`,
  complication: 'a complication during surgery was recorded',
  centroid: (vector: string) => `the centroid of the refractive cylinder at the corneal plane was ${vector}`,
  estimate: (value: string, level: string, limits: string) => `${value} (${level} CI ${limits})`,
  errors: { prediction_error: 'prediction error', target_error: 'error against the target' },
  measures: { cdva: 'corrected acuity (logMAR)', udva: 'uncorrected acuity (logMAR)' },
} as const;
