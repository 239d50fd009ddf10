import { sphericalEquivalent } from '../optics/spherical-equivalent.js';
import { predictedBy } from '../predictions/predicted.js';
import { primaryFormula } from '../predictions/primary.js';
import { millionths } from '../units.js';
import { examsOf } from './exams.js';
import { examPlace } from './places.js';
import { recordedRefractions } from './recorded.js';
import type { Rule } from './rule.js';
import { thresholdOf } from './thresholds.js';

/** The cell whose sign, turned, brings the eye to its plan. */
interface TurnedSign {
  field: 'sphere' | 'cylinder';
  /** Achieved − predicted with the sign turned, dioptres. */
  left: number;
}

/**
 * Which sign, turned, would bring the achieved refraction nearest the predicted one.
 *
 * @example turnedSign({ sphere: 1, cylinder: -0.5 }, -1.3) // { field: 'sphere', left: 0.05 }
 */
function turnedSign({ sphere, cylinder }: { sphere: number; cylinder: number }, predicted: number): TurnedSign {
  const ofSphere = sphericalEquivalent(-sphere, cylinder) - predicted;
  const ofCylinder = sphericalEquivalent(sphere, -cylinder) - predicted;
  return Math.abs(ofCylinder) < Math.abs(ofSphere)
    ? { field: 'cylinder', left: ofCylinder }
    : { field: 'sphere', left: ofSphere };
}

/** An eye that ended far from what was predicted; where an opposite sign would explain it, that is said. */
export const refractionSurprise: Rule = {
  id: 'refraction-surprise',
  judge(context) {
    const { tables, plan, report } = context;
    const refractions = examsOf(tables, 'refractions');
    const [sphere, cylinder] = [refractions.numbers('sphere'), refractions.numbers('cylinder')];
    const predicted = predictedBy(primaryFormula(tables.formulas, plan.predictions.primary_formula), tables);
    const [asked, noted, resolved] = (['surprise', 'surprise_noted', 'surprise_resolved'] as const).map((name) =>
      millionths(thresholdOf(name, plan)),
    ) as [number, number, number];
    const recorded = recordedRefractions(tables);
    const placeOf = examPlace(context);
    context.assembly().outcome.refractions.forEach((row, eye) => {
      if (row < 0) return;
      const expected = predicted[eye] as number;
      const missed = sphericalEquivalent(sphere[row] as number, cylinder[row] as number) - expected;
      const size = millionths(Math.abs(missed));
      if (!(size > Math.min(noted, asked))) return;
      const { field, left } = turnedSign(recorded(refractions, row), expected);
      const isExplained = millionths(Math.abs(left)) < resolved;
      const at = placeOf(refractions, row, [isExplained ? field : 'sphere', 'refraction']);
      const finding = { ...at, effect: 'kept', detail: missed, other: isExplained ? left : Number.NaN } as const;
      if (size > asked) {
        report(
          { rule: 'refraction-surprise', severity: 'query', ...finding },
          { table: 'refractions', row, as: 'queried' },
        );
      } else report({ rule: 'refraction-surprise', severity: 'note', ...finding });
    });
  },
};
