/** What the figure of a signed quantity says as a whole. */
export interface SignedFigureWords {
  title: string;
  legend: string;
  altLead: string;
}

/** What its axis and its shares say. */
export interface SignedQuantityWords {
  axis: string;
  /** What lies on either side of zero. */
  negative: string;
  positive: string;
  amount: (value: string) => string;
  within: (percent: string, limit: string) => string;
  below: (edge: string) => string;
  above: (edge: string) => string;
}

const degrees = (value: string): string => `${value}°`;
/** '5.00' → '5': limits of angles are whole. */
const whole = (limit: string): string => limit.replace('.00', '');

const angle = {
  negative: '← clockwise',
  positive: 'counter-clockwise →',
  amount: degrees,
  within: (percent: string, limit: string) => `${percent} % within ±${degrees(whole(limit))}`,
  below: (edge: string) => `below ${degrees(edge)}`,
  above: (edge: string) => `above ${degrees(edge)}`,
};

const bins =
  'Bins of 5° are centred on 0; a value on an edge counts in the bin nearer 0. Brackets: eyes within both limits, ' +
  'counted from the values and not from the bins.';

/** English words: axes and shares of angles. */
export const angles = {
  angle_of_error: { ...angle, axis: 'Angle of error, degrees' },
  lens_rotation: { ...angle, axis: 'Rotation, degrees' },
  lens_misalignment: { ...angle, axis: 'Misalignment, degrees' },
} as const satisfies Readonly<Record<string, SignedQuantityWords>>;

/** English words: the figure of the angle of error. */
export const angleFigure: SignedFigureWords = {
  title: 'Angle of error of the astigmatism treatment, corneal plane',
  legend:
    'Angle of error: axis of the surgically induced vector less axis of the target-induced one, corneal plane; ' +
    'positive is counter-clockwise facing the patient, in both eyes. Below 0.25 D of target there is none; such eyes ' +
    `are missing. ${bins}`,
  altLead: 'Histogram of the angle of error in bins of 5 degrees. ',
};

/** English words: the figure of where toric lenses stand. */
export const toricRotation = {
  title: 'Toric lenses: how far they turned, and the cylinder left (corneal plane)',
  turns: {
    lens_rotation: 'Rotation: follow-up − end of surgery',
    lens_misalignment: 'Misalignment: follow-up − intended',
  },
  /** The same within a sentence. */
  names: { lens_rotation: 'rotation', lens_misalignment: 'misalignment' },
  left: 'Cylinder left, D',
  withCylinder: (eyes: string) => `cylinder left known in ${eyes}`,
  legend:
    'Each mark is a toric eye; a larger mark is several eyes at one place. Across: turn of the lens, positive ' +
    'counter-clockwise facing the patient, in both eyes, never mirrored. Upwards: magnitude of the refractive cylinder ' +
    'at the outcome visit, corneal plane. Bars: the same turns in bins of 5° centred on 0. Brackets: eyes within ±5° and ' +
    '±10°. A lens that was turned again counts with its axis before that. Cylinder is left for other reasons too: a ' +
    'lens that stands well is no proof of the plan.',
  altLead: 'Turn of toric lenses, and the cylinder left. ',
} as const;
