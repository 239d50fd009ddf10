import { type Anatomy, anatomy, family } from './anatomy.js';
import {
  cleared,
  clouded,
  type Examination,
  examine,
  followUpDays,
  shortSightedness,
  writtenAxis,
} from './follow-up.js';
import { type Further, further } from './further.js';
import { type Operation, type Patient, people } from './people.js';
import { type Biometry, type LensPlan, measureBiometry, planLens, toricEffect } from './planning.js';
import { excess, matrix, meanPower, movedForward, type PowerMatrix, plus } from './power-matrix.js';
import { type Random, stream } from './random.js';
import { EARLY_SHIFT, EYE_SD, LENS_OFFSET, MEAN_ERROR, PATIENT_SD, SURGEON_OFFSET, UNSEEN, VERTEX } from './truth.js';

/** One operated eye: everything the exports are written from. */
export interface Eye {
  readonly patient: Patient;
  readonly operation: Operation;
  readonly incision: number;
  readonly biometry: Biometry;
  readonly plan: LensPlan;
  /** Where the lens lay at the end of surgery. */
  readonly lensAxisEnd: number | undefined;
  readonly examinations: readonly Examination[];
  readonly further: Further;
}

interface Planned {
  readonly patient: Patient;
  readonly operation: Operation;
  readonly anatomy: Anatomy;
  readonly biometry: Biometry;
  readonly plan: LensPlan;
  /** What both eyes of the patient share of the prediction error. */
  readonly shared: number;
}

function planned(seed: number): Planned[] {
  return people(seed).flatMap((patient) => {
    const random = stream(seed, `eyes of ${patient.code}`);
    const shared = PATIENT_SD * random.normal();
    const common = family(random);
    return patient.operations.map((operation) => {
      const eye = anatomy(random, patient, operation, common);
      const biometry = measureBiometry(random, eye);
      const plan = planLens(random, patient, operation, biometry, eye.incision);
      return { patient, operation, anatomy: eye, biometry, plan, shared };
    });
  });
}

function offset({ patient, plan }: Planned): number {
  return (LENS_OFFSET[plan.model] ?? 0) + (SURGEON_OFFSET[patient.surgeon] ?? 0);
}

/** Mean offset of lenses and surgeons in a cohort, taken away so that the cohort's mean error is the planted one. */
function centre(eyes: readonly Planned[], technique: string): number {
  const offsets = eyes.filter((eye) => eye.operation.technique === technique).map(offset);
  return offsets.reduce((sum, value) => sum + value, 0) / offsets.length;
}

/**
 * The correction at the cornea whose spherical equivalent *in the spectacles* is `equivalent`: the eye's
 * length decides the equal part, the optics in front the rest. Fixed-point steps; each leaves a fifth or less.
 */
export function correctionFor(astigmatic: PowerMatrix, equivalent: number): PowerMatrix {
  let demand = equivalent;
  for (;;) {
    const correction = plus(matrix(demand), astigmatic, -1);
    const short = equivalent - meanPower(movedForward(correction, VERTEX));
    if (Math.abs(short) < 1e-12) return correction;
    demand += short;
  }
}

function astigmaticPart(f: PowerMatrix): PowerMatrix {
  return matrix(0, excess(f, 0), excess(f, 45));
}

function lensAxes(random: Random, plan: LensPlan): { end: number; later: number } | undefined {
  const placement = 2.2 * random.normal();
  const rotation = 0.6 + 3 * random.normal();
  if (plan.axis === undefined) return undefined;
  return { end: writtenAxis(plan.axis + placement), later: plan.axis + placement + rotation };
}

function examinations(random: Random, eye: Planned, error: number, later: number | undefined): Examination[] {
  const { patient, operation, anatomy: body, plan } = eye;
  const own = (spread: number) => spread * random.normal();
  const unseen = matrix(0, UNSEEN.horizontal + own(0.12), UNSEEN.oblique + own(0.12));
  const strength = -excess(plan.effect, plan.axis ?? 0);
  const lens = later === undefined ? matrix(0) : toricEffect(strength, later);
  const after = astigmaticPart(plus(plus(body.corneaAfter, unseen), lens));
  const cataract = matrix(0, own(0.2), own(0.2));
  const cloudedLogMar = clouded(random);
  const logMar = cleared(random, patient.comorbidity, cloudedLogMar);
  const before = {
    correction: correctionFor(astigmaticPart(plus(body.cornea, cataract)), shortSightedness(random, body)),
    cornea: body.cornea,
    logMar: cloudedLogMar,
  };
  const list = [examine(random, patient, 'before', patient.assessed, dispensed(before))];
  for (const [visit, day] of followUpDays(random, operation.day)) {
    const equivalent = plan.predicted + error + (visit === '1 month' ? EARLY_SHIFT : 0);
    const state = {
      correction: correctionFor(after, equivalent),
      cornea: body.corneaAfter,
      logMar,
      ...(later === undefined ? {} : { lensAxis: later }),
    };
    list.push(examine(random, patient, visit, day, dispensed(state)));
  }
  return list;
}

/** The same state, its correction moved from the cornea to the trial frame. */
function dispensed<S extends { readonly correction: PowerMatrix }>(state: S): S {
  return { ...state, correction: movedForward(state.correction, VERTEX) };
}

/** All operated eyes of one sample. */
export function makeEyes(seed: number): Eye[] {
  const eyes = planned(seed);
  const centres = { manual: centre(eyes, 'manual'), 'laser-assisted': centre(eyes, 'laser-assisted') };
  return eyes.map((eye) => {
    const { patient, operation } = eye;
    const random = stream(seed, `outcome of ${patient.code} ${operation.laterality}`);
    const { technique } = operation;
    const own = EYE_SD[technique] * random.normal();
    const error = MEAN_ERROR[technique] + offset(eye) - centres[technique] + eye.shared + own;
    const axes = lensAxes(random, eye.plan);
    return {
      ...eye,
      incision: eye.anatomy.incision,
      lensAxisEnd: axes?.end,
      examinations: examinations(random, eye, error, axes?.later),
      further: further(stream(seed, `further of ${patient.code} ${operation.laterality}`), technique),
    };
  });
}
