import type { Measure } from '../records/measure.js';

function taken(name: string, unit: Measure['unit'], formula: string): Measure {
  return {
    name,
    family: 'resources',
    kind: 'skewed',
    better: 'lower',
    unit,
    inputs: [name],
    formula,
    source: 'the export',
    groupings: 'cohorts',
    strata: ['nucleus_grade', 'machine'],
    whereRecorded: true,
    of: (value) => value as number,
  };
}

/** What an operation takes; as recorded, and what a machine counts in its own unit means nothing beside another's. */
export const resourceMeasures: readonly Measure[] = [
  taken('case_time_min', 'min', 'time of the whole case, as recorded'),
  taken('laser_time_s', 's', 'time of the laser, as recorded'),
  taken('phaco_time_s', 's', 'time of lens removal by ultrasound, as recorded'),
  taken('effective_energy', '', 'energy of lens removal in the unit of its machine, as recorded'),
];
