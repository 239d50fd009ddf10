/** One planted effect: the number an audit finds for it, and what it would find by a mistake. */
export interface Effect<Sample> {
  /** `measure`, `group` and `statistic` as results.csv names them. */
  readonly measure: string;
  readonly group: string;
  readonly statistic: string;
  /** What was put in, where one number says it. */
  readonly planted?: string;
  readonly of: (sample: Sample) => number;
  readonly mistakes: Readonly<Record<string, (sample: Sample) => number>>;
}

/** The two coordinates of a mean vector, as results.csv names them. */
export const CENTROID = ['centroid_x', 'centroid_y'] as const;
export type Part = 0 | 1;
