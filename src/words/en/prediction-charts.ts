const slope = (value: string, level: string, limits: string): string => `slope ${value} (${level} CI ${limits})`;
const slopeAlone = (value: string): string => `slope ${value}, no interval`;
const noLine = 'no line: the eyes do not differ enough';

const plannedAchieved = {
  title: 'Planned and achieved change of the spherical equivalent',
  planned: 'Planned change, D',
  achieved: 'Achieved change, D',
  slope,
  slopeAlone,
  noLine,
  rSquared: (value: string) => `r² ${value}`,
  legend: (level: string) =>
    'Change of the spherical equivalent by surgery, spectacle plane: planned is the refraction predicted for the lens ' +
    'implanted less the refraction before surgery, achieved the refraction at the outcome visit less the same. Each ' +
    'mark is an eye; a larger mark is several eyes at one place. Thin full line: no error; broken lines ±0.50 D, dotted ' +
    `lines ±1.00 D. Thick line: least-squares regression over eyes; the ${level} interval of its slope allows for ` +
    'patients with two eyes. Eyes without a refraction before surgery, or without a prediction, are left out and ' +
    'counted as missing.',
  altLead: 'Achieved against planned change of the spherical equivalent. ',
} as const;

const errorTrend = {
  title: 'Prediction error over axial length and over keratometry',
  fields: {
    axial_length: { axis: 'Axial length, mm', name: 'axial length' },
    k_mean: { axis: 'Mean keratometry before surgery, D', name: 'keratometry' },
  },
  over: (error: string, field: string) => `${error} over ${field}`,
  perUnit: (value: string, unit: string) => `${value} D per ${unit}`,
  slope,
  slopeAlone,
  noLine,
  legend: (level: string) =>
    'Errors in dioptres, spherical equivalent, spectacle plane (above 0: more hyperopic than predicted), raw and not ' +
    'centred. Each mark is an eye; a larger mark is several eyes at one place. Curve: natural cubic spline with 3 ' +
    'degrees of freedom and knots at the terciles, below 60 patients a straight line; around it its pointwise ' +
    `${level} band, patients with two eyes accounted for. Slope: of a straight line through the same eyes.`,
  edge: (limit: string) => `Eyes with an error beyond ±${limit} D stand at the edge of their panel.`,
  altLead: 'Errors over axial length and over keratometry. ',
} as const;

/** English words: charts of predictions. */
export const predictionCharts = { plannedAchieved, errorTrend } as const;
