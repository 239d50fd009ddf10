import { dayOf } from './calendar.js';
import { atCornea, equivalent, type Keratometry, type Refraction } from './devices.js';
import type { Eye } from './eyes.js';
import type { Examination } from './follow-up.js';
import { excess, fromPrincipal, type PowerMatrix, plus } from './power-matrix.js';
import { DATA_UNTIL, VERTEX } from './truth.js';

/** One analysed eye: the examination that counts as its outcome, and the one before surgery. */
export interface Outcome {
  readonly eye: Eye;
  readonly refraction: Refraction;
  readonly after: Examination;
  readonly before: Examination;
}

/** Astigmatism in the fixed frame: excess of meridian 0 over 90, and of 45 over 135; dioptres at the cornea. */
export type Excess = readonly [horizontal: number, oblique: number];

const WINDOWS = { '3 months': [46, 135], '1 month': [21, 45] } as const;
const LONGEST = 30;

function within(exam: Examination, eye: Eye, visit: '3 months' | '1 month'): boolean {
  const days = exam.day - eye.operation.day;
  const [from, to] = WINDOWS[visit];
  return days >= from && days <= to && exam.refraction !== undefined;
}

/** What the audit of `audit.yaml` may count: due, not too long, refracted at three months or else at one. */
export function outcomes(eyes: readonly Eye[]): Outcome[] {
  return eyes.flatMap((eye) => {
    const due = eye.operation.day + WINDOWS['3 months'][1] <= dayOf(DATA_UNTIL);
    const exams = eye.examinations;
    const after =
      exams.find((exam) => within(exam, eye, '3 months')) ?? exams.find((exam) => within(exam, eye, '1 month'));
    const before = exams.find((exam) => exam.visit === 'before');
    if (!due || !before || !after?.refraction || eye.biometry.axialLength > LONGEST) return [];
    return [{ eye, after, before, refraction: after.refraction }];
  });
}

export function predictionError({ eye, refraction }: Outcome): number {
  return equivalent(refraction) - eye.plan.predicted;
}

export function targetError({ eye, refraction }: Outcome): number {
  return equivalent(refraction) - eye.operation.aim;
}

export function secondError({ eye, refraction }: Outcome): number {
  return equivalent(refraction) - eye.plan.second;
}

/** Where more correcting power is needed the eye has less of its own: the excess changes sign. */
export function residual(refraction: Refraction, vertex = VERTEX): Excess {
  const f = atCornea(refraction, vertex);
  return [-excess(f, 0), -excess(f, 45)];
}

function corneaOf({ first, second }: Keratometry): PowerMatrix {
  return fromPrincipal(second.power, first.power, first.meridian);
}

export function corneal(keratometry: Keratometry): Excess {
  const f = corneaOf(keratometry);
  return [excess(f, 0), excess(f, 45)];
}

/** Change of the cornea between two examinations of one keratometer, where both exist. */
export function change({ before, after }: Outcome): PowerMatrix | undefined {
  if (!before.keratometry || !after.keratometry) return undefined;
  return plus(corneaOf(after.keratometry), corneaOf(before.keratometry), -1);
}
