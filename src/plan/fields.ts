import type { Kind } from '../records/canonical.js';
import type { ColumnPlan, Holds } from '../records/plan.js';

/** How the cells of a field are read. */
export type FieldType =
  /** A word as written: leading zeros kept, never a number. */
  | 'code'
  /** One of few values of ours, reached by words. */
  | 'category'
  | 'laterality'
  | 'date'
  | 'number'
  | 'yes-no'
  /** One or several codes in a cell; words such as 'none' say that there is none. */
  | 'codes'
  | 'acuity'
  /** Sphere, cylinder and axis in one cell. */
  | 'refraction'
  /** A position on the limbus: degrees 0 to 360, or a clock hour with its viewpoint. */
  | 'clock-or-degrees';

/** Keys of the long column form that say how cells are read; where the column stands fits every field. */
export type ReadingKey = 'unit' | 'index' | 'view' | 'numbers' | 'notation' | 'plane' | 'from' | 'words';

export interface Field {
  name: string;
  /** Kinds of row that may carry it. */
  holds: readonly Holds[];
  type: FieldType;
  /** Canonical unit, '' where it has none. */
  unit: '' | 'D' | 'mm' | 'm' | 'µm' | 'deg' | 'days' | 'years' | 's' | 'min' | 'mmHg' | 'cells/mm²';
  /** The measurement table that holds it; undefined where it belongs to the eye or to the row as a whole. */
  kind: Kind | undefined;
  /** Keys of the column form that fit it. */
  keys: readonly ReadingKey[];
  /** Our values, where they are few and fixed. */
  values: readonly string[] | undefined;
  /** Fields without which it says nothing: they must stand in the same kind of row. */
  needs: readonly string[];
  /** Units of the column form, where it knows `unit`. */
  units: readonly NonNullable<ColumnPlan['unit']>[];
  /** Notations of the column form, where it knows `notation`. */
  notations: readonly NonNullable<ColumnPlan['notation']>[];
  /** Keys of the column form that have no default. */
  required: readonly ReadingKey[];
}

const every: readonly Holds[] = ['surgery', 'eye', 'exam', 'prediction'];
const surgery: readonly Holds[] = ['surgery'];
const perEye: readonly Holds[] = ['surgery', 'eye'];
const exam: readonly Holds[] = ['exam'];
const predicted: readonly Holds[] = ['surgery', 'prediction'];

function field(name: string, holds: readonly Holds[], type: FieldType, more: Partial<Field> = {}): Field {
  const plain = {
    unit: '',
    kind: undefined,
    keys: [],
    values: undefined,
    needs: [],
    units: [],
    notations: [],
  } as const;
  return { name, holds, type, ...plain, required: [], ...more };
}

const code = (name: string, holds: readonly Holds[]): Field => field(name, holds, 'code');
const number = (name: string, holds: readonly Holds[], unit: Field['unit'], more: Partial<Field> = {}): Field =>
  field(name, holds, 'number', { unit, ...more });
const choice = (name: string, holds: readonly Holds[], type: FieldType, values: readonly string[]): Field =>
  field(name, holds, type, { values, keys: ['words'] });
const yesNo = (name: string): Field => choice(name, surgery, 'yes-no', ['yes', 'no']);
const position = (name: string): Field =>
  field(name, surgery, 'clock-or-degrees', { unit: 'deg', keys: ['unit', 'view'], units: ['deg', 'clock'] });
const acuity = (name: string, kind: Kind): Field => field(name, exam, 'acuity', { kind, keys: ['numbers'] });
const measured = (name: string, kind: Kind, unit: Field['unit'], ...needs: string[]): Field =>
  number(name, exam, unit, { kind, needs });
/** A corneal power or, in millimetres, a radius. */
const corneal = (name: string, ...needs: string[]): Field =>
  number(name, exam, 'D', { kind: 'keratometries', keys: ['unit', 'index'], units: ['D', 'mm'], needs });

const signs: Field['notations'] = ['signed', 'minus', 'plus'];

/**
 * Every field that audit.yaml can map, in the order in which they are listed to the reader. A field that may
 * stand on surgery or eye rows is a fact of the eye; one on exam rows belongs to a day.
 */
