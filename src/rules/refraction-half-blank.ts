import { missingWords } from '../intake/missing.js';
import type { FieldReading } from '../records/canonical.js';
import type { Rule, RuleContext } from './rule.js';
import { thresholdOf } from './thresholds.js';

type Part = 'sphere' | 'cylinder';

/** Rows whose cell is blank beside a number, and rows that hold any of the two. */
function countBlank(
  blank: FieldReading,
  beside: FieldReading,
  isMissing: (word: string) => boolean,
): { blank: number; rows: number } {
  const missing = blank.words.words.map(isMissing);
  const counts = { blank: 0, rows: 0 };
  for (let row = 0; row < blank.words.length; row++) {
    const own = blank.words.codes[row] as number;
    const isBlank = missing[own] === true;
    const isGiven = !Number.isNaN(beside.values[beside.words.codes[row] as number] as number);
    if (!isBlank || isGiven) counts.rows++;
    if (isBlank && isGiven) counts.blank++;
  }
  return counts;
}

function judgePair(blank: FieldReading, beside: FieldReading, context: RuleContext): void {
  const { raw, plan, report } = context;
  const source = plan.sources[raw[blank.source]?.source ?? -1];
  const means = source?.blocks[blank.block]?.blank_means[blank.field];
  if (!source || means !== undefined) return;
  const { blank: count, rows } = countBlank(blank, beside, missingWords(source.reading.missing));
  if (count <= rows * thresholdOf('half_blank', plan)) return;
  report({
    rule: 'refraction-half-blank',
    severity: 'stop',
    source: blank.source,
    column: blank.column,
    field: blank.field,
    effect: 'nothing published',
    detail: count,
    other: rows,
  });
}

/**
 * A file that often leaves the sphere blank beside a cylinder, or the cylinder beside a sphere: it may mean zero or
 * missing, and the two give different results.
 */
export const refractionHalfBlank: Rule = {
  id: 'refraction-half-blank',
  judge(context) {
    const { readings } = context.tables;
    // A refraction in one cell is never half blank.
    const alone = readings.filter(({ field }) => field === 'sphere' || field === 'cylinder');
    for (const one of alone) {
      const wanted: Part = one.field === 'sphere' ? 'cylinder' : 'sphere';
      const beside = alone.find((other) => {
        return other.source === one.source && other.block === one.block && other.field === wanted;
      });
      if (beside && beside.words !== one.words) judgePair(one, beside, context);
    }
  },
};
