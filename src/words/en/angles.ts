/** What the histogram of a signed quantity says. */
export interface SignedQuantityWords {
  title: string;
  axis: string;
  /** What lies on either side of zero. */
  negative: string;
  positive: string;
  amount: (value: string) => string;
  within: (percent: string, limit: string) => string;
  below: (edge: string) => string;
  above: (edge: string) => string;
  legend: string;
  altLead: string;
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

/** English words: histograms of angles. */
export const angles = {
  angle_of_error: {
    ...angle,
    title: 'Angle of error of the astigmatism treatment, corneal plane',
    axis: 'Angle of error, degrees',
    legend:
      'Angle of error: axis of the surgically induced vector less axis of the target-induced one, corneal plane; ' +
      'positive is counter-clockwise facing the patient, in both eyes. Below 0.25 D of target there is none; such eyes ' +
      `are missing. ${bins}`,
    altLead: 'Histogram of the angle of error in bins of 5 degrees. ',
  },
} as const satisfies Readonly<Record<string, SignedQuantityWords>>;