export const fields: readonly Field[] = [
  code('patient', every),
  choice('eye', every, 'laterality', ['right', 'left']),

  field('surgery_date', surgery, 'date'),
  number('surgery_year', surgery, ''),
  number('surgery_order', surgery, ''),
  choice('procedure', surgery, 'category', ['lens', 'reposition', 'exchange', 'enhancement', 'other']),
  number('age', perEye, 'years'),
  choice('sex', perEye, 'category', ['F', 'M', 'X']),
  code('site', surgery),
  code('surgeon', surgery),
  code('surgeon_grade', surgery),
  code('technique', surgery),
  code('combined_procedure', surgery),
  position('incision_axis'),
  number('incision_width', surgery, 'mm'),
  position('paracentesis_axis'),
  code('lens_model', surgery),
  code('lens_family', surgery),
  number('lens_constant', surgery, ''),
  number('lens_power', surgery, 'D'),
  number('lens_cylinder', surgery, 'D'),
  number('lens_axis_intended', surgery, 'deg'),
  number('lens_axis_end', surgery, 'deg'),
  number('target_se', surgery, 'D'),
  number('predicted_se', predicted, 'D'),
  number('predicted_cylinder', predicted, 'D', {
    keys: ['plane', 'notation'],
    notations: ['plus', 'minus'],
    required: ['plane', 'notation'],
    needs: ['predicted_axis'],
  }),
  number('predicted_axis', predicted, 'deg', { needs: ['predicted_cylinder'] }),
  number('axial_length', perEye, 'mm'),
  number('acd', perEye, 'mm', { keys: ['from'] }),
  number('lens_thickness', perEye, 'mm'),
  number('white_to_white', perEye, 'mm'),
  field('comorbidity', perEye, 'codes'),
  field('prior_corneal_surgery', perEye, 'codes'),
  yesNo('capsulotomy_complete'),
  field('complication', surgery, 'codes'),
  yesNo('anterior_tear'),
  yesNo('posterior_capsule_rupture'),
  yesNo('vitreous_loss'),
  yesNo('return_to_theatre'),
  code('machine', surgery),
  code('nucleus_grade', surgery),
  number('effective_energy', surgery, ''),
  number('phaco_time_s', surgery, 's'),
  number('laser_time_s', surgery, 's'),
  number('case_time_min', surgery, 'min'),

  field('exam_date', exam, 'date'),
  number('days', exam, 'days'),
  code('visit', exam),
  code('device', exam),
  field('refraction', exam, 'refraction', { kind: 'refractions', keys: ['notation'], notations: signs, unit: 'D' }),
  measured('sphere', 'refractions', 'D', 'cylinder'),
  number('cylinder', exam, 'D', { kind: 'refractions', keys: ['notation'], notations: signs, needs: ['sphere'] }),
  measured('axis', 'refractions', 'deg', 'cylinder'),
  measured('supplied_se', 'refractions', 'D', 'sphere'),
  measured('vertex_mm', 'refractions', 'mm'),
  measured('lane_m', 'refractions', 'm'),
  acuity('udva', 'uncorrected'),
  acuity('cdva', 'corrected'),
  acuity('unva', 'near'),
  acuity('uiva', 'intermediate'),
  corneal('k1', 'k2'),
  measured('k1_axis', 'keratometries', 'deg', 'k1'),
  corneal('k2', 'k1'),
  measured('k2_axis', 'keratometries', 'deg', 'k2'),
  corneal('k_flat', 'k_steep'),
  corneal('k_steep', 'k_flat'),
  measured('k_steep_axis', 'keratometries', 'deg', 'k_steep'),
  corneal('k_mean'),
  measured('k_cylinder', 'keratometries', 'D', 'k_mean'),
  measured('k_cylinder_axis', 'keratometries', 'deg', 'k_cylinder'),
  measured('total_corneal_cylinder', 'totalCorneas', 'D', 'total_corneal_axis'),
  measured('total_corneal_axis', 'totalCorneas', 'deg', 'total_corneal_cylinder'),
  measured('posterior_corneal_cylinder', 'posteriorCorneas', 'D', 'posterior_corneal_axis'),
  measured('posterior_corneal_axis', 'posteriorCorneas', 'deg', 'posterior_corneal_cylinder'),
  measured('lens_axis', 'lensAxes', 'deg'),
  measured('ecd', 'endothelia', 'cells/mm²'),
  measured('cct', 'thicknesses', 'µm'),
  measured('iop', 'pressures', 'mmHg'),

  code('formula', ['prediction']),
  number('constant', ['prediction'], ''),
];

/** Forms of one measurement of which a kind of row carries only one. */
export const alternatives: readonly (readonly (readonly string[])[])[] = [
  [['refraction'], ['sphere', 'cylinder', 'axis']],
  [
    ['k1', 'k1_axis', 'k2', 'k2_axis'],
    ['k_flat', 'k_steep', 'k_steep_axis'],
    ['k_mean', 'k_cylinder', 'k_cylinder_axis'],
  ],
];

const byName = new Map(fields.map((one) => [one.name, one]));

/** The field of this name; undefined where there is none. */
export function fieldNamed(name: string): Field | undefined {
  return byName.get(name);
}

/** Fields that a row of this kind may carry. */
export function fieldsOn(holds: Holds): readonly Field[] {
  return fields.filter((one) => one.holds.includes(holds));
}

/** Whether the cells of a field are numbers. */
export function isNumeric({ type }: Field): boolean {
  return type === 'number' || type === 'clock-or-degrees';
}
