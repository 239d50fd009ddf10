import { eyeNumbers } from '../eligibility/lookup.js';
import { missingWords } from '../intake/missing.js';
import { eyePlace } from './places.js';
import type { Rule } from './rule.js';

/** An incision with a width and no place: its effect on the cornea cannot be told from the cornea's own change. */
export const incisionAxisMissing: Rule = {
  id: 'incision-axis-missing',
  judge(context) {
    const { tables, raw, plan, report } = context;
    const [axis, width] = [eyeNumbers(tables.eyes, 'incision_axis'), eyeNumbers(tables.eyes, 'incision_width')];
    if (!axis || !width) return;
    const place = eyePlace(context);
    width.forEach((mm, eye) => {
      if (Number.isNaN(mm) || !Number.isNaN(axis[eye] as number)) return;
      const at = place(eye, 'incision_axis');
      const { reading } = plan.sources[raw[at.source]?.source ?? -1] ?? {};
      // An axis that is there, and is none, another rule tells of.
      if (!missingWords(reading?.missing)(at.written ?? '')) return;
      report({ rule: 'incision-axis-missing', severity: 'query', ...at, effect: 'kept', detail: mm });
    });
  },
};
