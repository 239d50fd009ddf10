import { eyeNumbers } from '../eligibility/lookup.js';
import { millionths } from '../units.js';
import { furtherFrom, meanOf, pairsOfEyes } from './fellow.js';
import { eyePlace } from './places.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** Two eyes of one patient that differ in length: noted where it is commonly measured again, asked about far beyond. */
export const axialLengthSides: Rule = {
  id: 'axial-length-sides',
  judge(context) {
    const { tables, plan, report } = context;
    const lengths = eyeNumbers(tables.eyes, 'axial_length');
    if (!lengths) return;
    const [asked, noted] = [thresholdOf('axial_length_sides', plan), thresholdOf('axial_length_sides_noted', plan)];
    const mean = meanOf(lengths);
    const place = eyePlace(context);
    for (const pair of pairsOfEyes(tables)) {
      const apart = millionths(Math.abs((lengths[pair[0]] as number) - (lengths[pair[1]] as number)));
      if (!(apart > millionths(Math.min(asked, noted)))) continue;
      const [eye, fellow] = furtherFrom(mean, lengths, pair);
      const isAsked = apart > millionths(asked);
      const finding = {
        ...place(eye, 'axial_length'),
        detail: lengths[eye] as number,
        other: lengths[fellow] as number,
      };
      const mark = { table: 'eyes', row: eye, field: 'axial_length', as: 'queried' } as const;
      const severity = isAsked ? 'query' : 'note';
      report({ rule: 'axial-length-sides', severity, ...finding, effect: 'kept' }, ...(isAsked ? [mark] : []));
    }
  },
};
