import type { Kind } from '../records/canonical.js';
import { examsOf, isAfter, isFit } from './exams.js';
import { tellUnmapped, toricEyes } from './lens-axis-missing.js';
import { eyePlace } from './places.js';
import type { Rule, RuleContext } from './rule.js';

/** For each eye, whether a kind of measurement was made after surgery; what was seen at its end counts where told. */
function measuredAfter({ tables }: RuleContext, kind: Kind, { atEnd }: { atEnd: boolean }): Uint8Array {
  const measured = new Uint8Array(tables.eyes.numRows());
  const exams = examsOf(tables, kind);
  for (let i = 0; i < exams.length; i++) {
    const counts = isAfter(exams, i) || (atEnd && exams.day[i] === 0);
    if (isFit(exams, i) && counts) measured[exams.eye[i] as number] = 1;
  }
  return measured;
}

/** A toric lens whose axis nobody saw after surgery, in an eye that was refracted then. */
export const lensAxisUnseen: Rule = {
  id: 'lens-axis-unseen',
  tells: ['lens-axis-unseen', 'lens-axis-not-observed'],
  judge(context) {
    const { tables, report } = context;
    const torics = toricEyes(context);
    if (tables.measurements.lensAxes.numRows() === 0) {
      tellUnmapped('lens-axis-not-observed', torics, context);
      return;
    }
    const seen = measuredAfter(context, 'lensAxes', { atEnd: true });
    const examined = measuredAfter(context, 'refractions', { atEnd: false });
    const place = eyePlace(context);
    for (const eye of torics) {
      if (seen[eye] === 1 || examined[eye] === 0) continue;
      report({ rule: 'lens-axis-unseen', severity: 'query', ...place(eye, 'lens_cylinder'), effect: 'kept' });
    }
  },
};
