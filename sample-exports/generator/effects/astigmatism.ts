import type { Keratometry, Refraction } from '../devices.js';
import { change, corneal, type Outcome, residual } from '../outcomes.js';
import { excess } from '../power-matrix.js';
import { mean } from '../sums.js';
import { CORNEA, INCISION } from '../truth.js';
import { CENTROID, type Effect, type Part } from './effect.js';

type Sample = readonly Outcome[];
type AstigmatismEffect = Effect<Sample>;

function mirrored({ eye }: Outcome): 1 | -1 {
  return eye.operation.laterality === 'left' ? -1 : 1;
}

function exchanged({ first, second }: Keratometry): Keratometry {
  return {
    first: { power: first.power, meridian: second.meridian },
    second: { power: second.power, meridian: first.meridian },
  };
}

/** Mirroring turns only the oblique coordinate. */
function whereOblique<T>(part: Part, mistake: Record<string, T>): Record<string, T> {
  return part === 1 ? mistake : {};
}

function cornealCentroid(part: Part): AstigmatismEffect {
  const values = (sample: Sample, read = (k: Keratometry) => k, factor: (outcome: Outcome) => number = () => 1) =>
    mean(
      sample.flatMap((outcome) => {
        const { keratometry } = outcome.before;
        return keratometry ? [factor(outcome) * corneal(read(keratometry))[part]] : [];
      }),
    );
  return {
    measure: 'corneal_cylinder_before',
    group: 'all',
    statistic: CENTROID[part],
    planted: (part === 0 ? CORNEA.horizontal : CORNEA.oblique).toFixed(2),
    of: (sample) => values(sample),
    mistakes: {
      'flat and steep axes exchanged': (sample) => values(sample, exchanged),
      ...whereOblique(part, { 'left eyes mirrored': (sample: Sample) => values(sample, (k) => k, mirrored) }),
    },
  };
}

function otherNotation({ sphere, cylinder, axis }: Refraction): Refraction {
  return { sphere, cylinder, axis: axis === undefined ? undefined : axis + 90 };
}

function residualCentroid(part: Part): AstigmatismEffect {
  const value = (outcome: Outcome) => residual(outcome.refraction)[part];
  return {
    measure: 'refractive_cylinder_after',
    group: 'all',
    statistic: CENTROID[part],
    of: (sample) => mean(sample.map(value)),
    mistakes: {
      'axis of the other notation': (sample) => mean(sample.map((o) => residual(otherNotation(o.refraction))[part])),
      ...whereOblique(part, {
        'left eyes mirrored': (sample: Sample) => mean(sample.map((o) => mirrored(o) * value(o))),
      }),
    },
  };
}

/** Mean change along a meridian chosen for each eye: more power there than at right angles to it. */
function changeAlong(sample: Sample, meridian: (outcome: Outcome) => number): number {
  return mean(
    sample.flatMap((outcome) => {
      const changed = change(outcome);
      return changed ? [excess(changed, meridian(outcome))] : [];
    }),
  );
}

const ownIncision = ({ eye }: Outcome) => eye.incision;

const incision: AstigmatismEffect = {
  measure: 'induced_along_incision',
  group: 'all',
  statistic: 'mean',
  planted: INCISION.along.toFixed(2),
  of: (sample) => changeAlong(sample, ownIncision),
  mistakes: {
    'before and after exchanged': (sample) => -changeAlong(sample, ownIncision),
    'incision meridian ignored': (sample) => changeAlong(sample, () => 0),
    'incisions of left eyes mirrored': (sample) =>
      changeAlong(sample, (o) => (mirrored(o) === 1 ? o.eye.incision : 180 - o.eye.incision)),
  },
};

export const ASTIGMATISM_EFFECTS: readonly AstigmatismEffect[] = [
  cornealCentroid(0),
  cornealCentroid(1),
  residualCentroid(0),
  residualCentroid(1),
  incision,
];
