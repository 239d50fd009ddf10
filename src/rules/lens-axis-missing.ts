import { eyeNumbers } from '../eligibility/lookup.js';
import { eyePlace } from './places.js';
import type { Rule, RuleContext } from './rule.js';

/** Eyes with a toric lens; none where no cylinder is recorded. */
export function toricEyes({ tables }: Pick<RuleContext, 'tables'>): readonly number[] {
  const cylinder = eyeNumbers(tables.eyes, 'lens_cylinder');
  return cylinder ? [...cylinder.keys()].filter((eye) => (cylinder[eye] as number) > 0) : [];
}

/** Toric lenses without a column for something of theirs are told once. */
export function tellUnmapped(rule: string, torics: readonly number[], context: RuleContext): void {
  const [first] = torics;
  if (first === undefined) return;
  const { source, column, field } = eyePlace(context)(first, 'lens_cylinder');
  context.report({ rule, severity: 'note', source, column, field, effect: 'kept', detail: torics.length });
}

/** A toric lens without the axis it was meant for: its rotation cannot be told. */
export const lensAxisMissing: Rule = {
  id: 'lens-axis-missing',
  tells: ['lens-axis-missing', 'lens-axis-not-mapped'],
  judge(context) {
    const torics = toricEyes(context);
    const axis = context.tables.eyes.column('lens_axis_intended') as Float64Array | undefined;
    if (!axis) {
      tellUnmapped('lens-axis-not-mapped', torics, context);
      return;
    }
    const place = eyePlace(context);
    for (const eye of torics) {
      // An axis that was set aside another rule has told of.
      if (!Number.isNaN(axis[eye] as number)) continue;
      const at = place(eye, 'lens_axis_intended');
      context.report({ rule: 'lens-axis-missing', severity: 'query', ...at, effect: 'kept' });
    }
  },
};
