import type { FieldLimits } from './field-limit.js';

type Entry = Pick<FieldLimits, 'possible' | 'unit' | 'reason' | 'source'> & Partial<FieldLimits>;

const axis: Entry = {
  possible: [0, 180],
  unit: '°',
  reason: 'a cylinder at a and at a + 180 degrees is the same; 0 is read as 180',
  source: 'ISO 8429:1986, semicircular notation (from memory)',
};

const position: Entry = {
  possible: [0, 360],
  unit: '°',
  reason: 'a place on the limbus lies on a full circle; hours of the clock become degrees before they are judged',
  source: 'definition',
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

const notNegative = (unit: Entry['unit']): Entry => ({
  possible: [0, Number.POSITIVE_INFINITY],
  unit,
  reason: 'a duration or an energy below nothing does not exist',
  source: 'definition',
});

const remeasured = 'common practice in UK biometry guidance; from memory';

/** Every threshold on a single value, by field. An audit overrides them under `quality.limits`. */
export const fieldLimits: Readonly<Record<string, Entry>> = {
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
  total_corneal_axis: axis,
  posterior_corneal_axis: axis,
  lens_axis: axis,
  lens_axis_intended: axis,
  lens_axis_end: axis,
  predicted_axis: axis,
  incision_axis: position,
  paracentesis_axis: position,
  k1: keratometry,
  k2: keratometry,
  k_flat: keratometry,
  k_steep: keratometry,
  k_mean: {
    ...keratometry,
    usual: [41, 47],
    unusual: 'note',
    reason: 'outside the usual range the measurement is commonly repeated before surgery',
    source: `possible: judgement; usual: ${remeasured}`,
  },
  k_cylinder: {
    possible: [0, 30],
    usual: [0, 2.5],
    unusual: 'note',
    magnitude: true,
    unit: 'D',
    reason: 'above 2.5 D the measurement is commonly repeated; 30 D part the ends of keratometry',
    source: `possible: arithmetic; usual: ${remeasured}`,
  },
  axial_length: {
    possible: [18, 38],
    usual: [21.2, 26.6],
    unusual: 'note',
    unit: 'mm',
    reason: 'outside the usual range the measurement is commonly repeated before surgery',
    source: remeasured,
  },
  acd: {
    possible: [1.5, 6],
    unit: 'mm',
    reason: 'no eye with its own lens has a shallower or deeper chamber; a lost decimal mark lies far outside',
    source: 'judgement',
  },
  lens_thickness: {
    possible: [2, 7],
    unit: 'mm',
    reason: 'no crystalline lens is thinner or thicker',
    source: 'judgement',
  },
  white_to_white: { possible: [8, 15], unit: 'mm', reason: 'no cornea is smaller or larger', source: 'judgement' },
  udva: acuity,
  cdva: acuity,
  unva: acuity,
  uiva: acuity,
  ecd: {
    possible: [200, 5000],
    unit: 'cells/mm²',
    reason: 'fewer cells leave no clear cornea; more are counted in children only',
    source: 'judgement',
  },
  cct: {
    possible: [300, 900],
    unit: 'µm',
    reason: 'thinner and thicker corneas are diseased beyond measuring',
    source: 'judgement',
  },
  iop: { possible: [0, 80], unit: 'mmHg', reason: 'tonometers end at 80 mmHg', source: 'judgement' },
  vertex_mm: {
    possible: [0, 20],
    otherUnit: { name: 'metres', below: 1, factor: 1000 },
    unit: 'mm',
    reason: 'no trial frame stands further from the eye; 0.012 is 12 mm written in metres',
    source: 'judgement',
  },
  lane_m: {
    possible: [0.3, 10],
    unit: 'm',
    reason: 'charts stand between reading distance and 10 m',
    source: 'judgement',
  },
  lens_power: {
    possible: [-15, 60],
    unit: 'D',
    reason: 'no intraocular lens is made outside this range, with a margin',
    source: 'judgement',
  },
  lens_cylinder: {
    possible: [0, 12],
    unit: 'D',
    reason: 'a toric lens states its cylinder without a sign; made to order it ends at about 12 D',
    source: 'judgement',
  },
  age: {
    possible: [0, 115],
    usual: [18, Number.POSITIVE_INFINITY],
    unit: 'years',
    reason: 'children are rare in an audit of adult cataract, and measured by other standards',
    source: 'judgement',
  },
  incision_width: {
    possible: [0.5, 12],
    unit: 'mm',
    reason: 'from a paracentesis to a full extracapsular wound',
    source: 'judgement',
  },
  phaco_time_s: notNegative('s'),
  laser_time_s: notNegative('s'),
  case_time_min: notNegative('min'),
  effective_energy: notNegative(''),
};
