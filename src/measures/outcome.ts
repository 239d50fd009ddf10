import type { Family, Measure } from '../records/measure.js';
import { acuityLines } from './profiles.js';

const same = (value: number): number => value;

function acuity(name: 'cdva' | 'udva', family: Family): Measure {
  return {
    name,
    family,
    kind: 'continuous',
    better: 'lower',
    unit: 'logMAR',
    inputs: [`${name}@outcome`],
    formula: '−log10 of the acuity recorded, not snapped to a line',
    source: 'Holladay 1997, J Refract Surg 13:388-391',
    groupings: 'cohorts',
    lines: acuityLines,
    of: same,
  };
}

function followUp(name: string, family: Family, day: string): Measure {
  return {
    name,
    family,
    kind: 'continuous',
    role: 'follow-up',
    unit: 'days',
    inputs: [day],
    formula: 'day of the examination − day of surgery',
    source: 'definition',
    groupings: 'cohorts',
    of: same,
  };
}

/** Acuity, safety and follow-up time. */
export const outcomeMeasures: readonly Measure[] = [
  acuity('cdva', 'corrected'),
  acuity('udva', 'uncorrected'),
  {
    name: 'any_complication',
    family: 'safety',
    kind: 'share',
    better: 'lower',
    unit: 'share',
    inputs: ['any_complication'],
    formula: 'any complication during surgery is recorded; a blank cell is missing, not none',
    source: 'the export',
    groupings: 'cohorts',
    of: same,
  },
  followUp('follow_up_days', 'refraction', 'refractions.day@outcome'),
  followUp('follow_up_days:astigmatism', 'astigmatism', 'refractions.day@outcome'),
  followUp('follow_up_days:corrected', 'corrected', 'corrected.day@outcome'),
  followUp('follow_up_days:uncorrected', 'uncorrected', 'uncorrected.day@outcome'),
];
