import type { Measure } from '../records/measure.js';

/** Something that happens to an eye or does not, counted over all operated eyes. */
const event = {
  family: 'safety',
  kind: 'share',
  better: 'lower',
  unit: 'share',
  groupings: 'cohorts',
} as const;

const same = (value: number): number => value;

/** 1 where the export says yes, 0 where it says no; the words of a yes/no field stand in this order. */
const yes = (answer: number): number => (answer === 1 ? 1 : answer === 2 ? 0 : Number.NaN);

/** What a named complication is called among the measures. */
export const complicationPrefix = 'complication:';

/** One complication by name; what audit.yaml maps to no name counts as 'other'. */
function named(name: string): Measure {
  return {
    ...event,
    name: `${complicationPrefix}${name}`,
    inputs: [`${complicationPrefix}${name}`],
    formula: `${name} is recorded; a blank cell is missing unless blank_means tells`,
    source: 'the export',
    secondary: true,
    of: same,
  };
}

/**
 * Complications, the capsulotomy, and what came after: eyes with it among all operated eyes whose record says whether.
 *
 * @param complications  names that the exports of this audit can tell, in their order
 */
export function safetyMeasures(complications: readonly string[]): readonly Measure[] {
  return [
    {
      ...event,
      name: 'any_complication',
      inputs: ['any_complication'],
      formula: 'any complication during surgery is recorded; a blank cell is missing unless blank_means tells',
      source: 'the export',
      of: same,
    },
    ...complications.map(named),
    {
      ...event,
      name: 'capsulotomy_incomplete',
      inputs: ['capsulotomy_complete'],
      formula: 'the capsulotomy is recorded as not complete; a tear is an outcome of its own',
      source: 'Abell et al. 2014, Ophthalmology 121:17-24 (completeness and tears apart; volume and pages from memory)',
      whereRecorded: true,
      of: (complete) => 1 - yes(complete as number),
    },
    {
      ...event,
      name: 'return_to_theatre',
      inputs: ['return_to_theatre'],
      formula: 'an unplanned return to theatre is recorded',
      source: 'the export',
      secondary: true,
      whereRecorded: true,
      of: (answer) => yes(answer as number),
    },
  ];
}
