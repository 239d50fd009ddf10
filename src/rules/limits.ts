import type { Plan } from '../records/plan.js';

export type Range = readonly [number, number];

/** Thresholds of one field: outside `possible` a value is set aside, outside `usual` it is asked or noted. */
export interface FieldLimits {
  possible: Range;
  usual: Range | undefined;
  /** Narrower usual range of examinations after surgery. */
  usualAfter: Range | undefined;
  /** What a value outside `usual` is. */
  unusual: 'query' | 'note';
  /** Whether the size without its sign is compared: a cylinder may be written with either. */
  magnitude: boolean;
  unit: 'D' | 'mm' | '°' | 'logMAR';
  reason: string;
  source: string;
}

type Entry = Pick<FieldLimits, 'possible' | 'unit' | 'reason' | 'source'> & Partial<FieldLimits>;

const axis: Entry = {
  possible: [0, 180],
  unit: '°',
  reason: 'a cylinder at a and at a + 180 degrees is the same; 0 is read as 180',
  source: 'ISO 8429:1986, semicircular notation (from memory)',
};

const keratometry: Entry = {
  possible: [30, 60],
  unit: 'D',
  reason: 'radii of 11.25 to 5.625 mm at 1.3375; a cornea outside them is a slip of unit or decimal mark',
  source: 'judgement',
};

const acuity: Entry = {
  possible: [-0.31, 3.01],
  unit: 'logMAR',
  reason: '20/10 is −0.301, and the largest value that stands for no light perception is 3.0',
  source: 'judgement',
};

/** Every threshold on a single value, by field. An audit overrides them under `quality.limits`. */
const table: Readonly<Record<string, Entry>> = {
  sphere: {
    possible: [-30, 30],
    usual: [-12, 8],
    usualAfter: [-4, 4],
    unit: 'D',
    reason: 'beyond 30 D no trial lens is written; after surgery most eyes end near their target',
    source: 'judgement',
  },
  cylinder: {
    possible: [0, 12],
    usual: [0, 5],
    usualAfter: [0, 3],
    magnitude: true,
    unit: 'D',
    reason: 'larger cylinders are rare outside corneal disease; after surgery above 3 D is a surprise',
    source: 'judgement',
  },
  axis,
  k1_axis: axis,
  k2_axis: axis,
  k_steep_axis: axis,
  k_cylinder_axis: axis,
  lens_axis: axis,
  lens_axis_intended: axis,
  lens_axis_end: axis,
  k1: keratometry,
  k2: keratometry,
  k_flat: keratometry,
  k_steep: keratometry,
  k_mean: keratometry,
  axial_length: {
    possible: [18, 38],
    usual: [21.2, 26.6],
    unusual: 'note',
    unit: 'mm',
    reason: 'outside the usual range the measurement is commonly repeated before surgery',
    source: 'common practice in UK biometry guidance; from memory',
  },
  udva: acuity,
  cdva: acuity,
  unva: acuity,
  uiva: acuity,
};

/**
 * The limits of a field as they hold in this audit. A usual range that the audit declares replaces both of ours, so
 * that a referral centre is not asked about its every eye.
 *
 * @returns undefined where no limit is known of the field
 * @example limitsOf('axial_length', plan)?.possible // [18, 38]
 */
export function limitsOf(field: string, plan: Plan): FieldLimits | undefined {
  const entry = table[field];
  if (!entry) return undefined;
  const declared = plan.quality.limits[field];
  return {
    ...entry,
    possible: declared?.possible ?? entry.possible,
    usual: declared?.usual ?? entry.usual,
    usualAfter: declared?.usual ? undefined : entry.usualAfter,
    unusual: entry.unusual ?? 'query',
    magnitude: entry.magnitude ?? false,
    reason: declared?.reason ?? entry.reason,
    source: declared ? 'audit.yaml' : entry.source,
  };
}
