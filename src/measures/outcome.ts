import type { Family, Measure } from '../records/measure.js';
import { acuityLines } from './profiles.js';

type Acuity = 'cdva' | 'udva' | 'uiva' | 'unva';

const same = (value: number): number => value;

/** An acuity after surgery; `of` names the field where several measures take it, each over eyes of its own. */
function acuity(name: string, family: Family, of: Acuity = name as Acuity): Measure {
  return {
    name,
    family,
    kind: 'continuous',
    better: 'lower',
    unit: 'logMAR',
    inputs: [`${of}@outcome`],
    formula: '−log10 of the acuity recorded, not snapped to a line',
    source: 'Holladay 1997, J Refract Surg 13:388-391',
    groupings: 'cohorts',
    lines: acuityLines,
    ...(name === 'cdva' || name === 'udva' ? {} : { whereRecorded: true, secondary: true }),
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

/** Acuity after surgery; uncorrected apart for eyes aimed at distance and for those that are not. */
export const acuityMeasures: readonly Measure[] = [
  acuity('cdva', 'corrected'),
  acuity('udva', 'uncorrected'),
  acuity('udva:near_target', 'near_target', 'udva'),
  acuity('uiva', 'intermediate'),
  acuity('unva', 'near'),
];

/** When eyes were seen. */
export const followUpMeasures: readonly Measure[] = [
  followUp('follow_up_days', 'refraction', 'refractions.day@outcome'),
  followUp('follow_up_days:astigmatism', 'astigmatism', 'refractions.day@outcome'),
  followUp('follow_up_days:corrected', 'corrected', 'corrected.day@outcome'),
  followUp('follow_up_days:uncorrected', 'uncorrected', 'uncorrected.day@outcome'),
];
